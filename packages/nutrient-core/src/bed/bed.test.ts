import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MATERIALS } from "../product/materials.ts";
import { readPlainQuantity } from "../quantity/quantity.ts";
import { type BedResult, bed } from "./bed.ts";
import { type BedRequest, readBed } from "./read-bed.ts";

const context = { shelf: [], quantity: readPlainQuantity };
// Identities of our own: only the order of operations may differ.
const near = (actual: number, expected: number, relative = 1e-11): void =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.max(Math.abs(expected), 1e-12) * relative);

function bedOf(request: BedRequest): BedResult {
  const input = readBed(request, context);
  if (!input.ok) throw new Error(JSON.stringify(input.problems));
  const outcome = bed(input.value);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

test("5 g/m2 of N on 3 m2 from a 10 % product is 150 g, by hand; of 12 plants each gets a twelfth", () => {
  near(bedOf({ product: "10-0-0", target: "N 5 g/m2", area: "3 m2" }).amounts[0]!.massGrams, 150);
  const { amounts, areaSquareMetres } = bedOf({
    product: "10-0-0",
    target: "N 5 g/m2",
    area: "12 plants 50 cm x 50 cm",
  });
  near(areaSquareMetres, 3);
  near(amounts[0]!.gramsPerPlant!, 12.5);
  near(amounts[0]!.gramsPerSquareMetre, 50);
});

test("a row is told by its metre as well", () => {
  const { amounts } = bedOf({ product: "10-0-0", target: "N 5 g/m2", area: "row 10 m x 30 cm" });
  near(amounts[0]!.massGrams, 150);
  near(amounts[0]!.gramsPerMetreOfRow!, 15);
});

describe("properties", () => {
  const withNitrogen = MATERIALS.filter(({ composition }) => (composition.N ?? 0) > 0.005).map(({ id }) => id);
  const product = fc.constantFrom(...withNitrogen);
  const rate = fc.double({ min: 0.1, max: 50, noNaN: true });
  const area = fc.double({ min: 0.1, max: 1000, noNaN: true });

  test("round trip: the amount for a rate, given back, makes the rate", () => {
    fc.assert(
      fc.property(product, rate, area, (name, wanted, squareMetres) => {
        const grams = bedOf({ product: name, target: `N ${wanted} g/m2`, area: `${squareMetres} m2` }).amounts[0]!
          .massGrams;
        const back = bedOf({ product: name, given: `${grams} g`, area: `${squareMetres} m2` });
        near(back.deliveredGramsPerSquareMetre.N!, wanted);
      }),
    );
  });

  test("scaling: twice the bed takes twice the amount, at the same amount on each square metre", () => {
    fc.assert(
      fc.property(product, rate, area, (name, wanted, squareMetres) => {
        const once = bedOf({ product: name, target: `N ${wanted} g/m2`, area: `${squareMetres} m2` });
        const twice = bedOf({ product: name, target: `N ${wanted} g/m2`, area: `${2 * squareMetres} m2` });
        near(twice.amounts[0]!.massGrams, 2 * once.amounts[0]!.massGrams);
        near(twice.amounts[0]!.gramsPerSquareMetre, once.amounts[0]!.gramsPerSquareMetre);
      }),
    );
  });

  test("bounds: of a meal's or manure's nitrogen, what the first season can use is never more than all of it", () => {
    fc.assert(
      fc.property(product, rate, (name, wanted) => {
        const season = bedOf({
          product: name,
          target: `N ${wanted} g/m2`,
          area: "1 m2",
        }).firstSeasonNitrogenGramsPerSquareMetre;
        if (!season) return;
        expect(season[0]).toBeLessThanOrEqual(season[1]);
        expect(season[1]).toBeLessThanOrEqual(wanted * (1 + 1e-12));
      }),
    );
  });
});
