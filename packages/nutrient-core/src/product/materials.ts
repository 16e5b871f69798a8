import { CALCIUM_MAGNESIUM_SULFUR_MATERIALS } from "./materials/calcium-magnesium-sulfur.ts";
import { LIMING_MATERIALS } from "./materials/liming.ts";
import { MANURE_MATERIALS } from "./materials/manures.ts";
import type { Material } from "./materials/material.ts";
import { MEAL_MATERIALS } from "./materials/meals.ts";
import { NITROGEN_MATERIALS } from "./materials/nitrogen.ts";
import { PHOSPHORUS_MATERIALS } from "./materials/phosphorus.ts";
import { POTASSIUM_MATERIALS } from "./materials/potassium.ts";
import { TRACE_ELEMENT_MATERIALS } from "./materials/trace-elements.ts";

/** The generic materials, without brands, family by family. */
export const MATERIALS: readonly Material[] = [
  ...NITROGEN_MATERIALS,
  ...PHOSPHORUS_MATERIALS,
  ...POTASSIUM_MATERIALS,
  ...CALCIUM_MAGNESIUM_SULFUR_MATERIALS,
  ...LIMING_MATERIALS,
  ...TRACE_ELEMENT_MATERIALS,
  ...MEAL_MATERIALS,
  ...MANURE_MATERIALS,
];

let byName: ReadonlyMap<string, Material> | undefined;

/**
 * The generic material of this id or trade name, if there is one; case, spaces and British spelling do not matter.
 *
 * @param name `potassium-nitrate`, `Epsom salt`, `MKP` or `potassium sulphate`.
 * @example
 * materialById("Epsom salt")?.id  // => "magnesium-sulfate"
 */
export function materialById(name: string): Material | undefined {
  byName ??= new Map(MATERIALS.flatMap((one) => [one.id, ...one.aliases].map((key) => [key, one] as const)));
  return byName.get(keyOf(name));
}

function keyOf(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, "-")
    .replaceAll("sulph", "sulf");
}
