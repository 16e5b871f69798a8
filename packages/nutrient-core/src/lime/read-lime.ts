import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { andThen, answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { ofDimension } from "../quantity/quantity.ts";
import { type FedArea, readArea } from "../supply/read-area.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import { type Amendment, amendmentOf } from "./amendment.ts";
import type { LimeInput } from "./lime-input.ts";
import { outsidePrintedRange } from "./printed-range.ts";
import { readPh } from "./read-ph.ts";
import { readSoil, type Soil } from "./read-soil.ts";

const text = z.optional(z.string());

/** What a grower says, all as text. */
export const limeRequest = z.strictObject({
  material: z.string(),
  area: text,
  from: text,
  to: text,
  texture: text,
  bufferPh: text,
  acidity: text,
  method: text,
  depth: text,
  cce: text,
  fineness: text,
});
export type LimeRequest = z.infer<typeof limeRequest>;

/**
 * Turns a request to move a soil's pH into the numbers that it is worked out from, or says everything that is wrong
 * with it: a direction that the material cannot go, a figure outside its source's printed range, a soil nobody knows.
 *
 * @param request Anything: an object of texts as {@link LimeRequest}.
 * @example
 * readLime({ material: "sulfur", area: "3 m2", from: "6.5", to: "5.5", texture: "loam" }, { shelf: [], quantity: readPlainQuantity })  // => { fromPh: 6.5, toPh: 5.5 }
 */
export function readLime(request: unknown, context: ReadingContext): Outcome<LimeInput> {
  return andThen(throughDoor(limeRequest, request), (texts) => {
    const parts = gather<{
      material: { product: Product; amendment: Amendment };
      area: FedArea;
      fromPh: number;
      toPh: number;
      soil: Soil;
      depthMetres: number | undefined;
    }>({
      material: andThen(at("material", readMaterial(texts.material, context)), (product) =>
        andThen(amendmentOf(product, texts), (amendment) => answer({ product, amendment })),
      ),
      area: texts.area === undefined ? unusable(AREA_MISSING) : at("area", readArea(texts.area, context.quantity)),
      fromPh: texts.from === undefined ? unusable(phMissing("from")) : at("from", readPh(texts.from)),
      toPh: texts.to === undefined ? unusable(phMissing("to")) : at("to", readPh(texts.to)),
      soil: readSoil(texts),
      depthMetres: texts.depth === undefined ? answer(undefined) : at("depth", readDepth(texts.depth, context)),
    });
    return andThen(parts, ({ material: { product, amendment }, area, fromPh, toPh, soil, depthMetres }) => {
      const problems = [
        ...againstDirection(product, amendment, fromPh, toPh),
        ...(amendment.kind === "sulfur" && soil.kind === "test" ? [testOfLimeOnly(texts)] : []),
      ];
      if (problems.length > 0) return unusable(...problems);
      // Where nothing is to be moved, no table is asked.
      const outside = fromPh === toPh ? [] : outsidePrintedRange(amendment, soil, fromPh, toPh);
      if (outside.length > 0) return unusable(...outside);
      return answer({
        product,
        amendment,
        area,
        fromPh,
        toPh,
        soil,
        ...(depthMetres === undefined ? {} : { depthMetres }),
      });
    });
  });
}

/** A name that nobody knows is answered with what moves a pH, not with grades. */
function readMaterial(written: string, { shelf }: ReadingContext): Outcome<Product> {
  const product = readProduct(written, { shelf });
  if (product.ok) return product;
  return unusable(
    ...product.problems.map((problem) =>
      problem.code === "product-unknown" ? { ...problem, expected: MATERIALS, hint: MATERIAL_HINT } : problem,
    ),
  );
}

const MATERIALS = "a lime, elemental sulfur, a formula (CaCO3) or an id from the shelf file";
const MATERIAL_HINT =
  "to raise the pH write agricultural-lime (ground limestone), dolomitic-lime or hydrated-lime; to lower it, sulfur";

/** What a spade or a tiller mixes through: 5 to 30 cm (common practice, no source). */
const SHALLOWEST_METRES = 0.05;
const DEEPEST_METRES = 0.305;

function readDepth(written: string, context: ReadingContext): Outcome<number> {
  return andThen(ofDimension(context.quantity(written), "length", written), (metres) => {
    if (metres >= SHALLOWEST_METRES && metres <= DEEPEST_METRES) return answer(metres);
    return unusable({
      code: "depth-out-of-range",
      path: "",
      message: `"${written}" is not a depth through which lime or sulfur can be mixed evenly.`,
      expected: "5 cm to 30 cm (2 in to 12 in)",
      received: written,
      hint: "write how deep it is dug in, such as 15 cm or 6 in; deeper soil is treated layer by layer",
    });
  });
}

function againstDirection({ name }: Product, { kind }: Amendment, fromPh: number, toPh: number): Problem[] {
  if (kind === "lime" ? toPh >= fromPh : toPh <= fromPh) return [];
  const does = kind === "lime" ? "raises" : "lowers";
  return [
    {
      code: "wrong-direction",
      path: "to",
      message: `${name.charAt(0).toUpperCase()}${name.slice(1)} ${does} the pH, and ${toPh} is ${kind === "lime" ? "below" : "above"} ${fromPh}.`,
      expected: `a pH ${kind === "lime" ? "above" : "below"} ${fromPh}`,
      received: String(toPh),
      hint:
        kind === "lime"
          ? "check --from and --to, or take sulfur to lower the pH"
          : "check --from and --to, or take agricultural-lime to raise the pH",
    },
  ];
}

function testOfLimeOnly({ bufferPh, acidity, method }: LimeRequest): Problem {
  const path = bufferPh === undefined ? (acidity === undefined ? "method" : "acidity") : "bufferPh";
  return {
    code: "options-conflict",
    path,
    message: "A buffer test tells how much lime a soil needs, not how much sulfur.",
    expected: "a texture with sulfur",
    received: bufferPh ?? acidity ?? method ?? "nothing",
    hint: "say how the soil feels instead: --texture loam",
  };
}

function phMissing(path: "from" | "to"): Problem {
  const from = path === "from";
  return {
    code: "option-missing",
    path,
    message: from ? "The pH that the soil has is missing." : "The pH that is wanted is missing.",
    expected: from ? "the soil's pH by a test, such as 5.6" : "a pH, such as 6.5",
    received: "nothing",
    hint: from ? "test the soil, and add --from 5.6" : "add --to 6.5, where most fruiting vegetables do well",
  };
}

const AREA_MISSING: Problem = {
  code: "option-missing",
  path: "area",
  message: "The area of the bed is missing.",
  expected: "an area such as 3 m2, 4 ft x 8 ft or circle 60 cm",
  received: "nothing",
  hint: 'add --area "1.2 m x 2.4 m"',
};
