import type {
  CeilingOutlook,
  CivilDate,
  MilestoneDate,
  NutrientBudget,
  SeasonInput,
  SeasonPlan,
  UnitHabit,
} from "nutrient-core";
import type { Style } from "../command.ts";
import { hanging } from "./hanging.ts";
import { mass, money, shown } from "./number.ts";
import { agenda, type Thing } from "./season-agenda.ts";
import { dayText, spanText } from "./season-day.ts";
import { feedsTogether, feedText } from "./season-feed.ts";
import { namesInShort } from "./season-labels.ts";
import { packsText } from "./season-packs.ts";

/** More lines than this are no glance any more; the rest is counted, and shown with --all. */
const AT_MOST = 8;

/** At a glance: today and the next three days with something to do; then where the plants stand, and what to buy. */
export function seasonLines(input: SeasonInput, plan: SeasonPlan, { habit, width }: Style, whole: boolean): string[] {
  const { today, next } = agenda(plan, habit);
  const under = (heading: string, texts: readonly Labelled[]): string[] =>
    beside(heading, whole ? texts : few(texts), width);
  const lines = [plan.today === null ? input.name : `${input.name}, ${dayText(plan.today, "long")}`, ""];
  if (plan.today !== null)
    lines.push(...under("Today ", today.length === 0 ? ["nothing to do"] : today.map(thingText)));
  lines.push(...under("Next  ", next.length === 0 ? ["nothing more this season"] : next.map(nextText)));
  lines.push("", ...under("Stage ", stageTexts(plan)));
  const ceilings = ceilingTexts(plan);
  if (ceilings.length > 0) lines.push(...under("Limits", ceilings));
  lines.push(...under("Buy   ", buyTexts(plan, input.currency, habit)));
  if (whole) lines.push("", "The whole season:", ...calendarLines(plan, habit, width));
  return lines;
}

/** A text, with what stands before it in its first line. */
type Labelled = string | readonly [label: string, text: string];

/** A heading with its texts beside it, each wrapped under itself and after its own label. */
function beside(heading: string, texts: readonly Labelled[], width: number): string[] {
  return texts.flatMap((labelled, index) => {
    const [label, text] = typeof labelled === "string" ? ["", labelled] : labelled;
    return hanging(`${index === 0 ? heading : " ".repeat(heading.length)} ${label}`, text, width).split("\n");
  });
}

function few(texts: readonly Labelled[]): readonly Labelled[] {
  if (texts.length <= AT_MOST) return texts;
  return [...texts.slice(0, AT_MOST - 1), `and ${texts.length - AT_MOST + 1} more: --all shows them`];
}

/** As wide as the longest day, "Sat 18 Sept", and a space. */
const DAY_WIDTH = 12;

/** A feed's text names its plantings itself. */
const whatText = ({ plantings, what, feed }: Thing): string => (feed ? what : `${plantings}: ${what}`);

/** What to do, and until when it may be done. */
function thingText(thing: Thing): string {
  return `${whatText(thing)}${thing.from === thing.to ? "" : ` (${thing.until})`}`;
}

/** The day on which a thing begins stands before it; what begins on the day of the one before stands under it. */
function nextText(thing: Thing, index: number, things: readonly Thing[]): Labelled {
  const day = things[index - 1]?.from === thing.from ? "" : dayText(thing.from);
  return [day.padEnd(DAY_WIDTH), thingText(thing)];
}

/** The stage the plantings are in, or come to next, and what its end waits for; those alike together. */
function stageTexts(plan: SeasonPlan): string[] {
  const plantings = [...new Set(plan.stages.map(({ planting }) => planting))];
  const texts = plantings.map((planting) => stageText(plan, planting));
  return [...new Set(texts)].map(
    (text) => `${namesInShort(plantings.filter((_, index) => texts[index] === text))}: ${text}`,
  );
}

function stageText({ stages, milestones, today }: SeasonPlan, planting: string): string {
  const own = stages.filter((stage) => stage.planting === planting);
  const current = own.find(({ begins, ends }) => today !== null && begins <= today && today <= ends);
  const following = own.find(({ begins }) => begins > (current?.ends ?? today ?? ""));
  const flower = milestones.find((found) => found.planting === planting && found.milestone === "first-flower");
  const now = current ? `${current.name} until ${dayText(current.ends, "plain")}` : "";
  const about = following?.provisional ? "about " : "";
  const soon = following
    ? `${now ? "then " : ""}${following.name} from ${about}${dayText(following.begins, "plain")}`
    : "";
  const waits = flower && following?.provisional && flower.basis !== "observed" ? awaited(flower, today) : "";
  return `${[now, soon].filter(Boolean).join(", ") || "the season is over"}${waits}`;
}

/** When the first flower is expected, or was and has not come. */
function awaited({ earliest, latest, expected }: MilestoneDate, today: CivilDate | null): string {
  if (expected && today !== null && expected.latest < today)
    return ` (first flower expected by ${dayText(expected.latest, "plain")}, not seen yet)`;
  return ` (first flower expected ${spanText(earliest, latest)})`;
}

/** The ceilings of each planting, and when one is passed. */
function ceilingTexts({ budget }: SeasonPlan): string[] {
  const plantings = [...new Set(budget.map(({ planting }) => planting))];
  return plantings.flatMap((planting) => {
    const texts = budget.filter((one) => one.planting === planting).flatMap(ceilingsOf);
    return texts.length === 0 ? [] : [`${planting}: ${texts.join("; ")} (g per plant)`];
  });
}

function ceilingsOf({ nutrient, season, ceilings }: NutrientBudget): string[] {
  return ceilings.map((outlook) => {
    const of = `${nutrient} ${shown(season.gramsPerPlant)} of at most ${shown(outlook.gramsPerPlant)}`;
    return `${of}${passing(outlook)}`;
  });
}

function passing({ passedOn, mayPassOn }: CeilingOutlook): string {
  if (passedOn !== null) return `, passed on ${dayText(passedOn, "plain")}`;
  return mayPassOn === null ? "" : `, may be passed on ${dayText(mayPassOn, "plain")}`;
}

function buyTexts({ shopping, shoppingCost }: SeasonPlan, currency: string | undefined, habit: UnitHabit): string[] {
  const bought = shopping.filter(({ packs }) => packs.length > 0);
  const missing = shopping.filter(({ missingGrams }) => missingGrams > 0);
  const cost = shoppingCost === undefined || bought.length === 0 ? "" : `: ${money(shoppingCost, currency)}`;
  return [
    bought.length === 0 && missing.length === 0 ? "nothing: the shelf holds enough" : "",
    bought.length > 0 ? `${bought.map((line) => packsText(line, habit)).join(", ")}${cost}` : "",
    ...missing.map(({ name, missingGrams }) => `${mass(missingGrams, habit)} of ${name}, no pack known`),
  ].filter(Boolean);
}

const STATUS = { given: "given", assumed: "assumed", planned: "" } as const;

function calendarLines({ events }: SeasonPlan, habit: UnitHabit, width: number): string[] {
  return feedsTogether(events).flatMap((feed) => {
    const status = STATUS[feed.events[0].status] || (feed.provisional ? "may still change" : "");
    const text = `${feedText(feed, habit, true)}${status ? ` (${status})` : ""}`;
    return hanging(`  ${dayText(feed.date).padEnd(DAY_WIDTH)}`, text, width).split("\n");
  });
}
