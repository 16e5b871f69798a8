import { type ContentForm, elementPerForm, type Nutrient, nutrientOf } from "../element/nutrient.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { type Extent, unitExtent } from "../supply/basis.ts";
import type { Triple } from "../supply/ratio.ts";
import { supplyMatrix } from "../supply/supply.ts";
import type { BlendInput } from "./blend-input.ts";
import type { BlendProblem, Direction, NutrientTarget } from "./engine/problem.ts";
import { ceilingsOf } from "./limits.ts";

/** One wanted nutrient, as a row of the problem. */
export interface Row {
  readonly nutrient: Nutrient;
  /** As the grower named it: K2O. */
  readonly name: ContentForm;
  /** In the row's own unit: the element, per unit of the basis. */
  readonly wanted: number;
  readonly direction: Direction;
  /** Share of the wanted rate that still counts as met, as it was said. */
  readonly within: number;
  /** How far off still counts as met, in the row's own unit. */
  readonly band: number;
  readonly weight: number;
  /** Mass of the named form per mass of element. */
  readonly perElement: number;
  /** A rate of the element in the form and unit that people asked in. */
  readonly shownAs: (rate: number) => number;
}

/** A blend as pure numbers, with what each row means. */
export interface PosedBlend {
  readonly problem: BlendProblem;
  readonly rows: readonly Row[];
  readonly extent: Extent;
}

/** What a trial changes beside the input itself. */
export interface Adjusted {
  /** How far off still counts as met, in the row's own unit, where a trial lets one nutrient give way. */
  readonly bands?: Readonly<Partial<Record<Nutrient, number>>>;
  /** Scales the straight line of the conductivity; see `ceilingsOf`. */
  readonly conductivityCorrection?: number;
}

const TRIPLE_FORMS = ["N", "P2O5", "K2O"] as const;

/** Poses the blend: a row per wanted nutrient, a column per product, one gram as the unit of every amount. */
export function poseBlend(input: BlendInput, adjusted: Adjusted = {}): Outcome<PosedBlend> {
  const { products, purpose, already } = input;
  const extent = purpose.kind === "target" ? purpose.extent : unitExtent;
  const rows = (purpose.kind === "target" ? targetRows(input) : tripleRows(input)).map((row) => ({
    ...row,
    band: adjusted.bands?.[row.nutrient] ?? row.band,
  }));
  if (rows.every(({ wanted, direction }) => !(wanted > 0) || direction === "at-most")) {
    return unusable({
      code: "not-positive",
      path: purpose.kind === "target" ? "target" : purpose.kind,
      message: "Nothing is asked for.",
      expected: "at least one nutrient with more than zero",
      received: rows
        .map(({ name, direction, wanted, shownAs }) => `${name} ${direction.replace("-", " ")} ${shownAs(wanted)}`)
        .join(", "),
      hint: "write what is wanted, such as 3-1-2 or N 150 ppm; a target of at most so much asks for nothing",
    });
  }
  const prices = products.map(({ pricePerGram }) => pricePerGram);
  const priced = prices.every((price) => price !== undefined);
  const aim = input.aim ?? (priced ? ({ miss: "squares", next: "cost" } as const) : undefined);
  const there = purpose.kind === "target" ? already : {};
  const ceilings = ceilingsOf(input.limits ?? [], products, extent, there, adjusted.conductivityCorrection ?? 1);
  // A batch cannot hold more than itself; what is missing to it is filler.
  if (purpose.kind === "grade") {
    ceilings.push({ coefficients: products.map(() => 1), limit: purpose.batchGrams });
  }
  const problem: BlendProblem = {
    supply: supplyMatrix(
      products,
      rows.map(({ nutrient }) => nutrient),
      extent,
    ),
    targets: rows.map(engineTarget),
    offsets: rows.map(({ nutrient }) => there[nutrient] ?? 0),
    ...(ceilings.length > 0 ? { ceilings } : {}),
    ...(priced ? { prices: prices as number[] } : {}),
    ...(aim ? { aim } : {}),
  };
  return answer({ problem: purpose.kind === "ratio" ? problem : withAmountLimits(problem, input), rows, extent });
}

/** A row's target as the engine takes it. */
export function engineTarget({ wanted, direction, band, weight }: Row): NutrientTarget {
  return {
    wanted,
    bandBelow: band,
    bandAbove: band,
    ...(direction === "about" ? {} : { direction }),
    ...(weight === 1 ? {} : { weight }),
  };
}

/** The least and most grams of each product: what was said, and what is in stock. */
export function withAmountLimits(problem: BlendProblem, { products, uses = [] }: BlendInput): BlendProblem {
  const useOf = (id: string) => uses.find(({ product }) => product === id);
  const lower = products.map(({ id }) => useOf(id)?.leastGrams ?? 0);
  const stock = products.map(({ id, stockGrams = Number.POSITIVE_INFINITY }) =>
    Math.min(stockGrams, useOf(id)?.mostGrams ?? Number.POSITIVE_INFINITY),
  );
  const enough = products.map(({ id }) => useOf(id)?.leastIfUsedGrams ?? 0);
  // Where there is not enough of a product to use it at all, it is left out.
  const upper = stock.map((most, j) => (enough[j]! > most ? 0 : most));
  const smallestIfUsed = enough.map((least, j) => (upper[j] === 0 ? 0 : least));
  return {
    ...problem,
    ...(lower.some((least) => least > 0) ? { lower } : {}),
    ...(upper.some(Number.isFinite) ? { upper } : {}),
    ...(smallestIfUsed.some((least) => least > 0) ? { smallestIfUsed } : {}),
  };
}

function targetRows({ purpose, within }: BlendInput): Row[] {
  if (purpose.kind !== "target") return [];
  return purpose.wanted.map((wanted) => {
    const { form } = wanted.asked;
    const perElement = 1 / elementPerForm(form);
    return {
      nutrient: wanted.nutrient,
      name: form,
      wanted: wanted.rate,
      direction: wanted.direction ?? "about",
      within: wanted.within ?? within,
      band: (wanted.within ?? within) * wanted.rate,
      weight: wanted.weight ?? 1,
      perElement,
      shownAs: (amount) => amount * perElement,
    };
  });
}

function tripleRows({ purpose, within }: BlendInput): Row[] {
  if (purpose.kind === "target") return [];
  // A grade is percent of the batch; a ratio has no scale, so that of one hundred grams does.
  const batch = purpose.kind === "grade" ? purpose.batchGrams : 100;
  const triple: Triple = purpose.kind === "grade" ? purpose.grade : purpose.ratio;
  return TRIPLE_FORMS.map((name, index) => {
    const factor = elementPerForm(name);
    const wanted = (triple[index]! / 100) * batch * factor;
    return {
      nutrient: nutrientOf(name),
      name,
      wanted,
      direction: "about",
      within,
      band: wanted * within,
      weight: 1,
      perElement: 1 / factor,
      shownAs: (amount) => ((amount / factor) * 100) / batch,
    };
  });
}
