import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { answer, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../quantity/quantity.ts";
import { materialById } from "./materials.ts";
import { HAZARDS, type Pack, type Product } from "./product.ts";
import { productFromLabel, readFormulaProduct } from "./read-product.ts";
import { readProductOptions } from "./read-product-options.ts";
import { packMissing, problemOfId, volumeOfNoLabel } from "./shelf-problems.ts";

const text = z.optional(z.string());

const shelfProduct = z.strictObject({
  id: z.string().check(z.regex(/^[a-z0-9][a-z0-9-]*$/, "small letters, digits and hyphens")),
  name: text,
  /** One of these three says what is in it. */
  label: text,
  formula: text,
  material: text,
  basis: text,
  by: text,
  density: text,
  /** For one pack. */
  price: z.optional(z.number().check(z.nonnegative())),
  pack: text,
  /** Other sizes in which it is sold. */
  otherPacks: z.optional(
    z.array(z.strictObject({ pack: z.string(), price: z.optional(z.number().check(z.nonnegative())) })),
  ),
  stock: text,
  liquid: z.optional(z.boolean()),
  solubility: z.optional(z.number().check(z.positive())),
  hazards: z.optional(z.array(z.enum(HAZARDS))),
});

/** The shelf file as it is written: products for feeding, components for mixing. */
export const shelfDocument = z.strictObject({
  kind: z.optional(z.literal("shelf")),
  currency: text,
  note: text,
  products: z.optional(z.array(shelfProduct)),
  /** Read by the mix room. */
  components: z.optional(z.array(z.unknown())),
});

/** What stands in the shed. */
export interface Shelf {
  readonly currency?: string;
  readonly products: readonly Product[];
  /** Left as written for the mix room to read. */
  readonly components: readonly unknown[];
}

export const EMPTY_SHELF: Shelf = { products: [], components: [] };

/**
 * Turns a shelf document into products, or says everything that is wrong with it.
 *
 * @param document Anything: the parsed file.
 * @param quantity Reads the packs, stocks and densities.
 */
export function readShelf(document: unknown, quantity: QuantityReader): Outcome<Shelf> {
  const entered = throughDoor(shelfDocument, document);
  if (!entered.ok) return entered;
  const { currency, products = [], components = [] } = entered.value;
  if (products.length === 0 && components.length === 0) {
    return unusable({
      code: "shelf-empty",
      path: "",
      message: "The shelf holds nothing.",
      expected: "at least one product or component",
      received: "an empty shelf",
      hint: "add a product: an id, and its label, formula or material",
    });
  }
  const seen = new Map<string, number>();
  const read = gatherList(
    products.map((entry, index): Outcome<Product> => {
      const path = `products[${index}]`;
      const product = readEntry(entry, path, quantity);
      const idProblem = problemOfId(entry.id, path, seen);
      seen.set(entry.id, index);
      if (!idProblem) return product;
      return unusable(idProblem, ...(product.ok ? [] : product.problems));
    }),
  );
  if (!read.ok) return read;
  return answer({ products: read.value, components, ...(currency === undefined ? {} : { currency }) }, read.cautions);
}

type Entry = z.infer<typeof shelfProduct>;

function readEntry(entry: Entry, path: string, quantity: QuantityReader): Outcome<Product> {
  const base = readBase(entry, path, quantity);
  const pack =
    entry.pack === undefined ? answer(undefined) : within(`${path}.pack`, massOf(entry.pack, quantity, base));
  const stock =
    entry.stock === undefined ? answer(undefined) : within(`${path}.stock`, massOf(entry.stock, quantity, base));
  const others = gatherList(
    (entry.otherPacks ?? []).map(({ pack: written, price }, index): Outcome<Pack> => {
      const mass = within(`${path}.otherPacks[${index}].pack`, massOf(written, quantity, base));
      return mass.ok ? answer({ massGrams: mass.value, ...(price === undefined ? {} : { price }) }) : mass;
    }),
  );
  const priced = entry.price !== undefined && entry.pack === undefined ? unusable(packMissing(entry.id, path)) : PRICED;
  const problems = [base, pack, stock, others, priced].flatMap((part) => (part.ok ? [] : part.problems));
  if (!base.ok || !pack.ok || !stock.ok || !others.ok || !priced.ok) return unusable(...problems);
  const usual: Pack[] =
    pack.value === undefined
      ? []
      : [{ massGrams: pack.value, ...(entry.price === undefined ? {} : { price: entry.price }) }];
  const packs = [...usual, ...others.value];
  const product: Product = {
    ...base.value,
    id: entry.id,
    name: entry.name ?? entry.id,
    origin: "shelf",
    ...(entry.liquid === undefined ? {} : { state: entry.liquid ? "liquid" : "solid" }),
    ...(entry.solubility === undefined ? {} : { solubilityGramsPerLitre: entry.solubility }),
    ...(entry.hazards === undefined ? {} : { hazards: [...new Set([...base.value.hazards, ...entry.hazards])] }),
    ...(entry.price === undefined ? {} : { pricePerGram: entry.price / pack.value! }),
    ...(packs.length === 0 ? {} : { packs }),
    ...(stock.value === undefined ? {} : { stockGrams: stock.value }),
  };
  return answer(product, base.cautions);
}

const PRICED: Outcome<true> = answer(true);

function readBase(entry: Entry, path: string, quantity: QuantityReader): Outcome<Product> {
  const named = (["label", "formula", "material"] as const).filter((key) => entry[key] !== undefined);
  if (named.length !== 1 && !(named.length === 2 && named.includes("label") && named.includes("formula"))) {
    return unusable({
      code: named.length === 0 ? "field-missing" : "options-conflict",
      path: `${path}.label`,
      message:
        named.length === 0
          ? `What ${entry.id} holds is not said.`
          : `What ${entry.id} holds is said in more than one way.`,
      expected: "one of label, formula or material (a label may stand beside the formula of its salt)",
      received: named.length === 0 ? "none of them" : named.join(" and "),
      hint: "write the grade from the bag: label: 5-10-10",
    });
  }
  const options = readProductOptions(entry, quantity);
  if (!options.ok) {
    // Whatever is wrong with how it is to be read, what it says can be judged by itself.
    const said = readBase({ ...entry, basis: undefined, by: undefined, density: undefined }, path, quantity);
    const own = options.problems.map((problem) => ({ ...problem, path: `${path}.${problem.path}` }));
    return unusable(...own, ...(said.ok ? [] : said.problems));
  }
  if (options.value.measure === "volume" && entry.label === undefined) {
    return unusable(volumeOfNoLabel(entry.id, path));
  }
  const density = options.value.densityKilogramsPerLitre;
  const withDensity = (product: Product): Product =>
    density === undefined ? product : { ...product, densityKilogramsPerLitre: density };
  if (entry.material !== undefined) {
    const material = materialById(entry.material);
    if (material) return answer(withDensity(material));
    return unusable({
      code: "material-unknown",
      path: `${path}.material`,
      message: `"${entry.material}" is not a generic material that is known here.`,
      expected: "the id of a generic material",
      received: entry.material,
      hint: '"trug label" alone lists the generic materials',
    });
  }
  const formula =
    entry.formula === undefined ? undefined : within(`${path}.formula`, readFormulaProduct(entry.formula)!);
  if (entry.label === undefined) return formula!.ok ? answer(withDensity(formula!.value)) : formula!;
  const label = within(`${path}.label`, productFromLabel(entry.label, options.value));
  if (!label.ok) return label;
  if (!formula) return label;
  if (!formula.ok) return formula;
  // The label says how much; the formula says what salt it is, for hazards, solubility and conductivity.
  return answer({ ...formula.value, ...label.value, hazards: formula.value.hazards, formula: formula.value.formula! });
}

function within<T>(path: string, outcome: Outcome<T>): Outcome<T> {
  if (outcome.ok) return outcome;
  return unusable(...outcome.problems.map((problem) => ({ ...problem, path })));
}

function massOf(written: string, quantity: QuantityReader, base: Outcome<Product>): Outcome<number> {
  const read = quantity(written);
  const density = base.ok ? base.value.densityKilogramsPerLitre : undefined;
  if (read.ok && read.value.dimension === "volume" && density !== undefined)
    return answer(read.value.value * density * 1000);
  // Without the product nobody knows whether its density was said: then a volume is no mistake by itself.
  if (read.ok && read.value.dimension === "volume" && !base.ok) return answer(0);
  return ofDimension(read, "mass", written);
}
