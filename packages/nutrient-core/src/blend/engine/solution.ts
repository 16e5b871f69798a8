import type { BlendAim } from "./problem.ts";

/** Multipliers of hard rows, per raw unit. On their own they may add the rules up to a contradiction (Farkas). */
export interface ContradictionProof {
  /** Per ceiling, <= 0: what one more unit of the limit would change the value by. */
  readonly ceilings: readonly number[];
  /** Of the fixed total; 0 where there is none. */
  readonly total: number;
}

/**
 * The proof of one aim: multipliers that, with the masses, show in a few multiplications that no allowed blend does
 * better (see `checkCertificate`). All are per raw unit: what the aim's value gains or loses per unit of the edge.
 */
export interface AimProof extends ContradictionProof {
  /**
   * `largest`: the largest weighted relative miss; `squares`: the sum of weighted squared relative misses;
   * `cost`: money; `nearest`: the sum of weighted squared relative distances to the wanted amounts.
   */
  readonly aim: "largest" | "squares" | "cost" | "nearest";
  /** The best value there is. */
  readonly value: number;
  /** Per nutrient row: multiplier of the range that earlier aims leave it. */
  readonly targets: readonly number[];
}

/** What the search over product choices did; the proofs hold for the choice it ended with. */
export interface ChoiceSearch {
  /** Per product: `out` held at 0, `in` used at its smallest amount or more, `open` left to the continuous aims. */
  readonly choices: readonly Choice[];
  /** Continuous problems solved. */
  readonly explored: number;
  /** False if the search was cut off at its limit, so that a better choice may exist. */
  readonly complete: boolean;
}

export type Choice = "out" | "in" | "open";

export interface Certificate {
  /** In the order of the aims. An aim without an entry was reached in full (no miss), which needs no proof. */
  readonly proofs: readonly AimProof[];
  readonly search?: ChoiceSearch;
}

/** A hard limit that holds the answer back. */
export interface BindingLimit {
  readonly kind: "ceiling" | "total" | "lower" | "upper";
  /** Index of the ceiling or product; 0 for the total. */
  readonly index: number;
  /** What the miss would change by if the limit were one unit larger (the first aim's own measure). */
  readonly effect: number;
}

export interface ReachedBlend {
  /** `met`: every band is met. `closest`: it cannot be, and this is the fairest miss. */
  readonly status: "met" | "closest";
  /** Grams of each product. */
  readonly masses: readonly number[];
  /** Per row, offsets included. */
  readonly delivered: readonly number[];
  /** Per row: delivered minus wanted. */
  readonly residuals: readonly number[];
  /** Per row: how far outside its band, negative when short, positive when over, 0 when met. */
  readonly misses: readonly number[];
  /** Per row: |miss| divided by the row's scale. */
  readonly relativeMisses: readonly number[];
  /** The first aim's value: sum of weight * relative miss squared, or the largest weight * relative miss. */
  readonly objective: number;
  /** Money, where prices were given. */
  readonly cost?: number;
  /** Per row: what one more unit delivered would change the first aim's value by (negative where the row is short). */
  readonly pulls: readonly number[];
  /** Per product: what one more gram would change the first aim's value by, limits apart. */
  readonly gains: readonly number[];
  readonly binding: readonly BindingLimit[];
  readonly aim: BlendAim;
  readonly certificate: Certificate;
}

export interface UnreachableBlend {
  /** The hard limits contradict each other: no blend keeps them all. */
  readonly status: "infeasible";
  /** The proof, wherever the limits contradict each other without the smallest amounts. */
  readonly contradiction?: ContradictionProof;
  /** Instead of a proof: the search that tried every choice of smallest amounts, and found none that works. */
  readonly search?: ChoiceSearch;
}

export type BlendSolution = ReachedBlend | UnreachableBlend;
