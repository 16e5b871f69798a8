import type { Addition, RecipeComponent } from "./recipe.ts";

/** What is mixed in twice, in two groups say, is weighed once. */
export function summed(additions: readonly Addition[]): Addition[] {
  const byName = new Map<string, number>();
  for (const { name, gramsPerCubicMetre } of additions) {
    byName.set(name, (byName.get(name) ?? 0) + gramsPerCubicMetre);
  }
  return [...byName].map(([name, gramsPerCubicMetre]) => ({ name, gramsPerCubicMetre }));
}

/** An ingredient that is named twice, in two groups say, has both shares. */
export function merged(components: readonly RecipeComponent[]): RecipeComponent[] {
  const byName = new Map<string, RecipeComponent>();
  for (const component of components) {
    const before = byName.get(component.name);
    byName.set(component.name, before ? { ...before, share: before.share + component.share } : component);
  }
  return [...byName.values()];
}
