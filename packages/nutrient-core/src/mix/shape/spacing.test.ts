import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { evaluate } from "../testing/evaluate.ts";
import { rectangularPlan, roundPlan } from "./plan.ts";
import { plantCount, type Spacing } from "./spacing.ts";

/** Plants set one by one, each at least half the distance from every edge: the second route. */
function setOut(width: number, length: number, spacing: Spacing): number {
  const [across, along] =
    spacing.pattern === "rows"
      ? [spacing.betweenRowsMetres, spacing.inRowMetres]
      : [
          spacing.pattern === "square" ? spacing.distanceMetres : spacing.distanceMetres * Math.sqrt(0.75),
          spacing.distanceMetres,
        ];
  const edge = spacing.pattern === "triangular" ? spacing.distanceMetres / 2 : across / 2;
  let plants = 0;
  for (let row = 0; edge + row * across <= width - edge + 1e-9; row += 1) {
    const shift = spacing.pattern === "triangular" && row % 2 === 1 ? along / 2 : 0;
    for (let i = 0; along / 2 + shift + i * along <= length - along / 2 + 1e-9; i += 1) plants += 1;
  }
  return plants;
}

const centimetres = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
const spacing: fc.Arbitrary<Spacing> = fc.oneof(
  fc.record({ pattern: fc.constant("square" as const), distanceMetres: centimetres(10, 90) }),
  fc.record({ pattern: fc.constant("triangular" as const), distanceMetres: centimetres(10, 90) }),
  fc.record({
    pattern: fc.constant("rows" as const),
    betweenRowsMetres: centimetres(20, 120),
    inRowMetres: centimetres(10, 90),
  }),
);

describe("plants on a bed", () => {
  test("as many as can be set out one by one", () => {
    fc.assert(
      fc.property(centimetres(20, 300), centimetres(20, 800), spacing, (a, b, how) => {
        const counted = plantCount(rectangularPlan(a, b), how);
        expect(counted.value).toBe(setOut(Math.min(a, b), Math.max(a, b), how));
        expect(evaluate(counted.expression, "")).toBe(counted.value);
      }),
    );
  });

  // Rows about 2 ft apart and 15 in in the row: the wider end of a gardening association's range for peppers (10-15 in).
  test("a bed of 4 ft by 8 ft in two rows", () => {
    const feet = 0.3048;
    const rows: Spacing = { pattern: "rows", betweenRowsMetres: 2 * feet, inRowMetres: 1.25 * feet };
    expect(plantCount(rectangularPlan(4 * feet, 8 * feet), rows).value).toBe(2 * 6);
  });

  test("a round bed by the area of one plant", () => {
    const counted = plantCount(roundPlan(2), { pattern: "square", distanceMetres: 0.5 });
    expect(counted.value).toBe(12);
    expect(evaluate(counted.expression, "")).toBe(12);
  });

  test("none where not even one has room", () => {
    expect(plantCount(rectangularPlan(0.3, 2), { pattern: "triangular", distanceMetres: 0.4 }).value).toBe(0);
    expect(plantCount(rectangularPlan(0.3, 2), { pattern: "square", distanceMetres: 0.4 }).value).toBe(0);
  });
});
