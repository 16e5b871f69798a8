import type { Nutrient } from "../element/nutrient.ts";
import { fractionOf } from "../product/product.ts";
import type { BlendInput } from "./blend.ts";
import type { ReachedBlend } from "./engine/solution.ts";
import type { PosedBlend } from "./pose.ts";
import { materialThatHelps } from "./try-materials.ts";

const NAMES: Readonly<Partial<Record<Nutrient, string>>> = {
  N: "nitrogen",
  P: "phosphorus",
  K: "potassium",
  Ca: "calcium",
  Mg: "magnesium",
  S: "sulfur",
  Fe: "iron",
  Mn: "manganese",
  Zn: "zinc",
  Cu: "copper",
  B: "boron",
  Mo: "molybdenum",
  Cl: "chloride",
  Na: "sodium",
  Si: "silicon",
};

/** A nutrient's English name, for sentences. */
export function nutrientName(nutrient: Nutrient): string {
  return NAMES[nutrient] ?? nutrient;
}

/**
 * The reason behind a blend in a grower's words: what is short and over, which product ties two nutrients
 * together, which stock ran out, and which generic material would close the gap (tried, not guessed).
 */
export function explain(input: BlendInput, posed: PosedBlend, solution: ReachedBlend): string[] {
  if (solution.status === "met") return ["Every target is met."];
  const misses = posed.rows.map((row, index) => ({
    row,
    miss: solution.misses[index]!,
    relative: solution.relativeMisses[index]!,
  }));
  const off = misses.filter(({ relative }) => relative > 1e-6).sort((a, b) => b.relative - a.relative);
  const sentences = off.map(({ row, miss, relative }) => {
    const direction = miss < 0 ? "short of" : "over";
    return row.wanted > 0
      ? `${row.name} comes out ${percent(relative)} ${direction} what was asked.`
      : `${row.name} comes along though none was asked.`;
  });
  for (const { row, miss } of off) {
    if (miss < 0) sentences.push(...whyShort(row.nutrient, input, posed, solution));
  }
  for (const limit of solution.binding) {
    const product = input.products[limit.index];
    if (limit.kind === "upper" && product)
      sentences.push(`All of the ${product.name} on the shelf is used; more of it would come closer.`);
  }
  const helper = materialThatHelps(input, posed, solution);
  if (helper) {
    sentences.push(
      helper.meets
        ? `Adding ${helper.material.name.toLowerCase()} (${helper.material.id}) would meet every target.`
        : `Adding ${helper.material.name.toLowerCase()} (${helper.material.id}) would come closest: ${percent(helper.cut)} less of the miss.`,
    );
  }
  return [...new Set(sentences)];
}

function whyShort(nutrient: Nutrient, input: BlendInput, posed: PosedBlend, solution: ReachedBlend): string[] {
  const carriers = input.products.filter((product) => fractionOf(product, nutrient) > 0);
  const name = nutrientName(nutrient);
  if (carriers.length === 0) return [`None of these products holds ${name}.`];
  const over = posed.rows.filter((_, index) => solution.pulls[index]! > 0);
  const tied = over.find((row) => carriers.every((product) => fractionOf(product, row.nutrient) > 0));
  if (!tied) return [];
  return [
    `All the ${name} here comes with ${nutrientName(tied.nutrient)}, so more ${name} would bring too much ${nutrientName(tied.nutrient)}.`,
  ];
}

function percent(share: number): string {
  const value = share * 100;
  return `${value >= 10 ? Math.round(value) : Number(value.toPrecision(2))} %`;
}
