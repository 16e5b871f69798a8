import type { Problem } from "nutrient-core";
import { hanging } from "./hanging.ts";
import { printable } from "./printable.ts";

/** What cannot be used, what was expected, what came, and the remedy; each problem a short block. */
export function renderProblems(problems: readonly Problem[], width: number): string {
  const blocks = problems.map(({ path, message, expected, received, hint }) =>
    [
      hanging(path === "" ? "trug: " : `${path}: `, message, width),
      hanging("  expected ", expected, width),
      hanging("  received ", received === "" ? "nothing" : received, width),
      hanging("  try      ", hint, width),
    ].join("\n"),
  );
  return `${printable(blocks.join("\n"))}\n`;
}
