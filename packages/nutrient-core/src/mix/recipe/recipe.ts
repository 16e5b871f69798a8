/** One ingredient of a mix. */
export interface RecipeComponent {
  readonly name: string;
  /** Share by volume of loose material, more than 0; all of a recipe's shares sum to 1. */
  readonly share: number;
  /** The grower has it ("own soil"): it is mixed in, but not ordered. */
  readonly isOwn: boolean;
}

/** Something mixed in by mass for each volume of finished mix: lime, a starter feed. */
export interface Addition {
  readonly name: string;
  /** Grams in a cubic metre of the finished mix. */
  readonly gramsPerCubicMetre: number;
}

/** What a mix is made of. */
export interface Recipe {
  readonly components: readonly RecipeComponent[];
  readonly additions: readonly Addition[];
  /** Source of a named starting point; null for the grower's own recipe. */
  readonly source: string | null;
}

/** The mark of an ingredient that is at hand. */
export const OWN = /^(?:own|existing)\s+/i;
