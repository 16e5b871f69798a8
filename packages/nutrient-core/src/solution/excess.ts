import type { Nutrient } from "../element/nutrient.ts";
import type { Facts } from "../outcome/caution.ts";
import { shown } from "../outcome/sentence.ts";
import type { Delivered } from "../supply/supply.ts";
import type { StrongestOf } from "./feed-limits.ts";

/** What is too much, each with its own comparison and where that comes from. */
export interface Excess extends Facts {
  readonly excesses: readonly string[];
  readonly sources: readonly string[];
}

/** One nutrient that is too much, in words, and the source of what it is compared with. */
export type Said = readonly [words: string, source: string];

/**
 * The nutrients that pass so many times their limit.
 *
 * @param times Of the limit, at least 1.
 * @param compared What the limit is, in words.
 * @param names What a nutrient is called where its symbol alone would mislead.
 */
export function excesses(
  delivered: Delivered,
  limits: StrongestOf,
  times: number,
  unit: string,
  compared: string,
  names: Readonly<Partial<Record<Nutrient, string>>> = {},
): Said[] {
  return (Object.keys(limits) as Nutrient[]).flatMap((nutrient) => {
    const { amount, source } = limits[nutrient]!;
    const given = delivered[nutrient] ?? 0;
    return given > times * amount
      ? [[`${names[nutrient] ?? nutrient} ${shown(given)} ${unit} (${compared} ${shown(amount)})`, source] as const]
      : [];
  });
}

export function gathered(said: readonly Said[]): Excess {
  return { excesses: said.map(([words]) => words), sources: [...new Set(said.map(([, source]) => source))] };
}
