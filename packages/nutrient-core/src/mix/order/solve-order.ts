import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Best, Found } from "./found.ts";
import { leastCost } from "./least-cost.ts";
import { leastLeftOver } from "./least-left-over.ts";
import {
  type CountedOffer,
  costOf,
  counted,
  MICROLITRES,
  type Need,
  needInMicrolitres,
  type Offer,
  type OrderAim,
} from "./offer.ts";

/** So many of one offer. */
export interface OrderLine {
  readonly offer: Offer;
  readonly count: number;
  /** The price of each at this count; unknown where a price is missing. */
  readonly each?: number;
  /** A lorry's charge that comes with this line alone. */
  readonly charge?: number;
}

/** What to buy of one ingredient. */
export interface IngredientOrder {
  readonly name: string;
  readonly lines: readonly OrderLine[];
  readonly boughtLitres: number;
  /** Bought less needed. */
  readonly leftoverLitres: number;
  /** Without deliveries that bring several ingredients; unknown where a price is missing. */
  readonly cost?: number;
  /** Other orders of this ingredient that cost exactly the same. */
  readonly choices: readonly (readonly OrderLine[])[];
}

export interface Order {
  readonly ingredients: readonly IngredientOrder[];
  /** Charges of lorries that are used by more than one offer, each once. */
  readonly deliveries: readonly { readonly name: string; readonly charge: number }[];
  /** Of everything; unknown where a price is missing. */
  readonly cost?: number;
}

/** A thousand cubic metres of one ingredient: beyond it nobody buys sacks, and the tables would grow without use. */
const MOST_LITRES = 1e6;

/** More lorries than this that several offers share would take long to go through. */
const MOST_SHARED = 8;

/**
 * The best whole order: whole packs of each ingredient, the least cost or the least left over, proved.
 *
 * Ingredients are independent but for lorries that bring several of them. So every set of such lorries is gone
 * through: with its charges spent, each ingredient is solved on its own, exactly, from what those lorries and the shop
 * offer. Where a price is missing, an ingredient is bought with the least left over, and then in the fewest packs.
 */
export function solveOrder(needs: readonly Need[], aim: OrderAim): Outcome<Order> {
  const shared = sharedDeliveries(needs);
  const huge = needs.find(({ litres }) => litres > MOST_LITRES);
  if (huge) return unusable(orderTooLarge(huge));
  if (shared.length > MOST_SHARED) {
    return unusable({
      code: "deliveries-too-many",
      path: "",
      message: `${shared.length} deliveries bring more than one thing each.`,
      expected: `at most ${MOST_SHARED}`,
      received: shared.map(({ name }) => name).join(", "),
      hint: "give the same delivery one name, and leave out suppliers that are out of the question",
    });
  }
  const memo = new Map<string, Solved | undefined | "too-fine">();
  let best: Candidate | undefined;
  for (let set = 0; set < 2 ** shared.length; set += 1) {
    const used = shared.filter((_, index) => (set >> index) % 2 === 1);
    const candidate = solveWith(needs, used, shared, aim, memo);
    if (candidate === "too-fine") return unusable(pricesTooFine());
    if (candidate && (!best || isBetter(candidate, best, aim))) best = candidate;
  }
  return answer(orderOf(needs, best!));
}

interface Solved {
  readonly offers: readonly Offer[];
  readonly inNumbers: readonly CountedOffer[];
  readonly best: Best;
  readonly isPriced: boolean;
}

interface Candidate {
  readonly solved: readonly Solved[];
  readonly used: readonly { readonly name: string; readonly charge: number }[];
  readonly cost: number;
  readonly microlitres: number;
  readonly packs: number;
}

function sharedDeliveries(needs: readonly Need[]): { name: string; charge: number }[] {
  const uses = new Map<string, { name: string; charge: number; times: number }>();
  for (const { offers } of needs) {
    for (const { delivery } of offers) {
      if (delivery) uses.set(delivery.name, { ...delivery, times: (uses.get(delivery.name)?.times ?? 0) + 1 });
    }
  }
  return [...uses.values()].filter(({ times }) => times > 1).map(({ name, charge }) => ({ name, charge }));
}

function solveWith(
  needs: readonly Need[],
  used: Candidate["used"],
  shared: Candidate["used"],
  aim: OrderAim,
  memo: Map<string, Solved | undefined | "too-fine">,
): Candidate | undefined | "too-fine" {
  const isShared = (name: string): boolean => shared.some((one) => one.name === name);
  const solved: Solved[] = [];
  for (const [index, need] of needs.entries()) {
    const offers = need.offers.filter(
      ({ delivery }) => !delivery || !isShared(delivery.name) || used.some(({ name }) => name === delivery.name),
    );
    const key = `${index}:${offers.map((offer) => need.offers.indexOf(offer)).join()}`;
    if (!memo.has(key)) memo.set(key, solveIngredient(need.litres, offers, aim, isShared));
    const one = memo.get(key);
    if (one === undefined || one === "too-fine") return one;
    solved.push(one);
  }
  const charges = used.reduce((sum, { charge }) => sum + Math.round(charge * 100), 0);
  const sum = (of: (found: Found) => number): number => solved.reduce((total, { best }) => total + of(best.best), 0);
  return {
    solved,
    used,
    cost: charges + sum(({ cost }) => cost),
    microlitres: sum(({ microlitres }) => microlitres),
    packs: sum(({ packs }) => packs),
  };
}

function solveIngredient(
  litres: number,
  offers: readonly Offer[],
  aim: OrderAim,
  isShared: (name: string) => boolean,
): Solved | undefined | "too-fine" {
  if (offers.length === 0) return undefined;
  const isPriced = offers.every(({ price }) => price !== undefined);
  const inNumbers = offers.map((offer) => {
    const { price, priceBreaks, delivery, ...rest } = offer;
    const ownCharge = delivery && !isShared(delivery.name) ? delivery.charge : 0;
    return isPriced ? counted(offer, ownCharge) : counted(rest, 0);
  });
  const need = needInMicrolitres(litres);
  const best = isPriced && aim === "least-cost" ? leastCost(need, inNumbers) : leastLeftOver(need, inNumbers);
  return best === "too-fine" ? best : { offers, inNumbers, best, isPriced };
}

function isBetter(a: Candidate, b: Candidate, aim: OrderAim): boolean {
  const order =
    aim === "least-cost" ? (["cost", "microlitres", "packs"] as const) : (["microlitres", "cost", "packs"] as const);
  const decisive = order.find((key) => a[key] !== b[key]);
  return decisive !== undefined && a[decisive] < b[decisive];
}

function orderOf(needs: readonly Need[], { solved, used, cost }: Candidate): Order {
  const ingredients = solved.map((one, index): IngredientOrder => {
    const { best, isPriced } = one;
    const need = needs[index]!;
    const bought = best.best.microlitres / MICROLITRES;
    return {
      name: need.name,
      lines: linesOf(one, best.best),
      boughtLitres: bought,
      leftoverLitres: Math.max(0, bought - need.litres),
      ...(isPriced ? { cost: best.best.cost / 100 } : {}),
      choices: isPriced ? best.choices.map((choice) => linesOf(one, choice)) : [],
    };
  });
  const isPriced = solved.every((one) => one.isPriced);
  return { ingredients, deliveries: used, ...(isPriced ? { cost: cost / 100 } : {}) };
}

function linesOf({ offers, inNumbers, isPriced }: Solved, { counts }: Found): OrderLine[] {
  return counts.flatMap((count, index): OrderLine[] => {
    if (count === 0) return [];
    const line = { offer: offers[index]!, count };
    if (!isPriced) return [line];
    const { charge } = inNumbers[index]!;
    const each = (costOf(inNumbers[index]!, count) - charge) / count / 100;
    return [charge > 0 ? { ...line, each, charge: charge / 100 } : { ...line, each }];
  });
}

function orderTooLarge({ name, litres }: Need) {
  return {
    code: "order-too-large",
    path: "",
    message: `${Number((litres / 1000).toPrecision(3))} m3 of ${name} is no order of packs.`,
    expected: "at most 1000 m3 of an ingredient",
    received: `${Number(litres.toPrecision(6))} L`,
    hint: "check the sizes and units of what is filled, or leave the packs out: the litres are answered all the same",
  };
}

function pricesTooFine() {
  return {
    code: "prices-too-fine",
    path: "",
    message: "The order is too large to be searched to the last hundredth of the money it is priced in.",
    expected: "an order of less than a million steps of the smallest difference in price",
    received: "prices with more digits than such an order needs",
    hint: "round the prices to whole units or tens",
  };
}
