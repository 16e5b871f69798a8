import fc from "fast-check";
import { expect, test } from "vitest";
import { carLoads } from "./car-loads.ts";

test("worked by hand", () => {
  const sacks = Array.from({ length: 20 }, () => ({ kilograms: 20, litres: 50 }));
  expect(carLoads(sacks, { kilograms: 400 })).toEqual({ atLeast: 1, enough: 1 });
  expect(carLoads(sacks, { kilograms: 399 })).toEqual({ atLeast: 2, enough: 2 });
  expect(carLoads(sacks, { litres: 300 })).toEqual({ atLeast: 4, enough: 4 });
  expect(carLoads(sacks, { kilograms: 400, litres: 300 })).toEqual({ atLeast: 4, enough: 4 });
  // Three sacks of 60 kg and a limit of 100: mass alone would say two trips, but no two fit together.
  expect(
    carLoads(
      Array.from({ length: 3 }, () => ({ kilograms: 60, litres: 1 })),
      { kilograms: 100 },
    ),
  ).toEqual({ atLeast: 2, enough: 3 });
  expect(carLoads([], { kilograms: 100 })).toEqual({ atLeast: 0, enough: 0 });
  expect(carLoads([{ kilograms: 120, litres: 1 }], { kilograms: 100 })).toBeUndefined();
});

test("never fewer trips than the bound, never more than one for each sack", () => {
  const pack = fc.record({ kilograms: fc.integer({ min: 1, max: 50 }), litres: fc.integer({ min: 1, max: 100 }) });
  fc.assert(
    fc.property(
      fc.array(pack, { maxLength: 40 }),
      fc.integer({ min: 50, max: 500 }),
      fc.integer({ min: 100, max: 900 }),
      (packs, kilograms, litres) => {
        const loads = carLoads(packs, { kilograms, litres })!;
        expect(loads.enough).toBeGreaterThanOrEqual(loads.atLeast);
        expect(loads.enough).toBeLessThanOrEqual(packs.length);
      },
    ),
  );
});
