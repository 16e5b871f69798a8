import type { Problem } from "../../outcome/problem.ts";

export const FILL_EXAMPLES =
  '"bed 1.2 m x 2.4 m x 30 cm", "12 pots 30 cm x 24 cm x 28 cm", "12 pots 20 L" or "round 60 cm x 45 cm"';

/** The problem of a fill that names no shape. */
export function shapeUnknown(text: string, shapes: readonly string[]): Problem {
  return {
    code: "fill-shape-unknown",
    path: "",
    message: `"${text}" does not say what is to be filled.`,
    expected: `a shape: ${shapes.join(", ")}`,
    received: text,
    hint: `write for example ${FILL_EXAMPLES}`,
  };
}

/** The problem of too few or too many sizes for a shape. */
export function sizesUnusable(text: string, found: number, expected: string, example: string): Problem {
  return {
    code: "fill-sizes",
    path: "",
    message:
      found === 0
        ? `"${text}" says no sizes.`
        : `"${text}" has ${found} ${found === 1 ? "size" : "sizes"}, which does not make this shape.`,
    expected,
    received: text,
    hint: `write for example "${example}"`,
  };
}

/** The problem of a count of none. */
export function countUnusable(text: string): Problem {
  return {
    code: "fill-sizes",
    path: "",
    message: `"${text}" fills nothing: its count is 0.`,
    expected: "one or more of them",
    received: text,
    hint: 'write how many there are, such as "2 beds 1.2 m x 2.4 m x 30 cm"',
  };
}

/** The problem of sizes that cannot be together: a layer deeper than its pot, a leg wider than its bed. */
export function sizesConflict(text: string, message: string, hint: string): Problem {
  return { code: "fill-sizes-conflict", path: "", message, expected: "sizes that fit together", received: text, hint };
}

/** The problem of a clause that cannot be read, or that means nothing on this shape. */
export function clauseUnusable(text: string, message: string, hint: string): Problem {
  return { code: "fill-clause", path: "", message, expected: "a clause that fits the shape", received: text, hint };
}
