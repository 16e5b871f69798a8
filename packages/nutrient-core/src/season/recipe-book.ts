import { answer, type Outcome } from "../outcome/outcome.ts";
import { type Recipe, type RecipeRequest, recipeFor } from "./recipe.ts";
import type { SeasonInput } from "./season.ts";

/** Recipes that were worked out already: a season has many feeds of few recipes. */
export interface RecipeBook {
  readonly recipe: (request: RecipeRequest) => Outcome<{ readonly recipe: Recipe; readonly number: number }>;
  readonly all: () => readonly Recipe[];
}

/** An empty book, which is filled as recipes are asked for. */
export function recipeBook(input: SeasonInput): RecipeBook {
  const numbers = new Map<string, number>();
  const recipes: Recipe[] = [];
  return {
    all: () => recipes,
    recipe: (request) => {
      const key = JSON.stringify([
        request.products.map(({ id }) => id),
        request.wanted.map(({ nutrient, rate }) => [nutrient, rate]),
        request.fromMix,
      ]);
      const number = numbers.get(key);
      if (number !== undefined) return answer({ recipe: recipes[number]!, number });
      const made = recipeFor(request, input);
      if (!made.ok) return made;
      numbers.set(key, recipes.length);
      recipes.push(made.value);
      return answer({ recipe: made.value, number: recipes.length - 1 });
    },
  };
}
