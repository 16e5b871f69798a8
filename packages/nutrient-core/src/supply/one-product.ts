import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { fractionOf, type Product } from "../product/product.ts";
import { BASIS, type Extent } from "./basis.ts";
import { type Amount, type Delivered, deliver, deliveredWorking, massForRate, massWorking } from "./supply.ts";
import type { Wanted } from "./target.ts";

/** An amount to be found from a target, or one that is given and judged. */
export type Purpose =
  | { readonly kind: "target"; readonly wanted: Wanted }
  | { readonly kind: "given"; readonly massGrams: number };

/** One product's amount, and what it delivers together with what was already there. */
export interface OneProduct {
  readonly massGrams: number;
  /** By the product alone. */
  readonly added: Delivered;
  /** With what was already there. */
  readonly delivered: Delivered;
}

/**
 * The map for one product, in whichever direction the purpose asks: target to amount, or amount to delivered.
 *
 * @param already Rates already there (in the water, in the bed), taken off the target.
 * @returns The amount, what it delivers, and the working.
 */
export function supplyOne(product: Product, purpose: Purpose, extent: Extent, already: Delivered): Outcome<OneProduct> {
  const working: WorkingLine[] = [];
  const mass =
    purpose.kind === "given"
      ? answer(purpose.massGrams)
      : massWanted(product, purpose.wanted, extent, already, working);
  if (!mass.ok) return mass;
  const amounts: Amount[] = [{ product, massGrams: mass.value }];
  const added = deliver(amounts, extent);
  for (const nutrient of ["N", "P", "K", "Ca", "Mg", "S"] as const) {
    if (fractionOf(product, nutrient) > 0) working.push(deliveredWorking(amounts, nutrient, extent, added[nutrient]!));
  }
  return answer({ massGrams: mass.value, added, delivered: addDelivered(added, already) }, [], working);
}

/** Two sets of rates on the same basis, together. */
export function addDelivered(first: Delivered, second: Delivered): Delivered {
  const total: Record<string, number> = { ...first };
  for (const [nutrient, rate] of Object.entries(second)) total[nutrient] = (total[nutrient] ?? 0) + rate;
  return total;
}

function massWanted(
  product: Product,
  wanted: Wanted,
  extent: Extent,
  already: Delivered,
  working: WorkingLine[],
): Outcome<number> {
  const { rateUnit } = BASIS[extent.basis];
  const there = already[wanted.nutrient] ?? 0;
  const rate = Math.max(0, wanted.rate - there);
  if (there > 0) {
    working.push({
      label: `${wanted.nutrient} still wanted`,
      expression: `max(0 ${rateUnit}, ${term(wanted.rate)} ${rateUnit} - ${term(there)} ${rateUnit})`,
      value: rate,
      unit: rateUnit,
      source: null,
    });
  }
  const massGrams = massForRate(product, wanted.nutrient, rate, extent);
  if (massGrams === undefined) {
    return unusable({
      code: "nutrient-not-in-product",
      path: "target",
      message: `${product.name} holds no ${wanted.nutrient}, so no amount of it reaches the target.`,
      expected: `a nutrient that ${product.name} holds: ${held(product)}`,
      received: wanted.asked.form,
      hint: "choose a product that holds the nutrient, or another nutrient as the target",
    });
  }
  working.push(massWorking(product, wanted.nutrient, rate, extent, massGrams));
  return answer(massGrams);
}

function held(product: Product): string {
  const names = Object.entries(product.composition).flatMap(([name, share]) => (share > 0 ? [name] : []));
  return names.length > 0 ? names.join(", ") : "none at all";
}

/** The volume of an amount where the density is known, with its working. */
export function volumeOf(product: Product, massGrams: number): { volumeMillilitres?: number; working: WorkingLine[] } {
  const density = product.densityKilogramsPerLitre;
  if (density === undefined) return { working: [] };
  // 1 kg/L is 1 g/mL.
  const volumeMillilitres = massGrams / density;
  if (product.massUnknown) return { volumeMillilitres, working: [] };
  const line: WorkingLine = {
    label: `${product.name} by volume`,
    expression: `${term(massGrams)} g / (${term(density)} kg/L)`,
    value: volumeMillilitres,
    unit: "mL",
    source: product.source,
  };
  return { volumeMillilitres, working: [line] };
}
