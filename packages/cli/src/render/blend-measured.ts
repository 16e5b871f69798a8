import {
  type BlendInput,
  type BlendResult,
  type DeliveredRange,
  METRIC_SPOONS,
  type Nutrient,
  spoonsFor,
  type UnitHabit,
  type WeighedAmount,
} from "nutrient-core";
import { area, shown, volume, water, weighed } from "./number.ts";
import { type RateBasis, rateUnit } from "./rate.ts";
import { shortSpoons } from "./spoons.ts";

/** The amounts as they are measured out, with the exact ones beside them, and what the whole steps cost. */
export function weighedLines(
  input: BlendInput,
  result: BlendResult,
  names: ReadonlyMap<string, string>,
  habit: UnitHabit,
): string[] {
  const blend = result.weighed;
  if (!blend) return [];
  const measured = blend.amounts.map((amount) => (amount.steps > 0 ? measureText(amount, input, habit) : "none"));
  const width = Math.max(...measured.map(({ length }) => length));
  const lines = blend.amounts.map((amount, index) => {
    const exact = result.amounts.find(({ product }) => product === amount.product)?.massGrams ?? 0;
    if (amount.steps === 0)
      return `  ${measured[index]!.padStart(width)}  ${names.get(amount.product) ?? amount.product} (exactly ${weighed(exact, habit)}: too little to measure so)`;
    const beside = amount.measure === "scale" ? `exactly ${weighed(exact, habit)}` : weighed(amount.massGrams, habit);
    return `  ${measured[index]!.padStart(width)}  ${names.get(amount.product) ?? amount.product} (${beside})`;
  });
  // What the products do not fill is still part of the batch, or its grade would come out too strong.
  if (input.purpose.kind === "grade" && (result.fillerGrams ?? 0) > 1e-9)
    lines.push(`  and filler (sand or another inert material) to make ${weighed(input.purpose.batchGrams, habit)}`);
  lines.push(...measuredLines(input, blend, habit));
  if (blend.roundedEachMiss > blend.miss * 1.01)
    lines.push(`  ${share(blend.miss)} off in all; ${share(blend.roundedEachMiss)} if each were rounded by itself`);
  return lines;
}

/** The steps and what they are counted over, then what the measured amounts give: that is what the plants will get. */
export function measuredLines(
  input: BlendInput,
  blend: NonNullable<BlendResult["weighed"]>,
  habit: UnitHabit,
): readonly string[] {
  return [stepsLine(input, blend, habit), measuredLine(input, blend, habit)];
}

/** A step is of all that is made at once: a finer blend comes of making more, not of a finer recipe. */
function stepsLine(input: BlendInput, { amounts }: NonNullable<BlendResult["weighed"]>, habit: UnitHabit): string {
  const steps = new Set(amounts.map((amount) => stepText(amount, habit)));
  return `  measured for ${wholeText(input, habit)} at once, in steps of ${[...steps].join(", ")}`;
}

function stepText({ measure, stepGrams, steps, volumeMillilitres = 0 }: WeighedAmount, habit: UnitHabit): string {
  if (measure === "spoons") return "1/8 tsp (spoons)";
  if (measure === "scale") return `${weighed(stepGrams, habit)} (scale)`;
  return steps > 0 ? `${shown(volumeMillilitres / steps)} mL (${measure})` : `one ${measure}`;
}

function wholeText({ purpose, stock }: BlendInput, habit: UnitHabit): string {
  if (stock) return `a full tank of ${water(stock.tankLitres, habit)}`;
  if (purpose.kind !== "target") return `the whole batch of ${weighed(purpose.batchGrams, habit)}`;
  const { basis, amount } = purpose.extent;
  if (basis === "litre") return `all ${water(amount, habit)}`;
  return basis === "squareMetre" ? `all ${area(amount, habit)}` : `all ${volume(amount * 1000, habit)} of mix`;
}

function measuredLine(
  { purpose }: BlendInput,
  { residuals }: NonNullable<BlendResult["weighed"]>,
  habit: UnitHabit,
): string {
  if (purpose.kind === "ratio")
    return `  measured so, a ratio of ${residuals.map(({ delivered }) => shown(delivered)).join(" : ")}`;
  const { sign, perKept } =
    purpose.kind === "grade" ? { sign: "%", perKept: 1 } : rateUnit(purpose.extent.basis, habit);
  const gives = residuals.map(({ nutrient, delivered }) => `${nutrient} ${shown(delivered * perKept)}`).join(", ");
  return `  measured so, ${purpose.kind === "grade" ? "makes" : "delivers"} ${gives} ${sign}`;
}

function measureText(amount: WeighedAmount, input: BlendInput, habit: UnitHabit): string {
  const { measure, massGrams, steps, volumeMillilitres = 0 } = amount;
  if (measure === "spoons") {
    const spoons = spoonsFor(volumeMillilitres, input.measures?.spoons ?? METRIC_SPOONS);
    if (spoons) return `${shortSpoons(spoons)} level`;
  }
  if (measure === "syringe") return `${shown(volumeMillilitres)} mL`;
  if (measure === "scoop") return `${steps} ${steps === 1 ? "scoop" : "scoops"}`;
  return weighed(massGrams, habit);
}

const share = (miss: number): string => `${shown(miss * 100, 2)} %`;

const CAUSES: Readonly<Record<string, string>> = {
  label: "what the label allows",
  scale: "the scale",
  spoons: "the spoons",
  syringe: "the syringe",
  scoop: "the scoop",
  density: "how densely it lies",
  filling: "filling the can",
};
const ORDER = [
  "N",
  "P",
  "K",
  "Ca",
  "Mg",
  "S",
  "Fe",
  "Mn",
  "Zn",
  "Cu",
  "B",
  "Mo",
] as const satisfies readonly Nutrient[];
/** More nutrients than these make the line longer than a person reads. */
const MOST_SHOWN = 4;

/** Between which limits the first few nutrients lie when everything goes as badly as it may, and why mostly. */
export function rangeLine({ range }: BlendResult, basis: RateBasis, habit: UnitHabit): string[] {
  const { sign, perKept } = rateUnit(basis, habit);
  const known = ORDER.flatMap((nutrient) => {
    const one = range[nutrient];
    return one && one.high > one.low && one.high > 0 ? [[nutrient, one] as const] : [];
  }).slice(0, MOST_SHOWN);
  if (known.length === 0) return [];
  const spans = known
    .map(([nutrient, { low, high }]) => `${nutrient} ${shown(low * perKept)} to ${shown(high * perKept)}`)
    .join(", ");
  const relative = ([, { mainEffect = 0, high }]: readonly [Nutrient, DeliveredRange]): number => mainEffect / high;
  const [, worst] = known.reduce((most, one) => (relative(one) > relative(most) ? one : most));
  const cause = worst.mainCause ? `, mostly by ${CAUSES[worst.mainCause]}` : "";
  return [`  at worst ${spans} ${sign}${cause}`];
}
