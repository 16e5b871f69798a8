import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { type Mound, USUAL_CROWN_SHARE, USUAL_PROFILE } from "../shape/mound.ts";
import type { MoundClause } from "./clauses.ts";
import { clauseUnusable, sizesConflict } from "./problems.ts";

/**
 * A mound from its clause, the usual outline and crown where nothing else is said.
 *
 * @param width Of its base in metres, where it has one width.
 */
export function moundFromClause(
  { heightMetres, profile = USUAL_PROFILE, crownMetres }: MoundClause,
  width: number | undefined,
  text: string,
): Outcome<Mound> {
  if (crownMetres === undefined) return answer({ heightMetres, profile, crownShare: USUAL_CROWN_SHARE });
  if (width === undefined) {
    return unusable(
      clauseUnusable(text, "This bed has no one width for a crown.", "leave the crown out: half of the width is taken"),
    );
  }
  return crownMetres <= width
    ? answer({ heightMetres, profile, crownShare: crownMetres / width })
    : unusable(sizesConflict(text, "The crown is wider than its base.", "give a crown narrower than the bed"));
}
