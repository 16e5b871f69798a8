import * as z from "zod/mini";
import { throughDoor } from "../../outcome/door.ts";
import { answer, at, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { readDensity } from "../../product/read-product-options.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Offer } from "../order/offer.ts";
import { readBulk, readPack, splitName } from "../order/read-offer.ts";

/** How an ingredient can be had. */
export interface IngredientSupply {
  readonly name: string;
  readonly offers: readonly Offer[];
  /** Loose litres at hand. */
  readonly stockLitres: number;
  /** The grower's own measurement, oven-dry or as dry as it is used; overrules what is published. */
  readonly dryKilogramsPerLitre?: number;
}

const texts = z.optional(z.array(z.string()));

/** An ingredient on the shelf: `name: compost`, `packs: ["50 L 6.50"]`, `bulk: ["45 per m3, least 1 m3"]`, `stock: 80 L`. */
const shelfIngredient = z.strictObject({
  name: z.string().check(z.minLength(1)),
  packs: texts,
  bulk: texts,
  stock: z.optional(z.string()),
  density: z.optional(z.string()),
});

/** Reads the `components` of a shelf file; all problems at once. */
export function readShelfIngredients(
  entries: readonly unknown[],
  read: QuantityReader,
): Outcome<readonly IngredientSupply[]> {
  return gatherList(entries.map((entry, index) => within(`components[${index}]`, readShelfIngredient(entry, read))));
}

/** Puts problems below a field of the file, dotted, so that the file's reader can find its line. */
function within<T>(path: string, outcome: Outcome<T>): Outcome<T> {
  if (outcome.ok) return outcome;
  return unusable(
    ...outcome.problems.map((problem) => ({
      ...problem,
      path: problem.path === "" ? path : `${path}.${problem.path}`,
    })),
  );
}

function readShelfIngredient(entry: unknown, read: QuantityReader): Outcome<IngredientSupply> {
  const entered = throughDoor(shelfIngredient, entry);
  if (!entered.ok) return entered;
  const { packs = [], bulk = [], stock, density } = entered.value;
  const name = entered.value.name.trim().toLowerCase();
  const offers = gatherList([
    ...packs.map((text, index) => within(`packs[${index}]`, readPack(text, read))),
    ...bulk.map((text, index) => within(`bulk[${index}]`, readBulk(text, name, read))),
  ]);
  const litres = stock === undefined ? answer(0) : within("stock", ofDimension(read(stock), "volume", stock));
  const dry = density === undefined ? answer(undefined) : readDensity(density, read);
  if (!offers.ok || !litres.ok || !dry.ok) {
    return unusable(...[offers, litres, dry].flatMap((one) => (one.ok ? [] : one.problems)));
  }
  return answer(
    {
      name,
      offers: offers.value,
      stockLitres: litres.value,
      ...(dry.value === undefined ? {} : { dryKilogramsPerLitre: dry.value }),
    },
    [...offers.cautions, ...litres.cautions],
  );
}

/** Supplies as they are written on the command line, each with its ingredient's name in front. */
export interface SupplyTexts {
  readonly pack: readonly string[];
  readonly bulk: readonly string[];
  readonly stock: readonly string[];
}

/** Reads `compost 50 L 6.50` and the like; the names must be ingredients that are to be bought. */
export function readSupplyTexts(
  { pack, bulk, stock }: SupplyTexts,
  ingredients: readonly string[],
  read: QuantityReader,
): Outcome<readonly IngredientSupply[]> {
  const named = <T>(kind: string, texts: readonly string[], one: (rest: string, name: string) => Outcome<T>) =>
    gatherList(
      texts.map((text, index): Outcome<readonly [string, T]> => {
        const path = texts.length > 1 ? `${kind}[${index}]` : kind;
        const split = splitName(text);
        if (!split || !ingredients.includes(split.name))
          return at(path, unusable(notAnIngredient(text, split?.name, ingredients)));
        const value = at(path, one(split.rest, split.name));
        return value.ok ? answer([split.name, value.value] as const, value.cautions) : value;
      }),
    );
  const offers = named("pack", pack, (rest) => readPack(rest, read));
  const loads = named("bulk", bulk, (rest, name) => readBulk(rest, name, read));
  const stocks = named("stock", stock, (rest) => ofDimension(read(rest), "volume", rest));
  if (!offers.ok || !loads.ok || !stocks.ok) {
    return unusable(...[offers, loads, stocks].flatMap((one) => (one.ok ? [] : one.problems)));
  }
  const supplies = ingredients.map(
    (name): IngredientSupply => ({
      name,
      offers: [...offers.value, ...loads.value].filter(([of]) => of === name).map(([, offer]) => offer),
      stockLitres: stocks.value.filter(([of]) => of === name).reduce((sum, [, litres]) => sum + litres, 0),
    }),
  );
  return answer(supplies, [...offers.cautions, ...loads.cautions, ...stocks.cautions]);
}

function notAnIngredient(text: string, name: string | undefined, ingredients: readonly string[]) {
  return {
    code: "supply-unreadable",
    path: "",
    message:
      name === undefined ? `"${text}" does not say what it is of.` : `"${name}" is not to be bought for this recipe.`,
    expected: `one of the recipe's ingredients (${ingredients.join(", ")}), then its size`,
    received: text,
    hint: `write for example "${ingredients[0] ?? "compost"} 50 L 6.50"`,
  };
}

/** One list of supplies from several, those of one ingredient put together. */
export function mergedSupplies(...lists: readonly (readonly IngredientSupply[])[]): IngredientSupply[] {
  const byName = new Map<string, IngredientSupply>();
  for (const supply of lists.flat()) {
    const before = byName.get(supply.name);
    byName.set(
      supply.name,
      before
        ? {
            ...before,
            ...supply,
            offers: [...before.offers, ...supply.offers],
            stockLitres: before.stockLitres + supply.stockLitres,
          }
        : supply,
    );
  }
  return [...byName.values()];
}
