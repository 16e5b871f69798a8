import type { CivilDate, SeasonPlan, UnitHabit } from "nutrient-core";
import { deliveredLine } from "../delivered.ts";
import { water } from "../number.ts";
import { dayText } from "../season-day.ts";
import { canDoses, type FeedTogether, feedsTogether, forWhom } from "../season-feed.ts";
import { html, type Markup } from "./markup.ts";
import type { CanRecipe, Recipes } from "./recipes.ts";

/** What to weigh for one can: large, a card for each letter. */
export function recipeCards({ list }: Recipes, habit: UnitHabit): Markup {
  const closest = list.some(({ example }) => example.reached === "closest");
  return html`<div class="cards">${list.map((recipe) => recipeCard(recipe, habit))}</div>${
    closest ? html`<p class="small">* As near to the target as these products come.</p>` : undefined
  }`;
}

function recipeCard({ letter, canLitres, stageNames, example }: CanRecipe, habit: UnitHabit): Markup {
  const doses = canDoses(example.amounts, habit);
  return html`<section class="card" aria-label="Feed ${letter}">
<div class="letter" aria-hidden="true">${letter}</div>
<div><h3>${stageNames.join(", ")}, <span class="together">in ${water(canLitres, habit)}</span></h3>
<ul class="doses">${
    doses.length === 0
      ? html`<li>water alone</li>`
      : doses.map(
          ({ name, weight, spoons }) =>
            html`<li>${weight} ${name}${spoons ? html` <span class="spoons">about ${spoons}</span>` : undefined}</li>`,
        )
  }</ul>
<p class="small">${deliveredLine(example.deliveredPpm, "ppm")}${example.reached === "closest" ? " *" : ""}</p></div></section>`;
}

/** Every feed in its month, with a box to tick. */
export function feedTable({ events }: SeasonPlan, { letterOf }: Recipes): Markup {
  const feeds = feedsTogether(events);
  const months = [...new Set(feeds.map(({ date }) => date.slice(0, 7)))];
  return html`<div class="table"><table><thead><tr><th scope="col">Done</th><th scope="col">Day</th><th scope="col">Feed</th><th scope="col">How much</th><th scope="col">Mind</th></tr></thead>
${months.map((month) => {
  const own = feeds.filter(({ date }) => date.startsWith(month));
  return html`<tbody><tr class="month"><th scope="rowgroup" colspan="5">${monthText(own[0]!.date)}</th></tr>${own.map((feed) => feedRow(feed, letterOf.get(feed.events[0].id)))}</tbody>`;
})}</table></div>`;
}

function feedRow(feed: FeedTogether, letter: string | undefined): Markup {
  const { status } = feed.events[0];
  const given = status === "given";
  const mind = given ? "given" : status === "assumed" ? "not recorded" : feed.provisional ? "may still change" : "";
  return html`<tr${given ? GIVEN : undefined}><td><span class="box" role="img" aria-label="${given ? "given" : "to do"}">${given ? "\u2713" : ""}</span></td><td class="day">${dayText(feed.date)}</td><td class="feed-letter">${letter ?? "\u2013"}</td><td>${forWhom(feed)}</td><td class="small">${mind}</td></tr>`;
}

const GIVEN = html` class="given"`;

function monthText(date: CivilDate): string {
  return dayText(date, "long").split(" ").slice(-2).join(" ");
}
