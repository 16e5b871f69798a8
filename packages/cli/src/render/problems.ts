import type { Problem } from "nutrient-core";
import { hanging } from "./hanging.ts";
import { printable } from "./printable.ts";

/** Of a text longer than this the middle is left out: the ends say which one it was. */
const LONGEST = 400;

function shortened(text: string): string {
  if (text.length <= LONGEST) return text;
  return `${text.slice(0, LONGEST / 2)} ... ${text.slice(-LONGEST / 2)}`;
}

/** What cannot be used, what was expected, what came, and the remedy; each problem a short block. */
export function renderProblems(problems: readonly Problem[], width: number): string {
  const blocks = problems.map(({ path, message, expected, received, hint }) =>
    [
      hanging(path === "" ? "trug: " : `${path}: `, shortened(message), width),
      hanging("  expected ", expected, width),
      hanging("  received ", received === "" ? "nothing" : shortened(received), width),
      hanging("  try      ", shortened(hint), width),
    ].join("\n"),
  );
  return `${printable(blocks.join("\n"))}\n`;
}
