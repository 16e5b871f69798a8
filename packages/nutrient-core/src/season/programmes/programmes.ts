import type { Programme } from "../programme.ts";
import { RISING_NITROGEN, STEADY_IN_POTS, STEADY_IN_SOIL } from "./from-trials.ts";
import { PUBLISHED_BY_STAGE } from "./published-by-stage.ts";
import { TWO_PHASE } from "./two-phase.ts";

/** The programmes that a season file may name. */
export const PROGRAMMES: readonly Programme[] = [
  TWO_PHASE,
  STEADY_IN_POTS,
  STEADY_IN_SOIL,
  RISING_NITROGEN,
  PUBLISHED_BY_STAGE,
];

/**
 * The programme of this id.
 *
 * @example
 * programmeNamed("two-phase")?.everyDays  // => 14
 */
export function programmeNamed(id: string): Programme | undefined {
  return PROGRAMMES.find((programme) => programme.id === id);
}
