import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { pairCautions } from "../product/pair-cautions.ts";
import { impossibleLabelCautions } from "../product/sanity/sanity.ts";
import { rangeCautions } from "../supply/range.ts";
import { asRatio, asTriple, type Triple } from "../supply/ratio.ts";
import { type Amount, deliver } from "../supply/supply.ts";
import type { BlendInput } from "./blend-input.ts";
import type { BlendAmount, BlendCertificate, BlendResult } from "./blend-result.ts";
import { blendWorking } from "./blend-working.ts";
import { explain } from "./explain/explain.ts";
import { measuredBlend, measuredCautions, measuredWorking, rangeOf } from "./measured.ts";
import { type Reached, reachBlend } from "./reach.ts";
import { spreadOf } from "./spread.ts";
import { reachableSegment } from "./square-method.ts";
import { splitOverTanks } from "./tanks.ts";
import { residualOf } from "./weigh-blend.ts";

/**
 * How much of each product for a ratio, a grade or targets: exact where exact is possible, otherwise the
 * fairest miss (least weighted squares of the relative misses), the cheapest of equals where every price is known.
 *
 * @param input Products, purpose, what is there already, tolerance, limits, aim, stock and measures; see `BlendInput`.
 * @returns Amounts in grams, what they deliver and between which limits, how far each nutrient is off, the reason in
 *   words, weighable amounts and stock tanks where asked for, and the proof. Problems: `not-positive`,
 *   `limits-contradict`, `limit-already-passed`, `nothing-in-products`, `measure-too-coarse`.
 * @example
 * blend({ products: [kno3], purpose: { kind: "ratio", ratio: [1, 0, 3], batchGrams: 100 }, already: {}, within: 0 })  // => { status: "closest", totalGrams: 100 }
 */
export function blend(input: BlendInput): Outcome<BlendResult> {
  const reach = reachBlend(input);
  if (!reach.ok) return reach;
  const reached = reach.value;
  const { massGrams, rows } = reached;
  const filled = massGrams.reduce((sum, grams) => sum + grams, 0);
  if (!(filled > 0)) return unusable(nothingHelps(input));
  const amounts: Amount[] = input.products.map((product, index) => ({ product, massGrams: massGrams[index]! }));
  const batch = input.purpose.kind === "grade" ? Math.max(filled, input.purpose.batchGrams) : filled;
  const grade = asTriple(deliver(amounts, { basis: "squareMetre", amount: batch })).map(
    (share) => share * 100,
  ) as unknown as Triple;
  const measured = measuredBlend(input, reached);
  if (!measured.ok) return measured;
  const spread = spreadOf(input, amounts);
  const residuals = rows.map((row, index) => residualOf(row, reached.delivered[index]!));
  const stock = input.stock && stockOf(input, amounts);
  const segment = reachableSegment(input.products);
  const result: BlendResult = {
    status: reached.solution.status,
    amounts: amounts.map((amount) => shareOf(amount, batch)),
    totalGrams: batch,
    ...(input.purpose.kind === "grade" ? { fillerGrams: batch - filled } : {}),
    grade,
    ratio: asRatio(grade),
    ...spread?.result,
    residuals,
    explanation: explain(input, reached),
    ...costOf(amounts),
    range: rangeOf(input, amounts, measured.value),
    ...(measured.value ? { weighed: measured.value.weighed } : {}),
    ...(stock ? { stock: stock.tanks } : {}),
    ...(segment ? { reachable: segment } : {}),
    certificate: certificateOf(reached),
  };
  const used = amounts.filter((amount) => amount.massGrams > 0).map(({ product }) => product);
  const inWater = input.purpose.kind === "target" && input.purpose.extent.basis === "litre";
  const cautions: Caution[] = [
    ...impossibleLabelCautions(used),
    ...(inWater ? [] : pairCautions(used)),
    ...hazardCautions(used),
    ...rangeCautions(used),
    ...(spread?.cautions ?? []),
    ...(measured.value ? measuredCautions(input, measured.value, residuals) : []),
    ...(stock?.cautions ?? []),
  ];
  const working: WorkingLine[] = [
    ...blendWorking(input, amounts, rows, batch),
    ...(spread?.working ?? []),
    ...costWorking(amounts, result.cost),
    ...(stock?.working ?? []),
    ...measuredWorking(input, amounts, rows, measured.value),
  ];
  return answer(result, inOrderOfUrgency(cautions), working);
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

function costOf(amounts: readonly Amount[]): Pick<BlendResult, "cost"> {
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  if (used.some(({ product }) => product.pricePerGram === undefined)) return {};
  return { cost: used.reduce((sum, { product, massGrams }) => sum + massGrams * product.pricePerGram!, 0) };
}

function costWorking(amounts: readonly Amount[], cost: number | undefined): WorkingLine[] {
  if (cost === undefined) return [];
  const terms = amounts
    .filter(({ massGrams }) => massGrams > 0)
    .map(({ product, massGrams }) => `${term(massGrams)} * ${term(product.pricePerGram!)}`);
  // Money per gram times grams.
  return [{ label: "cost", expression: terms.join(" + "), value: cost, unit: "", source: null }];
}

function stockOf(
  { purpose, stock }: BlendInput,
  amounts: readonly Amount[],
): ReturnType<typeof splitOverTanks> | undefined {
  return stock && purpose.kind === "target" ? splitOverTanks(amounts, purpose.extent.amount, stock) : undefined;
}

function certificateOf({ problem, solution }: Reached): BlendCertificate {
  const { certificate, ...rest } = solution;
  return { ...certificate, problem, solution: rest };
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
