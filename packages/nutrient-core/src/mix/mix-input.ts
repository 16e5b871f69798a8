import type { Fill } from "./fill/fill.ts";
import type { IngredientSupply } from "./ingredient/supply.ts";
import type { OrderAim } from "./order/offer.ts";
import type { Recipe } from "./recipe/recipe.ts";
import type { LossSources, VolumeLosses } from "./volumes.ts";

/** Everything a mix is worked out from. */
export interface MixInput {
  readonly recipe: Recipe;
  /** At least one. */
  readonly fills: readonly Fill[];
  readonly losses: VolumeLosses;
  /** Where the two losses come from; null where the grower stated them. */
  readonly lossSources: LossSources;
  /** How the ingredients can be had; those without any are counted in litres only. */
  readonly supplies: readonly IngredientSupply[];
  readonly aim: OrderAim;
  /** What the floor may carry, kilopascals. */
  readonly floorLimitKilopascals?: number;
  readonly car?: Car;
}

/** What a car takes at once. */
export interface Car {
  readonly kilograms?: number;
  readonly litres?: number;
}
