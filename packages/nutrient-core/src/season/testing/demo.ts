import type { Product } from "../../product/product.ts";
import { readProduct } from "../../product/read-product.ts";
import type { CivilDate } from "../civil-date.ts";
import { cropFacts } from "../crop.ts";
import type { Programme } from "../programme.ts";
import { TWO_PHASE } from "../programmes/two-phase.ts";
import type { Planting, SeasonInput } from "../season.ts";

/** A day, in tests that write it right. */
export const day = (text: string): CivilDate => text as CivilDate;

/** A product by its grade or formula, with a price and packs; numbers invented. */
export function product(id: string, label: string, more: Partial<Product> = {}): Product {
  const read = readProduct(label);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return { ...read.value, id, name: id, ...more };
}

const sold = (price: number): Partial<Product> => ({
  pricePerGram: price / 1000,
  packs: [{ massGrams: 1000, price }],
});

export const LEAFY: Product = product("leafy-feed", "20-10-20", sold(14));
export const BLOOM: Product = product("bloom-feed", "5-15-30", sold(16));
export const SALTPETRE: Product = product("saltpetre", "13-0-46", sold(9));

/** One planting of 20 pots; numbers invented. */
export function planting(more: Partial<Planting> = {}): Planting {
  return {
    name: "pots",
    crop: "sweet pepper",
    facts: cropFacts("sweet pepper"),
    places: [{ name: "pots", kind: "pot", count: 20, plants: 20, volumeLitres: 400, areaSquareMetres: 1.6 }],
    plants: 20,
    areaSquareMetres: 1.6,
    setOut: day("2027-05-15"),
    end: day("2027-10-10"),
    programme: TWO_PHASE,
    ...more,
  };
}

/** A season of one planting and three products; numbers invented. */
export function season(more: Partial<SeasonInput> = {}): SeasonInput {
  const products = more.products ?? [LEAFY, BLOOM, SALTPETRE];
  return {
    name: "a season",
    plantings: [planting()],
    products,
    shelf: products,
    water: {},
    canLitres: 10,
    labelRule: "us",
    ceilings: [],
    leachingShare: 0.15,
    weather: [],
    reminders: true,
    ...more,
  };
}

/** The programme with each stage fed by its own products. */
export function fedWith(programme: Programme, products: Readonly<Record<string, readonly string[]>>): Programme {
  return {
    ...programme,
    stages: programme.stages.map((stage) => {
      const own = products[stage.id];
      return own ? { ...stage, products: own } : stage;
    }),
  };
}

/** The value of an outcome, or a failed test that says why. */
export function answered<T>(outcome: { ok: true; value: T } | { ok: false; problems: readonly unknown[] }): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}
