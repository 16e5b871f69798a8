import { answer, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { readNumber } from "../quantity/number.ts";
import type { QuantityReader } from "../quantity/quantity.ts";
import type { Product } from "./product.ts";
import type { LabelBasis, LabelMeasure } from "./read-label.ts";
import type { ProductReading } from "./read-product.ts";

/** The texts that say how a label is to be read. */
export interface ProductOptionTexts {
  readonly basis?: string | undefined;
  readonly by?: string | undefined;
  readonly density?: string | undefined;
}

/** Reads how a label is to be read: its basis, percent by mass or volume, and the density. */
export function readProductOptions(texts: ProductOptionTexts, quantity: QuantityReader): Outcome<ProductReading> {
  const parts = gather<{
    basis: LabelBasis | undefined;
    measure: LabelMeasure | undefined;
    density: number | undefined;
  }>({
    basis: oneOf("basis", texts.basis, ["oxide", "element"]),
    measure: oneOf("by", texts.by, ["mass", "volume"]),
    density: texts.density === undefined ? answer(undefined) : readDensity(texts.density, quantity),
  });
  if (!parts.ok) return parts;
  const { basis, measure, density } = parts.value;
  return answer({
    ...(basis === undefined ? {} : { basis }),
    ...(measure === undefined ? {} : { measure }),
    ...(density === undefined ? {} : { densityKilogramsPerLitre: density }),
  });
}

/**
 * Whether what was said of a label suits the product it was said of: percent by volume belongs to a label that is
 * written out, and a product that brings its own density keeps it.
 *
 * @param texts As they were written; what was not said suits everything.
 * @param product As it was read.
 */
export function fitsProduct(
  { by, density }: ProductOptionTexts,
  product: Product,
  shelf: readonly Product[],
): Outcome<Product> {
  const { id, origin, name } = product;
  if (by?.trim().toLowerCase() === "volume" && origin !== "grade") {
    return unusable({
      code: "options-conflict",
      path: "by",
      message: `${WHY_BY_MASS[origin](name)}, so --by volume cannot apply to it.`,
      expected: "percent by volume only with a label that is written out, such as 5-1-3",
      received: `volume, for ${id}`,
      hint:
        origin === "shelf"
          ? `leave out --by, or write "by: volume" and the density at ${id} in the shelf file`
          : 'leave out --by; for a liquid, write its label instead: trug label 5-1-3 --by volume --density "1.15 kg/L"',
    });
  }
  const own = origin === "shelf" ? shelf.find((kept) => kept.id === id)?.densityKilogramsPerLitre : undefined;
  if (density === undefined || own === undefined) return answer(product);
  return unusable({
    code: "options-conflict",
    path: "density",
    message: `${name} has a density of its own in the shelf file, ${own} kg/L.`,
    expected: "the shelf file's density, or none there",
    received: density,
    hint: `leave out --density, or change it at ${id} in the shelf file`,
  });
}

const WHY_BY_MASS: Readonly<Record<Product["origin"], (name: string) => string>> = {
  grade: (name) => `The label ${name} is by mass`,
  formula: (name) => `The percentages of a formula such as ${name} are by mass`,
  material: (name) => `What ${name} holds is known by mass`,
  shelf: (name) => `The shelf file says how the label of ${name} is to be read`,
};

function oneOf<T extends string>(
  path: string,
  written: string | undefined,
  choices: readonly T[],
): Outcome<T | undefined> {
  if (written === undefined) return answer(undefined);
  const choice = choices.find((name) => name === written.trim().toLowerCase());
  if (choice) return answer(choice);
  return unusable({
    code: "choice-unknown",
    path,
    message: `"${written}" is not one of the choices.`,
    expected: choices.join(" or "),
    received: written,
    hint: `write ${choices.join(" or ")}`,
  });
}

/**
 * Reads a density: `1.2 kg/L`, `950 g/L`, `10.7 lb/US gal`, or a mass over a volume such as `6 g / 1 tsp`.
 *
 * @returns kg per litre, more than zero.
 * @example
 * readDensity("950 g/L", readPlainQuantity)  // => 0.95
 */
export function readDensity(written: string, quantity: QuantityReader): Outcome<number> {
  const problem = unusable({
    code: "density-unreadable",
    path: "density",
    message: `"${written}" is not a density.`,
    expected: "a density of more than zero, such as 1.2 kg/L or 6 g / 1 tsp",
    received: written,
    hint: "weigh a litre, or ten level spoons, and write mass over volume",
  });
  if (readNumber(written).ok) {
    return unusable({
      code: "unit-missing",
      path: "density",
      message: `"${written}" has no unit.`,
      expected: "a density with its unit, such as 1.2 kg/L",
      received: written,
      hint: `write the unit too, such as "${written.trim()} kg/L"`,
    });
  }
  const cut = written.lastIndexOf("/");
  if (cut < 0) return problem;
  const volumeText = written.slice(cut + 1).trim();
  const mass = quantity(written.slice(0, cut));
  const volume = quantity(/^\d/.test(volumeText) ? volumeText : `1 ${volumeText}`);
  if (!mass.ok || !volume.ok || mass.value.dimension !== "mass" || volume.value.dimension !== "volume") return problem;
  // Grams per litre to kilograms per litre. The lightest powders lie above 0.02, the heaviest salts below 10.
  const density = mass.value.value / volume.value.value / 1000;
  return density >= 0.02 && density <= 10 ? answer(density, volume.cautions) : problem;
}
