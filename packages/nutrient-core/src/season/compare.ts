import { type Caution, raise } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { notCompared } from "./caution-kinds/compare.ts";
import type { CivilDate } from "./civil-date.ts";
import type { LogEntry } from "./log.ts";
import { planSeason } from "./plan.ts";
import { plantingLabel } from "./planting-label.ts";
import type { Evidence, Programme } from "./programme.ts";
import type { SeasonInput } from "./season.ts";
import type { SeasonPlan } from "./season-plan.ts";

/** Means over all plants of the season, grams of the element. */
type GramsPerPlant = Readonly<Record<"N" | "P" | "K", number>>;

/** One programme carried through the same season: what it gives and what it costs. */
export interface ProgrammeComparison {
  /** Of the programme; `as-planned` for the season with its own programmes or stages. */
  readonly id: string;
  readonly name: string;
  readonly evidence: Evidence;
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  /** Over the whole season, those on record included. */
  readonly feeds: number;
  readonly cans: number;
  readonly gramsPerPlant: GramsPerPlant;
  /** Of these what is on record: the same under every programme. */
  readonly recorded: { readonly feeds: number; readonly cans: number; readonly gramsPerPlant: GramsPerPlant };
  /** Of the nitrogen given, what drains away, in grams over all plants. */
  readonly leachedNitrogenGrams: number;
  /** Of what is used up, where every price is known. */
  readonly cost?: number;
  readonly costPerPlant?: number;
  /** Of whole packs to buy, the stock used first. */
  readonly shoppingCost?: number;
  /** Feeds whose target the season's products reach; those on record were made to no target. */
  readonly feedsMet: number;
}

type About = Pick<ProgrammeComparison, "id" | "name" | "evidence" | "sources" | "notes">;

/**
 * The same season under several programmes, with the same plants, products, water, can and record: first as it is
 * planned, with the programmes or stages of its own, then under each of the others from today on.
 *
 * Stage products that the season's own programme names are not carried over: every other programme may use all products.
 *
 * @param programmes To set beside the season's own.
 * @param log The record's lines in the order they were written: what was given stands under every programme.
 * @param today Null for the season as it looks before anything has happened.
 * @returns One line for the season as it is planned, then one for each programme in their order: feeds, cans, grams of
 *   N, P and K for each plant, cost. A programme whose stages cannot be put on days for these crops is left out, with a
 *   caution `programme-not-compared`. Problems: those of `planSeason`.
 * @example
 * const pots = { name: "pots", fill: "20 pots 20 L" };
 * const dates = { setOut: "2027-05-15", end: "2027-10-10" };
 * const document = { name: "roof", crop: "sweet pepper", ...dates, places: [pots], programme: "two-phase", products: ["20-10-20"], can: "10 L" };
 * const asked = readSeason(document, { shelf: [], quantity: readPlainQuantity });
 * compareProgrammes(asked.value, [programmeNamed("steady-in-pots")]).value[0]  // => { id: "as-planned", feeds: 9, cans: 18 }
 */
export function compareProgrammes(
  input: SeasonInput,
  programmes: readonly Programme[],
  log: readonly LogEntry[] = [],
  today: CivilDate | null = null,
): Outcome<readonly ProgrammeComparison[]> {
  const own = planSeason(input, log, today);
  if (!own.ok) return own;
  const compared = [comparison(ownProgrammes(input), own.value, input)];
  const cautions: Caution[] = [];
  for (const programme of programmes) {
    const plantings = input.plantings.map((planting) => ({ ...planting, programme }));
    const plan = planSeason({ ...input, plantings }, log, today);
    if (plan.ok) compared.push(comparison(programme, plan.value, input));
    else if (plan.problems.every(({ code }) => CODES_OF_PROGRAMMES.has(code))) {
      // The first reason does: of a thousand beds each would say the same.
      cautions.push(raise(notCompared, { programme: programme.id, reason: plan.problems[0]!.message }));
    } else return plan;
  }
  return answer(compared, cautions);
}

/** What stands in the way of one programme and of no other: its stages ask for what is not known of these crops. */
const CODES_OF_PROGRAMMES: ReadonlySet<string> = new Set(["stage-without-date", "area-unknown"]);

/** What the season itself follows: one programme, its own stages, or several in several places. */
function ownProgrammes({ plantings }: SeasonInput): About {
  const programmes = [...new Map(plantings.map(({ programme }) => [programme.id, programme])).values()];
  const of = (id: string): string =>
    plantings
      .filter(({ programme }) => programme.id === id)
      .map(plantingLabel)
      .join(", ");
  const [only] = programmes;
  const isOne = programmes.length === 1;
  return {
    id: "as-planned",
    name: isOne ? only!.name : programmes.map(({ id, name }) => `${name} (${of(id)})`).join("; "),
    evidence: isOne ? only!.evidence : "own",
    sources: [...new Set(programmes.flatMap(({ sources }) => sources))],
    notes: [...new Set(programmes.flatMap(({ notes }) => notes))],
  };
}

function comparison(
  { id, name, evidence, sources, notes }: About,
  { totals, events, shoppingCost }: SeasonPlan,
  { plantings, leachingShare }: SeasonInput,
): ProgrammeComparison {
  const plants = plantings.reduce((sum, planting) => sum + planting.plants, 0);
  const each = (gramsOf: (nutrient: "N" | "P" | "K") => number): GramsPerPlant => ({
    N: gramsOf("N") / plants,
    P: gramsOf("P") / plants,
    K: gramsOf("K") / plants,
  });
  const given = events.filter(({ status }) => status === "given");
  return {
    id,
    name,
    evidence,
    sources,
    notes,
    feeds: totals.feeds,
    cans: totals.cans,
    gramsPerPlant: each((nutrient) => totals.nutrientGrams[nutrient] ?? 0),
    recorded: {
      feeds: given.length,
      cans: given.reduce((sum, { cans }) => sum + cans, 0),
      gramsPerPlant: each((nutrient) => given.reduce((sum, one) => sum + (one.nutrientGrams[nutrient] ?? 0), 0)),
    },
    leachedNitrogenGrams: (totals.nutrientGrams.N ?? 0) * leachingShare,
    ...(totals.cost === undefined ? {} : { cost: totals.cost }),
    ...(totals.costPerPlant === undefined ? {} : { costPerPlant: totals.costPerPlant }),
    ...(shoppingCost === undefined ? {} : { shoppingCost }),
    feedsMet: events.filter(({ reached }) => reached === "met").length,
  };
}
