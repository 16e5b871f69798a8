import { type Caution, inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { WorkingLine } from "../outcome/working.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { feedCautions, nitrogenFormCautions } from "../solution/cautions.ts";
import { type Conductivity, electricalConductivity } from "../solution/conductivity.ts";
import { type Extent, unitExtent } from "../supply/basis.ts";
import { inBothForms } from "../supply/both-forms.ts";
import { addDelivered } from "../supply/one-product.ts";
import { deliveredRanges } from "../supply/range.ts";
import { asRatio, asTriple, type Triple } from "../supply/ratio.ts";
import { type Amount, type Delivered, deliver } from "../supply/supply.ts";
import type { Measure } from "../supply/weigh-measures.ts";
import type { BlendInput } from "./blend-input.ts";
import type { BlendAmount, BlendCertificate, BlendResult, Residual, WeighedBlend } from "./blend-result.ts";
import { blendWorking } from "./blend-working.ts";
import { explain } from "./explain/explain.ts";
import { type Reached, reachBlend } from "./reach.ts";
import { reachableSegment } from "./square-method.ts";
import { splitOverTanks } from "./tanks.ts";
import { coarseCautions, residualOf, weighBlend } from "./weigh-blend.ts";

/**
 * How much of each product for a ratio, a grade or targets: exact where exact is possible, otherwise the
 * fairest miss (least weighted squares of the relative misses), the cheapest of equals where every price is known.
 *
 * @param input Products, purpose, what is there already, tolerance, limits, aim, stock and measures; see `BlendInput`.
 * @returns Amounts in grams, what they deliver and between which limits, how far each nutrient is off, the reason in
 *   words, weighable amounts and stock tanks where asked for, and the proof. Problems: `not-positive`,
 *   `limits-contradict`, `limit-already-passed`, `nothing-in-products`, `measure-too-coarse`.
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
  const used = amounts.filter((amount) => amount.massGrams > 0);
  const cautions: Caution[] = [
    ...hazardCautions(used.map(({ product }) => product)),
    ...(spread?.cautions ?? []),
    ...(measured.value ? measuredCautions(input, measured.value, residuals) : []),
    ...(stock?.cautions ?? []),
  ];
  const working: WorkingLine[] = [...blendWorking(input, amounts, rows, batch), ...(stock?.working ?? [])];
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

interface Spread {
  readonly result: Partial<BlendResult>;
  readonly cautions: readonly Caution[];
}

const DELIVERED_FIELD = {
  litre: "deliveredPpm",
  squareMetre: "deliveredGramsPerSquareMetre",
  cubicMetre: "deliveredGramsPerCubicMetre",
} as const;

function spreadOf({ purpose, already }: BlendInput, amounts: readonly Amount[]): Spread | undefined {
  return purpose.kind === "target" ? spreadOn(purpose.extent, amounts, already) : undefined;
}

/** What is measured out can be stronger than the exact blend, and has to be heeded as it is. */
function measuredCautions(input: BlendInput, { weighed }: Measured, exact: readonly Residual[]): Caution[] {
  const times = tankfuls(input);
  const amounts = weighed.amounts.map(({ product, massGrams }) => ({
    product: input.products.find(({ id }) => id === product)!,
    massGrams: massGrams / times,
  }));
  const coarse = coarseCautions(weighed, exact);
  return coarse.length > 0 ? [...coarse, ...(spreadOf(input, amounts)?.cautions ?? [])] : [];
}

function spreadOn(extent: Extent, amounts: readonly Amount[], already: Delivered): Spread {
  const delivered = addDelivered(deliver(amounts, extent), already);
  const conductivity: Conductivity | undefined =
    extent.basis === "litre" ? electricalConductivity(amounts, extent.amount) : undefined;
  return {
    result: {
      [DELIVERED_FIELD[extent.basis]]: inBothForms(delivered),
      ...(conductivity?.known ? { ecMilliSiemensPerCm: conductivity.milliSiemensPerCm } : {}),
      ...(conductivity?.range ? { ecRange: conductivity.range } : {}),
    },
    cautions: [...feedCautions(delivered, extent, conductivity), ...nitrogenFormCautions(delivered, extent)],
  };
}

interface Measured {
  readonly weighed: WeighedBlend;
  readonly measures: readonly (Measure | undefined)[];
}

/** Weighable amounts, where there is something named to measure with: of the blend, or of a full tank of it. */
function measuredBlend(input: BlendInput, reached: Reached): Outcome<Measured | undefined> {
  if (!input.measures) return answer(undefined);
  return weighBlend(input, reached, input.measures, tankfuls(input));
}

/** How much of the blend a full tank holds. */
function tankfuls({ purpose, stock }: BlendInput): number {
  return stock && purpose.kind === "target" ? (stock.ratio * stock.tankLitres) / purpose.extent.amount : 1;
}

function stockOf(
  { purpose, stock }: BlendInput,
  amounts: readonly Amount[],
): ReturnType<typeof splitOverTanks> | undefined {
  return stock && purpose.kind === "target" ? splitOverTanks(amounts, purpose.extent.amount, stock) : undefined;
}

/** Of what is measured out; of the exact amounts, by label and filling alone, where nothing was named to measure with. */
function rangeOf(input: BlendInput, amounts: readonly Amount[], measured: Measured | undefined): BlendResult["range"] {
  const { purpose, already, labelRule = "us" } = input;
  const times = tankfuls(input);
  const extent = purpose.kind === "target" ? { ...purpose.extent, amount: purpose.extent.amount * times } : unitExtent;
  const list = amounts.map(({ product, massGrams }, index) => {
    const measure = measured?.measures[index];
    const weighed = measured?.weighed.amounts.find((one) => one.product === product.id);
    return { product, massGrams: weighed?.massGrams ?? massGrams * times, ...(measure ? { measure } : {}) };
  });
  return deliveredRanges(list, extent, { labelRule }, purpose.kind === "target" ? already : {});
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
