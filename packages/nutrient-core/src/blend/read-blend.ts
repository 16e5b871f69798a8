import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { answer, at, gather, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { readProductOptions } from "../product/read-product-options.ts";
import { readNumber } from "../quantity/number.ts";
import { ofDimension } from "../quantity/quantity.ts";
import type { Extent } from "../supply/basis.ts";
import type { Triple } from "../supply/ratio.ts";
import { readArea } from "../supply/read-area.ts";
import { readAlready, readRateTarget } from "../supply/read-rates.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { Delivered } from "../supply/supply.ts";
import type { BlendInput, BlendPurpose } from "./blend.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
export const blendRequest = z.strictObject({
  products: z.array(z.string()),
  ratio: text,
  grade: text,
  batch: text,
  target: text,
  water: text,
  area: text,
  volume: text,
  already: text,
  within: text,
  basis: text,
});
export type BlendRequest = z.infer<typeof blendRequest>;

/** The most products a blend takes. */
export const MOST_PRODUCTS = 30;

/**
 * Turns a blend request's texts into the numbers a blend is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link BlendRequest}.
 */
export function readBlend(request: unknown, context: ReadingContext): Outcome<BlendInput> {
  const entered = throughDoor(blendRequest, request);
  if (!entered.ok) return entered;
  const texts = entered.value;
  const purpose = readPurpose(texts, context);
  const basis = purpose.ok && purpose.value.kind === "target" ? purpose.value.extent.basis : undefined;
  const parts = gather<{ products: readonly Product[]; purpose: BlendPurpose; already: Delivered; within: number }>({
    products: readProducts(texts, context),
    purpose,
    already:
      texts.already === undefined || basis === undefined
        ? answer({})
        : at("already", readAlready(texts.already, basis)),
    within: texts.within === undefined ? answer(0) : at("within", readShare(texts.within)),
  });
  return parts;
}

function readProducts(texts: BlendRequest, context: ReadingContext): Outcome<readonly Product[]> {
  const options = readProductOptions(texts, context.quantity);
  if (!options.ok) return options;
  if (texts.products.length === 0 || texts.products.length > MOST_PRODUCTS) {
    return unusable({
      code: "products-count",
      path: "products",
      message: texts.products.length === 0 ? "There is nothing to blend." : "There are too many products to blend.",
      expected: `one to ${MOST_PRODUCTS} products`,
      received: String(texts.products.length),
      hint: "name the bags to blend, such as 46-0-0 0-0-60",
    });
  }
  const twice = texts.products.find((name, index) => texts.products.indexOf(name) < index);
  if (twice !== undefined) {
    return unusable({
      code: "product-twice",
      path: "products",
      message: `"${twice}" is named twice.`,
      expected: "each product once",
      received: texts.products.join(", "),
      hint: "leave one of the two out",
    });
  }
  return gatherList(
    texts.products.map((name, index) =>
      at(`products[${index}]`, readProduct(name, { ...options.value, shelf: context.shelf })),
    ),
  );
}

function readPurpose(texts: BlendRequest, context: ReadingContext): Outcome<BlendPurpose> {
  const kinds = (["ratio", "grade", "target"] as const).filter((kind) => texts[kind] !== undefined);
  const [kind] = kinds;
  if (kinds.length !== 1 || kind === undefined) {
    return unusable({
      code: kinds.length === 0 ? "option-missing" : "options-conflict",
      path: kinds[1] ?? "target",
      message: kinds.length === 0 ? "What the blend is for is not said." : "A blend has one purpose at a time.",
      expected: "one of a ratio, a grade or a target",
      received: kinds.length === 0 ? "none" : kinds.join(" and "),
      hint: 'use --ratio 3-1-2 --batch "1 kg", or --target "N 150 ppm, K 200 ppm" --water "9 L"',
    });
  }
  if (kind !== "target") {
    const batch = texts.batch;
    const parts = gather<{ triple: Triple; batchGrams: number }>({
      triple: at(kind, readTriple(texts[kind]!)),
      batchGrams:
        batch === undefined
          ? unusable(missing("batch", "how much to make, such as 1 kg", '--batch "1 kg"'))
          : at("batch", ofDimension(context.quantity(batch), "mass", batch)),
    });
    if (!parts.ok) return parts;
    const { triple, batchGrams } = parts.value;
    if (kind === "ratio") return answer({ kind, ratio: triple, batchGrams });
    return triple[0] + triple[1] + triple[2] <= 100
      ? answer({ kind, grade: triple, batchGrams })
      : unusable(overWhole(texts.grade!));
  }
  const extent = readExtent(texts, context);
  if (!extent.ok) return extent;
  const place = { litre: "a can", squareMetre: "a bed", cubicMetre: "a mix" }[extent.value.basis];
  const target = at("target", readRateTarget(texts.target!, extent.value.basis, place));
  if (!target.ok) return target;
  return answer(
    { kind, wanted: target.value.wanted, extent: extent.value },
    [...extent.cautions, ...target.cautions],
    [...extent.working, ...target.working],
  );
}

function readExtent(texts: BlendRequest, { quantity }: ReadingContext): Outcome<Extent> {
  const given = (["water", "area", "volume"] as const).filter((name) => texts[name] !== undefined);
  const [name] = given;
  if (given.length !== 1 || name === undefined) {
    return unusable(
      missing(
        given[1] ?? "water",
        "exactly one of water, area and volume",
        '--water "9 L", --area "3 m2" or --volume "2 cu ft"',
      ),
    );
  }
  const written = texts[name]!;
  if (name === "area") {
    const area = at(name, readArea(written, quantity));
    return area.ok
      ? answer({ basis: "squareMetre", amount: area.value.squareMetres }, area.cautions, area.working)
      : area;
  }
  const volume = at(name, ofDimension(quantity(written), "volume", written));
  if (!volume.ok) return volume;
  const extent: Extent =
    name === "water" ? { basis: "litre", amount: volume.value } : { basis: "cubicMetre", amount: volume.value / 1000 };
  return answer(extent, volume.cautions, volume.working);
}

/**
 * Reads a ratio or grade: three numbers for N, P2O5 and K2O, parted by hyphens or colons.
 *
 * @example
 * readTriple("3-1-2")  // => [3, 1, 2]
 */
export function readTriple(written: string): Outcome<Triple> {
  const parts = written
    .trim()
    .split(/\s*[-:–]\s*/)
    .map(readNumber);
  const numbers = parts.flatMap((part) => (part.ok ? [part.value] : []));
  if (parts.length !== 3 || numbers.length !== 3) {
    return unusable({
      code: "ratio-unreadable",
      path: "",
      message: `"${written}" is not three numbers.`,
      expected: "N, P2O5 and K2O, such as 3-1-2",
      received: written,
      hint: "write three numbers with hyphens between them; 0 where none is wanted",
    });
  }
  return answer([numbers[0]!, numbers[1]!, numbers[2]!]);
}

/** Reads a share of 0 to 1 written in percent: `5%`. */
function readShare(written: string): Outcome<number> {
  const number = readNumber(written.trim().replace(/\s*%$/, ""));
  if (number.ok && number.value >= 0 && number.value <= 100 && written.includes("%")) return answer(number.value / 100);
  return unusable({
    code: "share-unreadable",
    path: "",
    message: `"${written}" is not a percentage from 0 to 100.`,
    expected: "a percentage such as 5%",
    received: written,
    hint: "write the percent sign too: 5%",
  });
}

function missing(path: string, expected: string, hint: string) {
  return {
    code: "option-missing",
    path,
    message: `${expected.charAt(0).toUpperCase()}${expected.slice(1)} is needed.`,
    expected,
    received: "nothing",
    hint: `add ${hint}`,
  };
}

function overWhole(written: string) {
  return {
    code: "label-over-whole",
    path: "grade",
    message: `A grade of ${written} is more than the whole batch.`,
    expected: "three percentages that add to at most 100",
    received: written,
    hint: "check the numbers, or use --ratio when only their proportion matters",
  };
}
