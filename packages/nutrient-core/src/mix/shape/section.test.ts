import fc from "fast-check";
import { expect, test } from "vitest";
import { readQuantity } from "../../quantity/expression.ts";
import { readFill } from "../fill/read-fill.ts";
import { usable } from "../testing/read.ts";
import type { SectionPoint } from "./section.ts";

/** The area of a polygon by its corners. */
function areaOf(points: readonly SectionPoint[]): number {
  const twice = points.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

// The drawing's polygon times the length must be the volume: 24 straight pieces miss a parabola by 1 part in 24^2.
test.each([
  ["bed 1.2 m x 2.4 m x 30 cm", 1e-12],
  ["bed 1.2 m x 2.4 m x 30 cm headspace 3 cm drainage 5 cm mound 8 cm triangle", 1e-12],
  ["bed 1.2 m x 2.4 m x 30 cm mound 8 cm trapezoid crown 50 cm", 1e-12],
  ["bed 1.2 m x 2.4 m x 30 cm mound 8 cm", 1 / 24 ** 2],
])("the section of %s is as large as its volume over its length", (text, relative) => {
  const { section, volume } = usable(readFill(text, readQuantity)).value;
  const expected = volume.value / 1000 / 2.4;
  expect(Math.abs(areaOf(section!.mix) - expected)).toBeLessThanOrEqual(expected * relative);
});

test("the mix lies inside its pot, and the layer under it", () => {
  const cm = fc.integer({ min: 5, max: 60 });
  fc.assert(
    fc.property(cm, cm, fc.integer({ min: 12, max: 60 }), (top, bottom, height) => {
      const text = `pot ${top} cm x ${bottom} cm x ${height} cm headspace 2 cm drainage 3 cm`;
      const { section } = usable(readFill(text, readQuantity)).value;
      const pot = areaOf(section!.container);
      expect(areaOf(section!.mix) + areaOf(section!.layer)).toBeLessThan(pot);
      expect(section!.levelMetres).toBeLessThan(height / 100);
    }),
  );
});

test("pots of which only the litres are known have no section", () => {
  expect(usable(readFill("12 pots 20 L", readQuantity)).value.section).toBeUndefined();
});
