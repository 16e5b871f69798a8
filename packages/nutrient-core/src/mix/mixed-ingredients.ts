import type { MixInput } from "./mix-input.ts";
import type { MixVolumes } from "./volumes.ts";
import type { MixedIngredient } from "./weight.ts";

/** A recipe's ingredients in litres, each with the grower's own dry density where one was measured. */
export function mixedIngredients(
  { recipe, supplies }: Pick<MixInput, "recipe" | "supplies">,
  { fillVolumeLitres, orderVolumeLitres }: Pick<MixVolumes, "fillVolumeLitres" | "orderVolumeLitres">,
): MixedIngredient[] {
  return recipe.components.map(({ name, share }) => {
    const own = supplies.find((supply) => supply.name === name)?.dryKilogramsPerLitre;
    return {
      name,
      volumeLitres: share * fillVolumeLitres,
      looseVolumeLitres: share * orderVolumeLitres,
      ...(own === undefined ? {} : { dryKilogramsPerLitre: own }),
    };
  });
}
