import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { feedCautions, nitrogenFormCautions } from "../solution/cautions.ts";
import { type Conductivity, electricalConductivity } from "../solution/conductivity.ts";
import type { Extent } from "../supply/basis.ts";
import { type BothForms, inBothForms } from "../supply/both-forms.ts";
import { addDelivered } from "../supply/one-product.ts";
import { asRatio, asTriple, type Triple } from "../supply/ratio.ts";
import { type Amount, type Delivered, deliver, deliveredWorking } from "../supply/supply.ts";
import type { Wanted } from "../supply/target.ts";
import type { Certificate } from "./engine/solution.ts";
import { solveBlend } from "./engine/solve.ts";
import { explain } from "./explain.ts";
import { type PosedBlend, poseBlend } from "./pose.ts";

/** What a blend is made for. */
export type BlendPurpose =
  /** A batch whose N:P2O5:K2O stands in this ratio. */
  | { readonly kind: "ratio"; readonly ratio: Triple; readonly batchGrams: number }
  /** A batch of this grade, in percent N-P2O5-K2O; what the products do not fill is filler. */
  | { readonly kind: "grade"; readonly grade: Triple; readonly batchGrams: number }
  /** Rates in water, on an area or in a mix. */
  | { readonly kind: "target"; readonly wanted: readonly Wanted[]; readonly extent: Extent };

export interface BlendInput {
  readonly products: readonly Product[];
  readonly purpose: BlendPurpose;
  /** Rates already there, on the purpose's basis. */
  readonly already: Delivered;
  /** How far off, as a share of the wanted rate, still counts as met: 0 for exact. */
  readonly within: number;
}

export interface BlendAmount {
  readonly product: string;
  readonly massGrams: number;
  /** Fraction by mass of the batch, filler included. */
  readonly share: number;
  readonly volumeMillilitres?: number;
  readonly cost?: number;
}

/** How one wanted nutrient came out. */
export interface Residual {
  readonly nutrient: string;
  /** In the form and basis that was asked for: ppm, g/m2, g/m3, or percent of the batch. */
  readonly wanted: number;
  readonly delivered: number;
  /** Delivered over wanted, less one; null where nothing was wanted. */
  readonly relativeMiss: number | null;
}

export interface BlendResult {
  readonly status: "met" | "closest";
  readonly amounts: readonly BlendAmount[];
  readonly totalGrams: number;
  /** Inert material that makes up a batch of a stated grade. */
  readonly fillerGrams?: number;
  /** Percent N-P2O5-K2O of the batch. */
  readonly grade: Triple;
  readonly ratio: Triple;
  readonly deliveredPpm?: BothForms;
  readonly deliveredGramsPerSquareMetre?: BothForms;
  readonly deliveredGramsPerCubicMetre?: BothForms;
  readonly ecMilliSiemensPerCm?: number;
  readonly residuals: readonly Residual[];
  /** In a grower's words: what limits the blend, and what would mend it. */
  readonly explanation: readonly string[];
  readonly cost?: number;
  readonly certificate: Certificate;
}

/**
 * How much of each product for a ratio, a grade or targets: exact where exact is possible, otherwise the
 * fairest miss (least weighted squares of the relative misses), the cheapest of equals where every price is known.
 *
 * @returns Amounts, what they deliver, how far each nutrient is off, the reason in words, and the proof.
 * @example
 * blend({ products, purpose: { kind: "ratio", ratio: [3, 1, 2], batchGrams: 1000 }, already: {}, within: 0 })
 */
export function blend(input: BlendInput): Outcome<BlendResult> {
  const posed = poseBlend(input);
  if (!posed.ok) return posed;
  const solution = solveBlend(posed.value.problem);
  if (solution.status === "infeasible") {
    return unusable({
      code: "limits-contradict",
      path: "products",
      message: "The least and most amounts of these products cannot all be kept.",
      expected: "limits that leave room for a blend",
      received: input.products.map(({ id }) => id).join(", "),
      hint: "raise a largest amount, or lower a smallest one",
    });
  }
  const massGrams = inBatch(input, solution.masses);
  const amounts: Amount[] = input.products.map((product, index) => ({ product, massGrams: massGrams[index]! }));
  const filled = massGrams.reduce((sum, grams) => sum + grams, 0);
  if (!(filled > 0)) return unusable(nothingHelps(input));
  const batch = input.purpose.kind === "grade" ? Math.max(filled, input.purpose.batchGrams) : filled;
  const used = amounts.filter((amount) => amount.massGrams > 0);
  const inEachGram = deliver(amounts, { basis: "squareMetre", amount: batch });
  const grade = asTriple(inEachGram).map((share) => share * 100) as unknown as Triple;
  const spread = input.purpose.kind === "target" ? spreadOn(input.purpose.extent, amounts, input.already) : undefined;
  const residuals = posed.value.rows.map((row, index) => ({
    nutrient: row.name,
    wanted: row.shownAs(row.wanted),
    delivered: row.shownAs(solution.delivered[index]!),
    relativeMiss: row.wanted > 0 ? solution.residuals[index]! / row.wanted : null,
  }));
  const priced = input.products.every(({ pricePerGram }) => pricePerGram !== undefined);
  const cost = priced
    ? amounts.reduce((sum, { product, massGrams: grams }) => sum + grams * product.pricePerGram!, 0)
    : undefined;
  const result: BlendResult = {
    status: solution.status,
    amounts: amounts.map((amount) => shareOf(amount, batch)),
    totalGrams: batch,
    ...(input.purpose.kind === "grade" ? { fillerGrams: batch - filled } : {}),
    grade,
    ratio: asRatio(grade),
    ...spread?.delivered,
    ...(spread?.conductivity?.known ? { ecMilliSiemensPerCm: spread.conductivity.milliSiemensPerCm } : {}),
    residuals,
    explanation: explain(input, posed.value, solution),
    ...(cost === undefined ? {} : { cost }),
    certificate: solution.certificate,
  };
  const cautions: Caution[] = [...hazardCautions(used.map(({ product }) => product)), ...(spread?.cautions ?? [])];
  return answer(result, inOrderOfUrgency(cautions), workingOf(input, amounts, posed.value, batch));
}

/** A ratio is free of scale: its solution is stretched to the batch. */
function inBatch(input: BlendInput, masses: readonly number[]): readonly number[] {
  if (input.purpose.kind !== "ratio") return masses;
  const sum = masses.reduce((a, b) => a + b, 0);
  return sum > 0 ? masses.map((grams) => (grams / sum) * (input.purpose as { batchGrams: number }).batchGrams) : masses;
}

function shareOf({ product, massGrams }: Amount, batch: number): BlendAmount {
  const density = product.densityKilogramsPerLitre;
  return {
    product: product.id,
    massGrams,
    share: massGrams / batch,
    ...(density === undefined ? {} : { volumeMillilitres: massGrams / density }),
    ...(product.pricePerGram === undefined ? {} : { cost: massGrams * product.pricePerGram }),
  };
}

interface Spread {
  readonly delivered: Partial<BlendResult>;
  readonly conductivity?: Conductivity;
  readonly cautions: readonly Caution[];
}

const DELIVERED_FIELD = {
  litre: "deliveredPpm",
  squareMetre: "deliveredGramsPerSquareMetre",
  cubicMetre: "deliveredGramsPerCubicMetre",
} as const;

function spreadOn(extent: Extent, amounts: readonly Amount[], already: Delivered): Spread {
  const delivered = addDelivered(deliver(amounts, extent), already);
  const conductivity = extent.basis === "litre" ? electricalConductivity(amounts, extent.amount) : undefined;
  return {
    delivered: { [DELIVERED_FIELD[extent.basis]]: inBothForms(delivered) },
    ...(conductivity ? { conductivity } : {}),
    cautions: [...feedCautions(delivered, extent, conductivity), ...nitrogenFormCautions(delivered, extent)],
  };
}

function workingOf(input: BlendInput, amounts: readonly Amount[], posed: PosedBlend, batch: number): WorkingLine[] {
  if (input.purpose.kind === "target") {
    const { extent } = input.purpose;
    const added = deliver(amounts, extent);
    return posed.rows.flatMap(({ nutrient }) =>
      amounts.some(({ product }) => fractionOf(product, nutrient) > 0)
        ? [deliveredWorking(amounts, nutrient, extent, added[nutrient]!)]
        : [],
    );
  }
  const whole: Extent = { basis: "squareMetre", amount: batch };
  const shares = deliver(amounts, whole);
  return posed.rows.flatMap(({ nutrient, name }) => {
    const holders = amounts.filter(({ product, massGrams }) => fractionOf(product, nutrient) > 0 && massGrams > 0);
    if (holders.length === 0) return [];
    const terms = holders.map(
      ({ product, massGrams }) => `${term(massGrams)} g * ${term(fractionOf(product, nutrient))}`,
    );
    const factor = posed.rows.find((row) => row.nutrient === nutrient)!.perElement;
    return [
      {
        label: `${name} in the batch`,
        expression: `100 * (${terms.join(" + ")}) * ${term(factor)} / (${term(batch)} g)`,
        value: 100 * shares[nutrient]! * factor,
        unit: "",
        source: factor === 1 ? null : "ciaaw-2021",
      },
    ];
  });
}

function nothingHelps(input: BlendInput) {
  const asked =
    input.purpose.kind === "target" ? input.purpose.wanted.map(({ asked: { form } }) => form).join(", ") : "the ratio";
  return {
    code: "nothing-in-products",
    path: "products",
    message: "None of these products brings any of what is wanted, or it is there already.",
    expected: `products that hold ${asked}`,
    received: input.products.map(({ id }) => id).join(", "),
    hint: "add a product that holds a wanted nutrient",
  };
}
