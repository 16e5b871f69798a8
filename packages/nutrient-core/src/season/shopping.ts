import type { Need, Offer } from "../mix/order/offer.ts";
import { solveOrder } from "../mix/order/solve-order.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import type { CivilDate } from "./civil-date.ts";
import type { PackLine, SeasonEvent, ShoppingLine } from "./season-plan.ts";

/** What to buy for a season. */
export interface Shopping {
  readonly lines: readonly ShoppingLine[];
  /** Of everything to buy; undefined where a price or a pack is not known. */
  readonly cost?: number;
}

/**
 * The order's search counts litres; here the same search counts kilograms. It takes an order for enough that is a
 * tenth of a gram short of it, so that much is added to the need.
 */
const GRAMS_PER_COUNTED = 1000;
const SEARCH_SLACK_GRAMS = 0.1;

/**
 * Whole packs at least cost for all feeds from the day the stock was counted, less the stock: the exact order of the
 * mix room. For each product, needed = from stock + bought - left over, to the last digit.
 */
export function shoppingFor(
  events: readonly SeasonEvent[],
  shelf: readonly Product[],
  stockCounted: CivilDate | undefined,
): Outcome<Shopping> {
  const needed = new Map<string, { name: string; grams: number }>();
  for (const { amounts, date } of events) {
    if (stockCounted !== undefined && date < stockCounted) continue;
    for (const { product, name, massGrams } of amounts) {
      const sum = needed.get(product) ?? { name, grams: 0 };
      sum.grams += massGrams;
      needed.set(product, sum);
    }
  }
  const lines: ShoppingLine[] = [];
  const working: WorkingLine[] = [];
  for (const [id, { name, grams }] of needed) {
    const product = shelf.find((one) => one.id === id);
    const line = lineFor(id, name, grams, product);
    if (!line.ok) return line;
    lines.push(line.value);
    working.push(workingOf(line.value));
  }
  const isPriced = lines.every(({ cost, missingGrams }) => cost !== undefined && missingGrams === 0);
  const cost = lines.reduce((sum, line) => sum + (line.cost ?? 0), 0);
  return answer({ lines, ...(isPriced ? { cost } : {}) }, [], working);
}

function lineFor(id: string, name: string, neededGrams: number, product: Product | undefined): Outcome<ShoppingLine> {
  const stockGrams = product?.stockGrams ?? 0;
  const shortGrams = Math.max(0, neededGrams - stockGrams);
  const packs = product?.packs ?? [];
  const line = { product: id, name, neededGrams, stockGrams };
  if (shortGrams === 0 || packs.length === 0) {
    const leftoverGrams = Math.max(0, stockGrams - neededGrams);
    const bought = { packs: [], boughtGrams: 0, leftoverGrams, missingGrams: shortGrams };
    return answer({ ...line, ...bought, ...(shortGrams === 0 ? { cost: 0 } : {}) });
  }
  const offers = packs.map(
    ({ massGrams, price }, index): Offer => ({
      label: String(index),
      litres: massGrams / GRAMS_PER_COUNTED,
      ...(price === undefined ? {} : { price }),
      isBulk: false,
    }),
  );
  const need: Need = { name: id, litres: (shortGrams + SEARCH_SLACK_GRAMS) / GRAMS_PER_COUNTED, offers };
  const order = solveOrder([need], "least-cost");
  if (!order.ok) return unusable(...order.problems.map((problem) => ({ ...problem, path: `shelf ${id}` })));
  const [found] = order.value.ingredients;
  const bought = found!.lines.map(({ offer, count }): PackLine => {
    const { massGrams, price } = packs[Number(offer.label)]!;
    return { packGrams: massGrams, count, ...(price === undefined ? {} : { price }) };
  });
  const boughtGrams = bought.reduce((sum, { packGrams, count }) => sum + packGrams * count, 0);
  return answer({
    ...line,
    packs: bought,
    boughtGrams,
    leftoverGrams: stockGrams + boughtGrams - neededGrams,
    missingGrams: 0,
    ...(found!.cost === undefined ? {} : { cost: found!.cost }),
  });
}

function workingOf(line: ShoppingLine): WorkingLine {
  const packs = line.packs.map(({ packGrams, count }) => ` + ${count} * ${term(packGrams)} g`).join("");
  return {
    label: `${line.name} left over`,
    expression: `${term(line.stockGrams)} g${packs} + ${term(line.missingGrams)} g - ${term(line.neededGrams)} g`,
    value: line.leftoverGrams,
    unit: "g",
    source: null,
  };
}
