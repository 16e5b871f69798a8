import { answer, gatherList, type Outcome } from "../outcome/outcome.ts";
import { planSeason } from "./plan.ts";
import type { Evidence, Programme } from "./programme.ts";
import type { SeasonInput } from "./season.ts";

/** One programme carried through the same season: what it gives and what it costs. */
export interface ProgrammeComparison {
  readonly id: string;
  readonly name: string;
  readonly evidence: Evidence;
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  readonly feeds: number;
  readonly cans: number;
  /** Means over all plants of the season. */
  readonly gramsPerPlant: Readonly<Record<"N" | "P" | "K", number>>;
  /** Of the nitrogen given, what drains away, in grams over all plants. */
  readonly leachedNitrogenGrams: number;
  /** Of what is used up, where every price is known. */
  readonly cost?: number;
  readonly costPerPlant?: number;
  /** Of whole packs to buy, the stock used first. */
  readonly shoppingCost?: number;
  /** Feeds whose target the season's products reach. */
  readonly feedsMet: number;
}

/**
 * The same season under several programmes, with the same plants, products, water and can, before anything is given.
 *
 * Stage products that the season's own programme names are not carried over: every programme may use all products.
 *
 * @param programmes At least one; the season's own are left out of it.
 * @returns One line for each, in their order: feeds, cans, grams of N, P and K for each plant, cost.
 * @example
 * const pots = { name: "pots", fill: "20 pots 20 L" };
 * const dates = { setOut: "2027-05-15", end: "2027-10-10" };
 * const document = { name: "roof", crop: "sweet pepper", ...dates, places: [pots], programme: "two-phase", products: ["20-10-20"], can: "10 L" };
 * const asked = readSeason(document, { shelf: [], quantity: readPlainQuantity });
 * compareProgrammes(asked.value, [programmeNamed("two-phase")]).value[0]  // => { feeds: 9, cans: 18 }
 */
export function compareProgrammes(
  input: SeasonInput,
  programmes: readonly Programme[],
): Outcome<readonly ProgrammeComparison[]> {
  const compared = gatherList(programmes.map((programme) => under(input, programme)));
  return compared.ok ? answer(compared.value) : compared;
}

function under(input: SeasonInput, programme: Programme): Outcome<ProgrammeComparison> {
  const plan = planSeason({ ...input, plantings: input.plantings.map((planting) => ({ ...planting, programme })) });
  if (!plan.ok) return plan;
  const { totals, events, shoppingCost } = plan.value;
  const plants = input.plantings.reduce((sum, planting) => sum + planting.plants, 0);
  const perPlant = (nutrient: "N" | "P" | "K"): number => (totals.nutrientGrams[nutrient] ?? 0) / plants;
  const { id, name, evidence, sources, notes } = programme;
  return answer({
    id,
    name,
    evidence,
    sources,
    notes,
    feeds: totals.feeds,
    cans: totals.cans,
    gramsPerPlant: { N: perPlant("N"), P: perPlant("P"), K: perPlant("K") },
    leachedNitrogenGrams: (totals.nutrientGrams.N ?? 0) * input.leachingShare,
    ...(totals.cost === undefined ? {} : { cost: totals.cost }),
    ...(totals.costPerPlant === undefined ? {} : { costPerPlant: totals.costPerPlant }),
    ...(shoppingCost === undefined ? {} : { shoppingCost }),
    feedsMet: events.filter(({ reached }) => reached === "met").length,
  });
}
