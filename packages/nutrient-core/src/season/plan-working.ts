import { term, type WorkingLine } from "../outcome/working.ts";
import { degreeDaysWorking } from "./degree-days.ts";
import type { MilestoneCalendar } from "./milestones.ts";
import type { Recipe } from "./recipe.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonEvent, SeasonPlan } from "./season-plan.ts";

/** Beyond this many recipes and plantings the working would be longer than anyone reads; totals stay complete. */
export const MOST_SHOWN = 24;

/** The arithmetic behind a plan: each recipe, the cans of each kind of feed, the totals and the budget. */
export function planWorking(plan: SeasonPlan, input: SeasonInput, recipes: readonly Recipe[]): WorkingLine[] {
  return [
    ...recipes.slice(0, MOST_SHOWN).flatMap(({ working }) => working),
    ...canLines(plan, input),
    ...totalLines(plan),
    ...budgetLines(plan),
  ];
}

/** The warmth up to a predicted flower, and how one recorded day's share of it was found. */
export function warmthWorking(
  { facts }: Planting,
  calendar: MilestoneCalendar,
  { weather }: SeasonInput,
): WorkingLine[] {
  const sums = calendar.workings();
  const likely = calendar.dateOf("first-flower")?.likely;
  const example = likely === undefined ? undefined : weather.filter(({ date }) => date <= likely).at(-1);
  if (sums.length === 0 || !example || !facts.thresholds) return [...sums];
  return [...sums, degreeDaysWorking(example, facts.thresholds)];
}

/** How many whole cans a feed of each stage takes: the litres for all plants, divided and rounded up. */
function canLines({ events }: SeasonPlan, input: SeasonInput): WorkingLine[] {
  const lines: WorkingLine[] = [];
  for (const planting of input.plantings.slice(0, MOST_SHOWN)) {
    for (const stage of planting.programme.stages) {
      const event = events.find(
        (one) => one.planting === planting.name && one.stage === stage.id && one.recipe !== null,
      );
      if (!event) continue;
      const litres = stage.litresPerPlant ?? planting.programme.litresPerPlant;
      lines.push({
        label: `${planting.name}, ${stage.name}: cans`,
        expression: `max(1, ceil(${planting.plants} * ${term(litres)} L / (${term(input.canLitres)} L) - 1e-9))`,
        value: event.cans,
        unit: "",
        source: null,
      });
    }
  }
  return lines;
}

/** Each product's total as so many cans of each amount. */
function totalLines({ events, totals }: SeasonPlan): WorkingLine[] {
  const cans = new Map<string, Map<number, number>>();
  for (const event of events) {
    for (const { product, perCanGrams } of event.amounts) {
      const ofProduct = cans.get(product) ?? new Map<number, number>();
      cans.set(product, ofProduct.set(perCanGrams, (ofProduct.get(perCanGrams) ?? 0) + event.cans));
    }
  }
  return totals.products.map(({ product, name, massGrams }) => ({
    label: `${name} in all`,
    expression: [...cans.get(product)!].map(([grams, count]) => `${count} * ${term(grams)} g`).join(" + "),
    value: massGrams,
    unit: "g",
    source: null,
  }));
}

function budgetLines({ budget, events }: SeasonPlan): WorkingLine[] {
  const shown = new Map<string, SeasonEvent[]>();
  for (const { planting } of budget) if (shown.size < MOST_SHOWN) shown.set(planting, []);
  for (const event of events) shown.get(event.planting)?.push(event);
  return budget.flatMap(({ planting, nutrient, season }): WorkingLine[] => {
    const own = shown.get(planting);
    if (!own || !(season.totalGrams > 0)) return [];
    const sum = own.map(({ nutrientGrams }) => `${term(nutrientGrams[nutrient] ?? 0)} g`).join(" + ");
    return [
      {
        label: `${planting}: ${nutrient} in the season`,
        expression: sum,
        value: season.totalGrams,
        unit: "g",
        source: null,
      },
    ];
  });
}
