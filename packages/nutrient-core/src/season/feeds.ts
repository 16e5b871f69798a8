import { andThen, answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import type { Delivered } from "../supply/supply.ts";
import type { Wanted } from "../supply/target.ts";
import { dayNumber } from "./civil-date.ts";
import type { Stage } from "./programme.ts";
import type { Recipe } from "./recipe.ts";
import type { RecipeBook } from "./recipe-book.ts";
import { everyDays, type Slot } from "./schedule.ts";
import type { Planting, SeasonInput } from "./season.ts";

/** A feed that is to be given: its recipe and how many cans of it. */
export interface Feed {
  readonly slot: Slot;
  readonly cans: number;
  readonly recipe: Recipe;
  /** Feeds that are mixed alike share it. */
  readonly recipeNumber: number;
}

/** Cans are whole: half a can more is a can more, but not for a drop. */
const A_DROP = 1e-9;

/** Litres of feed for all plants of a planting in one feed. */
export function litresWanted(planting: Planting, stage: Stage): number {
  return planting.plants * (stage.litresPerPlant ?? planting.programme.litresPerPlant);
}

/** Whole cans for so many litres, at least one. */
export function cansFor(litres: number, canLitres: number): number {
  return Math.max(1, Math.ceil(litres / canLitres - A_DROP));
}

/**
 * What a feed that is to come holds.
 *
 * The rates of a stage become mg per litre of the whole cans that are made; what the mix gives of itself until the next
 * feed is taken off. Where the stage's feeds share an amount, what was given in it already is taken off and the rest
 * is shared by the feeds that are left.
 *
 * @param left How many feeds of this stage are left, this one included.
 * @param givenGrams What the stage's recorded feeds have given, all plants together.
 */
export function feedFor(
  slot: Slot & { readonly stage: NonNullable<Slot["stage"]> },
  planting: Planting,
  input: SeasonInput,
  left: number,
  givenGrams: Delivered,
  book: RecipeBook,
): Outcome<Feed> {
  const { stage } = slot.stage;
  const cans = cansFor(litresWanted(planting, stage), input.canLitres);
  const litres = cans * input.canLitres;
  const products = productsOf(stage, input);
  if (!products.ok) return products;
  const known = areaKnown(stage, planting);
  if (!known.ok) return known;
  const wanted = stage.target.wanted.map((line): Wanted => {
    const whole = gramsOfRate(line.rate, stage, planting, litres)!;
    const feed = stage.target.per === "feed" ? whole : Math.max(0, whole - (givenGrams[line.nutrient] ?? 0)) / left;
    const rate = (feed * 1000) / litres;
    const perAsked = line.rate > 0 ? line.asked.rate / line.rate : 1;
    return { nutrient: line.nutrient, rate, asked: { form: line.asked.form, rate: rate * perAsked } };
  });
  const fromMix = mixRates(planting, slot.day, slot.day + everyDays(planting, slot.stage), litres);
  return andThen(book.recipe({ products: products.value, wanted, fromMix }), ({ recipe, number }) =>
    answer({ slot, cans, recipe, recipeNumber: number }),
  );
}

/**
 * A rate of a stage's target as grams for all plants of a planting: in one feed, or in all of the stage together where
 * its feeds share an amount.
 *
 * @param rate In the target's own unit: mg/L, grams per plant or grams per square metre.
 * @param litres Of feed that the planting gets in one go.
 * @returns Undefined where the rate is per area and the area is not known.
 */
export function gramsOfRate(rate: number, { target }: Stage, planting: Planting, litres: number): number | undefined {
  if (target.basis === "litre") return (rate * litres) / 1000;
  if (target.basis === "plant") return rate * planting.plants;
  return planting.areaSquareMetres === undefined ? undefined : rate * planting.areaSquareMetres;
}

function areaKnown(stage: Stage, planting: Planting): Outcome<true> {
  if (stage.target.basis !== "squareMetre" || planting.areaSquareMetres !== undefined) return answer(true);
  return unusable({
    code: "area-unknown",
    path: "places",
    message: `The stage "${stage.name}" is given per area, but the area of "${planting.name}" is not known.`,
    expected: "places with their sizes",
    received: planting.places.map(({ name }) => name).join(", "),
    hint: "write the pots with top, bottom and height, or give the target per plant: N 0.2 g/plant",
  });
}

function productsOf(stage: Stage, input: SeasonInput): Outcome<readonly Product[]> {
  if (stage.products === undefined) return answer(input.products);
  const found = stage.products.map((id) => input.shelf.find((product) => product.id === id));
  const missing = stage.products.filter((_, index) => found[index] === undefined);
  if (missing.length === 0) return answer(found as Product[]);
  return unusable({
    code: "product-unknown",
    path: "products",
    message: `The stage "${stage.name}" is fed with ${missing.join(", ")}, which is not on the shelf.`,
    expected: "products of the shelf",
    received: missing.join(", "),
    hint: `the shelf holds ${input.shelf.map(({ id }) => id).join(", ") || "nothing"}`,
  });
}

/**
 * What the mix gives between two days, as mg per litre of the feed of that time; nothing where it has given out.
 */
export function mixRates(planting: Planting, from: number, until: number, litres: number): Delivered {
  const { fromMix } = planting;
  if (!fromMix) return {};
  const begins = dayNumber(planting.setOut);
  const days = Math.max(0, Math.min(until, begins + fromMix.overDays) - Math.max(from, begins));
  if (days === 0) return {};
  const share = days / fromMix.overDays;
  return Object.fromEntries(
    Object.entries(fromMix.gramsPerPlant).map(([nutrient, grams]) => [
      nutrient,
      (grams * share * planting.plants * 1000) / litres,
    ]),
  );
}
