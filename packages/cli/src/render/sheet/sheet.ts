import type { Caution, SeasonInput, SeasonPlan, UnitHabit } from "nutrient-core";
import { agenda, type Thing } from "../season-agenda.ts";
import { dayText } from "../season-day.ts";
import { type BudgetPlots, budgetPlots } from "./budget-plot.ts";
import { feedTable, recipeCards } from "./feeds.ts";
import { cautionList, orderTable, programmeNotes, reminderTable } from "./lists.ts";
import { html, type Markup } from "./markup.ts";
import { type Recipes, recipesOf } from "./recipes.ts";
import { stageStrip } from "./stage-strip.ts";
import { SHEET_STYLE } from "./style.ts";

/**
 * The season as a sheet to print and hang up: one HTML file with nothing outside itself, no script and no network.
 *
 * @param cautions Most urgent first.
 */
export function seasonSheet(
  input: SeasonInput,
  plan: SeasonPlan,
  cautions: readonly Caution[],
  habit: UnitHabit,
): string {
  const recipes = recipesOf(plan.events);
  const strip = stageStrip(plan);
  const plots = budgetPlots(plan);
  const jobs = plan.reminders.filter(({ to }) => plan.today === null || to >= plan.today);
  const urgent = cautions.filter(({ severity }) => severity === "danger");
  const others = cautions.filter(({ severity }) => severity !== "danger");
  return `<!doctype html>\n${
    html`<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${input.name}: season sheet</title>
<style>${{ markup: SHEET_STYLE }}</style>
</head>
<body>
<header><h1>${input.name}</h1>
<p class="as-of">${plan.today === null ? "The whole season" : `As of ${dayText(plan.today, "long")}`}</p></header>
<main>
${nowBox(plan, recipes, habit)}
${urgent.length > 0 ? html`<section aria-label="Dangers">${section("Danger", cautionList(urgent))}</section>` : undefined}
${recipes.list.length > 0 ? section("In each can", recipeCards(recipes, habit)) : undefined}
${strip ? section("Stages", strip) : undefined}
${plan.events.length > 0 ? section("Feeds", feedTable(plan, recipes)) : undefined}
${jobs.length > 0 ? section("Other jobs", reminderTable(jobs)) : undefined}
${plan.shopping.length > 0 ? section("To buy for the season", orderTable(plan, input.currency, habit)) : undefined}
${others.length > 0 ? section("Take care", cautionList(others)) : undefined}
${plots.plantings.length > 0 ? section("Given and to come, grams per plant", budgetSection(plots)) : undefined}
${plan.programmes.length > 0 ? section("What the plan rests on", programmeNotes(plan.programmes)) : undefined}
</main>
</body>
</html>`.markup
  }\n`;
}

function section(title: string, content: Markup): Markup {
  return html`<h2>${title}</h2>\n${content}`;
}

function nowBox(plan: SeasonPlan, recipes: Recipes, habit: UnitHabit): Markup {
  const { today, next } = agenda(plan, habit);
  const ofToday = today.map((thing) => ({
    ...thing,
    when: thing.from === thing.to ? "Today" : thing.when.replace(/^until/, "Now to"),
  }));
  return html`<section class="now" aria-label="Today and next">
${plan.today === null ? undefined : html`<dl class="today">${byDay(ofToday, recipes, "Today", "nothing to do")}</dl>`}
<dl>${byDay(next, recipes, "Next", "nothing more this season")}</dl></section>`;
}

/** Things with their days, a day's name once. */
function byDay(things: readonly Thing[], recipes: Recipes, when: string, nothing: string): Markup | readonly Markup[] {
  if (things.length === 0) return html`<dt>${when}</dt><dd>${nothing}</dd>`;
  return [...new Set(things.map((thing) => thing.when))].map(
    (day) =>
      html`<dt>${day}</dt>${things
        .filter((thing) => thing.when === day)
        .map((thing) => html`<dd>${whatToDo(thing, thing.feed && recipes.letterOf.get(thing.feed.id))}</dd>`)}`,
  );
}

function whatToDo({ plantings, what }: Thing, letter: string | undefined): Markup {
  if (letter === undefined) return html`<strong>${plantings}:</strong> ${unbroken(what)}`;
  return html`<strong>Feed <span class="feed-letter">${letter}</span>:</strong> ${unbroken(what)}`;
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return text.replace(/(?<=\d) (?=(?:m?L|[km]?g|tsp|tbsp|cans?|oz|lb|US gal|cm)\b)/g, "\u00a0");
}

/** The plots of each planting under its name. */
function budgetSection({ plantings, notDrawn }: BudgetPlots): Markup {
  return html`<p class="small legend">Thick line: given. Dotted: to come. Grey: the range that labels and scale allow. Heavy dashes: the limit.${
    notDrawn > 0 ? ` Drawn are the plantings nearest to a limit; ${notDrawn} more are not.` : ""
  }</p>
${plantings.map(({ name, plots }) => html`<div class="keep"><h3>${name}</h3><div class="plots">${plots}</div></div>`)}`;
}
