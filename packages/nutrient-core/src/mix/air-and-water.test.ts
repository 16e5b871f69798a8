import { describe, expect, test } from "vitest";
import { airAndWater } from "./air-and-water.ts";
import { MEASURED_HEIGHT_METRES, MEASURED_MIXES } from "./measured-mixes.ts";

const componentsOf = (shares: Readonly<Record<string, number>>) =>
  Object.entries(shares).map(([name, share]) => ({ name, share, isOwn: false }));
const inPot = (shares: Readonly<Record<string, number>>, height: number | undefined) =>
  airAndWater(componentsOf(shares), [height]);

function known(shares: Readonly<Record<string, number>>, height: number) {
  const result = inPot(shares, height);
  if (!result.isKnown) throw new Error(result.reason);
  return result;
}

describe("measured mixes (University of Arkansas, greenhouse unit 7, Table 1)", () => {
  test.each(MEASURED_MIXES.map((mix) => [JSON.stringify(mix.shares), mix] as const))("%s", (_, mix) => {
    const { airPercent, waterPercent } = known(mix.shares, MEASURED_HEIGHT_METRES);
    const inside = (value: number, [low, high]: readonly [number, number]): boolean => low <= value && value <= high;
    expect(inside(mix.waterPercent, waterPercent)).toBe(true);
    // The table's columns are rounded each for itself: pores less water may be two points beside its air.
    expect(inside(mix.airPercent, airPercent)).toBe(true);
    // Every row that is kept is possible; the row of peat and rice hulls that sums to 105 % is not among them.
    expect(mix.airPercent + mix.waterPercent).toBeLessThanOrEqual(mix.totalPoresPercent + 3);
  });

  test("air is not averaged: ten parts of perlite more in peat move it by a point", () => {
    const [twenty, thirty] = [known({ peat: 0.8, perlite: 0.2 }, 0.1), known({ peat: 0.7, perlite: 0.3 }, 0.1)];
    expect(thirty.waterPercent[1] - twenty.waterPercent[1]).toBeLessThanOrEqual(1 + 1e-9);
  });
});

describe("height", () => {
  // Journal of Environmental Horticulture 5(4):180 (seen): the same mix holds more water and less air in a shorter pot.
  test("a taller pot holds no more water and no less air", () => {
    const shares = { peat: 0.5, bark: 0.5 };
    let before = known(shares, 0.1);
    for (const height of [0.12, 0.15, 0.2, 0.3]) {
      const now = known(shares, height);
      expect(now.waterPercent[0]).toBeLessThanOrEqual(before.waterPercent[0]);
      expect(now.airPercent[1]).toBeGreaterThanOrEqual(before.airPercent[1]);
      before = now;
    }
  });

  // HortScience 43(2):505 (seen): 20 to 42 % less water from 3.8 to 15.2 cm; our part of it, from 10.16 cm, is 44 %.
  test("at 15.2 cm the loss is the published one for that part of the height", () => {
    const { waterPercent } = known({ peat: 0.5, bark: 0.5 }, 0.152);
    const part = (15.2 - 10.16) / (15.2 - 3.8);
    expect(Math.abs(waterPercent[0] - (58 * (1 - 0.42 * part) - 3))).toBeLessThanOrEqual(1e-9);
    expect(Math.abs(waterPercent[1] - (58 * (1 - 0.2 * part) + 3))).toBeLessThanOrEqual(1e-9);
  });
});

describe("not known", () => {
  test.each([
    [{ compost: 1 / 3, perlite: 1 / 3, coir: 1 / 3 }, 0.3],
    [{ peat: 0.6, perlite: 0.4 }, 0.1],
    [{ peat: 0.8, biochar: 0.2 }, 0.1],
    [{ peat: 0.8, perlite: 0.2 }, undefined],
    [{ peat: 0.8, perlite: 0.2 }, 0.04],
    [{ peat: 0.8, perlite: 0.2 }, 0.6],
  ])("%j at %s m", (shares, height) => {
    const result = inPot(shares, height);
    expect(result.isKnown ? "" : result.reason).not.toBe("");
  });

  test("a bed, and pots of two heights", () => {
    const components = componentsOf({ peat: 0.8, perlite: 0.2 });
    expect(airAndWater(components, []).isKnown).toBe(false);
    expect(airAndWater(components, [0.1, 0.2]).isKnown).toBe(false);
    expect(airAndWater(components, [0.1, 0.1]).isKnown).toBe(true);
  });
});
