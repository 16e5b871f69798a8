import type { Problem } from "../../outcome/problem.ts";
import { STARTING_POINTS } from "./starting-points.ts";

const EXAMPLE =
  '"compost 1, perlite 1, coir 1", "compost 40%, perlite 30%, coir 30%" or "own soil 2, compost 1 + lime 3 kg/m3"';

/** Why a text is no recipe. */
export function unreadable(text: string, reason: string): Problem {
  return {
    code: "recipe-unreadable",
    path: "",
    message: `"${text}" is not a recipe: ${reason}.`,
    expected:
      "ingredients, each with its part or percent, parted by commas or semicolons; or the id of a starting point",
    received: text,
    hint: `write for example ${EXAMPLE}; starting points: ${STARTING_POINTS.map(({ id }) => id).join(", ")}`,
  };
}
