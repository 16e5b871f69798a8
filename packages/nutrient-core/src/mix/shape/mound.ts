import { term } from "../../outcome/working.ts";
import { LITRES_PER_CUBIC_METRE, type Measure, metres } from "./measure.ts";
import type { Plan } from "./plan.ts";

/** The outline of a mound or ridge, cut across. */
export const MOUND_PROFILES = ["parabola", "triangle", "trapezoid"] as const;
export type MoundProfile = (typeof MOUND_PROFILES)[number];

/**
 * Soil that was heaped and has weathered lies in a rounded back: the parabola stands between the sharp triangle
 * (a quarter less) and the flat-topped trapezoid (an eighth more). Common practice, no source.
 */
export const USUAL_PROFILE: MoundProfile = "parabola";

export interface Mound {
  /** Above the rim or the ground, at the crest. */
  readonly heightMetres: number;
  readonly profile: MoundProfile;
  /** Width of a trapezoid's flat crown as a share of the base, from 0 to 1. */
  readonly crownShare: number;
}

/** Where nothing else is said, half of a trapezoid's width is flat. Common practice, no source. */
export const USUAL_CROWN_SHARE = 0.5;

/**
 * Litres in a mound that covers a plan to its edges.
 *
 * On a round plan it is a dome: the outline turned about the middle. On any other it runs along the bed with the
 * outline across the bed's width, its ends standing straight against the end boards; so it holds the same share of
 * plan area times height whether the width stays the same (rectangle, the legs of an L) or changes (trapezoid).
 */
export function moundVolume(plan: Plan, mound: Mound): Measure {
  const share = shareOfBox(mound, plan.isRound);
  return {
    value: plan.area.value * mound.heightMetres * share.value * LITRES_PER_CUBIC_METRE,
    expression: `(${plan.area.expression}) * ${metres(mound.heightMetres)} * ${share.expression}`,
  };
}

/** How much of the upright box (or cylinder) around it the mound fills. */
function shareOfBox({ profile, crownShare }: Mound, isRound: boolean): Measure {
  const c = term(crownShare);
  switch (profile) {
    case "triangle":
      return isRound ? { value: 1 / 3, expression: "1 / 3" } : { value: 1 / 2, expression: "1 / 2" };
    case "parabola":
      return isRound ? { value: 1 / 2, expression: "1 / 2" } : { value: 2 / 3, expression: "2 / 3" };
    case "trapezoid":
      return isRound
        ? { value: (1 + crownShare + crownShare ** 2) / 3, expression: `(1 + ${c} + ${c}^2) / 3` }
        : { value: (1 + crownShare) / 2, expression: `(1 + ${c}) / 2` };
  }
}
