import { scaleLinear, scaleUtc } from "d3-scale";
import { area, curveStepAfter, line } from "d3-shape";
import type { BudgetPoint, CivilDate, NutrientBudget, SeasonPlan } from "nutrient-core";
import { shown } from "../number.ts";
import { asInstant, dayText } from "../season-day.ts";
import { dateTicks } from "./date-ticks.ts";
import { html, type Markup } from "./markup.ts";

const WIDTH = 300;
const HEIGHT = 190;
const LEFT = 38;
const RIGHT = 8;
const TOP = 16;
const BOTTOM = 24;

const NAMES = { N: "Nitrogen (N)", P: "Phosphorus (P)", K: "Potassium (K)" } as const;

/** More plantings than this are not drawn: a sheet is no archive, and the table has all of them. */
const MOST_PLANTINGS = 4;

/** Plots of the plantings that come nearest to a limit, and how many there are besides. */
export interface BudgetPlots {
  readonly plantings: readonly { readonly name: string; readonly plots: readonly Markup[] }[];
  readonly notDrawn: number;
}

/** The plantings' nutrients over the season, a plot each: grams per plant so far and to come, against the ceilings. */
export function budgetPlots({ budget, today }: SeasonPlan): BudgetPlots {
  const groups = new Map<string, NutrientBudget[]>();
  for (const one of budget) {
    if (one.curve.length === 0) continue;
    groups.set(one.planting, [...(groups.get(one.planting) ?? []), one]);
  }
  const nearest = [...groups].map(([name, own]) => ({
    name,
    own,
    share: Math.max(0, ...own.flatMap(({ ceilings }) => ceilings.map(({ shareUsed }) => shareUsed))),
  }));
  // Where all fit, the order of the season file is the one that is known.
  if (nearest.length > MOST_PLANTINGS) nearest.sort((a, b) => b.share - a.share);
  let count = 0;
  return {
    plantings: nearest
      .slice(0, MOST_PLANTINGS)
      .map(({ name, own }) => ({ name, plots: own.map((one) => budgetPlot(one, today, count++)) })),
    notDrawn: Math.max(0, nearest.length - MOST_PLANTINGS),
  };
}

function budgetPlot(budget: NutrientBudget, today: CivilDate | null, index: number): Markup {
  const { planting, nutrient, curve, ceilings } = budget;
  const [first, last] = [curve[0]!.date, curve.at(-1)!.date];
  const x = scaleUtc([asInstant(first), asInstant(last)], [LEFT, WIDTH - RIGHT]);
  const most = Math.max(
    ...curve.map(({ highGramsPerPlant }) => highGramsPerPlant),
    ...ceilings.map((c) => c.gramsPerPlant),
  );
  // A planting without feeds draws a flat line, not a scale without height.
  const y = scaleLinear([0, most > 0 ? most : 1], [HEIGHT - BOTTOM, TOP]).nice(4);
  const at = ({ date }: BudgetPoint): number => x(asInstant(date));
  const band = area<BudgetPoint>(
    at,
    (p) => y(p.lowGramsPerPlant),
    (p) => y(p.highGramsPerPlant),
  ).curve(curveStepAfter);
  const steps = line<BudgetPoint>(at, (p) => y(p.gramsPerPlant)).curve(curveStepAfter);
  const given = givenPart(curve, today);
  const id = `budget-${index}`;
  const dates = dateTicks(x, 4);
  const amounts = y.ticks(4);
  const amountFormat = y.tickFormat(4);
  return html`<figure><svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-labelledby="${id}-title ${id}-desc">
<title id="${id}-title">${`${NAMES[nutrient]}, grams per plant in ${planting}`}</title>
<desc id="${id}-desc">${inWords(budget)}</desc>
${amounts.map((amount) => html`<path d="M${LEFT} ${y(amount)}H${WIDTH - RIGHT}" stroke="#bbb" stroke-width="0.8"/><text x="${LEFT - 5}" y="${y(amount) + 4}" font-size="12" text-anchor="end">${amountFormat(amount)}</text>`)}
${dates.map(({ date, label }) => html`<path d="M${x(date)} ${HEIGHT - BOTTOM}v4" stroke="#000"/><text x="${x(date)}" y="${HEIGHT - 6}" font-size="12" text-anchor="${x(date) > WIDTH - 30 ? "end" : x(date) < LEFT + 20 ? "start" : "middle"}">${label}</text>`)}
<path d="M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}" fill="none" stroke="#000"/>
<path d="${band([...curve]) ?? ""}" fill="#ccc"/>
<path d="${steps([...curve]) ?? ""}" fill="none" stroke="#000" stroke-width="1.8" stroke-dasharray="3 3"/>
${given.length > 0 ? html`<path d="${steps(given) ?? ""}" fill="none" stroke="#000" stroke-width="3"/>` : undefined}
${ceilings.map(({ gramsPerPlant }) => html`<path d="M${LEFT} ${y(gramsPerPlant)}H${WIDTH - RIGHT}" stroke="#000" stroke-width="3.5" stroke-dasharray="12 4"/><text x="${LEFT + 4}" y="${y(gramsPerPlant) - 5}" font-size="12" font-weight="700">${`at most ${shown(gramsPerPlant)} g`}</text>`)}
</svg>
<figcaption><strong>${NAMES[nutrient]}</strong> ${caption(budget)}</figcaption></figure>`;
}

/** What was given so far, drawn on to today. */
function givenPart(curve: readonly BudgetPoint[], today: CivilDate | null): BudgetPoint[] {
  if (today === null) return [];
  const given = curve.filter(({ date }) => date <= today);
  const [latest, end] = [given.at(-1), curve.at(-1)!];
  return latest ? [...given, { ...latest, date: today < end.date ? today : end.date }] : [];
}

function caption({ season, given, need, fromMixGramsPerPlant, ceilings }: NutrientBudget): string {
  const parts = [`${shown(given.gramsPerPlant)} of ${shown(season.gramsPerPlant)} g per plant given`];
  if (fromMixGramsPerPlant > 0) parts.push(`the mix brings ${shown(fromMixGramsPerPlant)} g beside it`);
  if (need) parts.push(`a crop takes ${shown(need.gramsPerPlant[0])} to ${shown(need.gramsPerPlant[1])} g`);
  return `${parts.join("; ")}.${ceilings.map(passing).join("")}`;
}

function passing({ passedOn, mayPassOn }: NutrientBudget["ceilings"][number]): string {
  if (passedOn !== null) return ` Over its limit on ${dayText(passedOn, "plain")}.`;
  return mayPassOn === null ? " Stays under its limit." : ` May go over its limit on ${dayText(mayPassOn, "plain")}.`;
}

function inWords(budget: NutrientBudget): string {
  const { curve, ceilings } = budget;
  const limits = ceilings.map(({ gramsPerPlant }) => ` The limit is ${shown(gramsPerPlant)} g.`).join("");
  return `From ${dayText(curve[0]!.date)} to ${dayText(curve.at(-1)!.date)}: ${caption(budget)}${limits}`;
}
