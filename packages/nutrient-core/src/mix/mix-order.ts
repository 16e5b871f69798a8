import { type Caution, raise } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { noPackKnown, priceMissing } from "./caution-kinds/order.ts";
import type { MixInput } from "./mix-input.ts";
import type { MixComponent, MixResult, OrderedPack } from "./mix-result.ts";
import type { Need } from "./order/offer.ts";
import { type IngredientOrder, type OrderLine, solveOrder } from "./order/solve-order.ts";
import type { MixVolumes } from "./volumes.ts";
import type { MixedIngredient } from "./weight.ts";

type Ordered = Pick<MixResult, "components" | "deliveries" | "cost" | "leftoverWouldFillLitres">;

/** What to buy of each ingredient, the stock used first; the whole order's cost where every price is known. */
export function orderComponents(
  { recipe, supplies, aim }: MixInput,
  ingredients: readonly MixedIngredient[],
  volumes: MixVolumes,
): Outcome<Ordered> {
  const supplyOf = (name: string) => supplies.find((supply) => supply.name === name);
  const stockUsed = (index: number): number => {
    const { name, looseVolumeLitres } = ingredients[index]!;
    return Math.min(looseVolumeLitres, supplyOf(name)?.stockLitres ?? 0);
  };
  const needs = recipe.components.flatMap(({ name, isOwn }, index): Need[] => {
    const litres = ingredients[index]!.looseVolumeLitres - stockUsed(index);
    const offers = supplyOf(name)?.offers ?? [];
    return isOwn || litres <= 0 || offers.length === 0 ? [] : [{ name, litres, offers }];
  });
  const solved = solveOrder(needs, aim);
  if (!solved.ok) return solved;
  const working: WorkingLine[] = [];
  const components = recipe.components.map(({ name, share, isOwn }, index): MixComponent => {
    const order = solved.value.ingredients.find((one) => one.name === name);
    const { volumeLitres, looseVolumeLitres } = ingredients[index]!;
    if (order) working.push(...orderWorking(order, looseVolumeLitres, stockUsed(index)));
    return {
      name,
      share,
      isOwn,
      volumeLitres,
      looseVolumeLitres,
      stockUsedLitres: isOwn ? looseVolumeLitres : stockUsed(index),
      order: packsOf(order?.lines ?? []),
      leftoverLitres: order?.leftoverLitres ?? 0,
      ...(order?.cost === undefined ? {} : { cost: order.cost }),
      ...(order && order.choices.length > 0 ? { choices: order.choices.map(packsOf) } : {}),
    };
  });
  const bought = components.filter(({ isOwn }) => !isOwn);
  const covered = bought.filter(
    ({ order, stockUsedLitres, looseVolumeLitres }) => order.length > 0 || stockUsedLitres >= looseVolumeLitres,
  );
  const isWhole = covered.length === bought.length;
  const { cost, deliveries, ingredients: orders } = solved.value;
  const spare = Math.min(...bought.map(({ leftoverLitres, share }) => leftoverLitres / share));
  const value: Ordered = {
    components,
    deliveries,
    // A part of the order without a pack has no cost, and then the whole has none.
    ...(cost === undefined || !isWhole || orders.length === 0 ? {} : { cost }),
    ...(isWhole && orders.length > 0 && spare > 0
      ? { leftoverWouldFillLitres: (spare * volumes.fillVolumeLitres) / volumes.orderVolumeLitres }
      : {}),
  };
  const packless = bought.filter((one) => !covered.includes(one)).map(({ name }) => name);
  const unpriced = orders.filter((order) => order.cost === undefined).map(({ name }) => name);
  const cautions: Caution[] = [
    ...(packless.length > 0 ? [raise(noPackKnown, { ingredients: packless })] : []),
    ...(unpriced.length > 0 ? [raise(priceMissing, { ingredients: unpriced })] : []),
  ];
  if (value.cost !== undefined) {
    working.push({
      label: "cost of the order",
      expression: [
        ...components.flatMap((one) => (one.cost === undefined ? [] : [one.cost])),
        ...deliveries.map(({ charge }) => charge),
      ]
        .map(term)
        .join(" + "),
      value: value.cost,
      unit: "",
      source: null,
    });
  }
  return answer(value, cautions, working);
}

function packsOf(lines: readonly OrderLine[]): OrderedPack[] {
  // The largest first: so they are asked for in the shop.
  return [...lines]
    .sort((a, b) => b.offer.litres - a.offer.litres)
    .map(({ offer, count }) => ({ pack: offer.label, count, litres: offer.litres, isBulk: offer.isBulk }));
}

function orderWorking(order: IngredientOrder, loose: number, stock: number): WorkingLine[] {
  const bought = order.lines.map(({ offer, count }) => `${count} * ${term(offer.litres)} L`).join(" + ");
  return [
    {
      label: `${order.name} left over`,
      expression: `${bought} - (${term(loose)} L - ${term(stock)} L)`,
      // What is needed can exceed what is bought by the rounding of a tenth of a millilitre; then nothing is left.
      value: order.boughtLitres - (loose - stock),
      unit: "L",
      source: null,
    },
    ...(order.cost === undefined ? [] : [costWorking(order, order.cost)]),
  ];
}

function costWorking({ name, lines }: IngredientOrder, cost: number): WorkingLine {
  const terms = lines.map(({ count, each = 0, charge }) =>
    charge === undefined ? `${count} * ${term(each)}` : `${count} * ${term(each)} + ${term(charge)}`,
  );
  return { label: `${name} costs`, expression: terms.join(" + "), value: cost, unit: "", source: null };
}
