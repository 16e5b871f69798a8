import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Amount, deliver } from "../supply/supply.ts";
import { compositionsOf } from "./compositions.ts";
import { conductivityOfIons, electricalConductivity } from "./conductivity.ts";
import { type IonAmounts, sumOfIons } from "./ion.ts";
import { ionsOfProduct } from "./product-ions.ts";
import { amountsOf } from "./testing/support.ts";

/** Between corners the range may be passed by as much: the strength and the pairs change on the way (see grade-ions). */
const ROUNDING = 0.001;

const number = fc.integer({ min: 0, max: 30 });
const further = fc.constantFrom(
  "",
  "",
  " + 3 S",
  " + 4 Ca",
  " + 5 Mg",
  " + 5 Ca + 2 Mg",
  " + 2 NO3-N",
  " + 3 Cl",
  " + 2 Fe",
);
const grade = fc.oneof(
  fc.constantFrom("30-0-0", "18-18-18", "15-0-15", "20-10-20", "15-5-15 + 5 Ca + 2 Mg", "0-0-20 + 10 Mg"),
  fc.constantFrom("poultry-manure-pellets", "blood-meal", "iron-dtpa"),
  fc.tuple(number, number, number, further).map(([n, p, k, more]) => `${n}-${p}-${k}${more}`),
);
const salt = fc.constantFrom("KNO3", "MgSO4·7H2O", "Ca(NO3)2·4H2O", "KH2PO4");
const gramsPerLitre = fc.double({ min: 0.1, max: 5, noNaN: true });
/** Shares of up to so many corners that sum to 1; their powers lead near corners and edges as well as to the middle. */
const shares = fc
  .tuple(
    fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }),
    fc.constantFrom(0, 1, 4, 12),
  )
  .map(([all, power]) => all.map((share) => share ** power));
const dissolving = (of: fc.Arbitrary<string>) => fc.record({ product: of, grams: gramsPerLitre, shares });

/** A composition inside the region: the corners of the product mixed. */
function mixed({ product }: Amount, weights: readonly number[]): IonAmounts {
  const corners = ionsOfProduct(product);
  const whole = corners.reduce((sum, _, at) => sum + weights[at]!, 0);
  return sumOfIons(corners.map((ions, at) => ({ ions, times: weights[at]! / whole })));
}

interface Part {
  readonly product: string;
  readonly grams: number;
  readonly shares: readonly number[];
}

/** Products in a litre: what one composition that their labels allow conducts, and the range that is stated. */
function compared(parts: readonly Part[], water: IonAmounts = {}) {
  const amounts = amountsOf(...parts.map(({ product, grams }) => [product, grams] as const));
  const inside = amounts.map((amount, at) => ({ ions: mixed(amount, parts[at]!.shares), times: amount.massGrams }));
  const stated = electricalConductivity(amounts, 1, { ions: water });
  const conducts = conductivityOfIons(sumOfIons([{ ions: water, times: 1 }, ...inside])).milliSiemensPerCm;
  // A range that passes as one number is that narrow that its ends are not told.
  const [low, high] = stated.range ?? [stated.milliSiemensPerCm * 0.975, stated.milliSiemensPerCm * 1.025];
  return { amounts, conducts, low, high };
}

function expectInside({ conducts, low, high }: ReturnType<typeof compared>): void {
  expect(conducts).toBeGreaterThanOrEqual(low * (1 - ROUNDING));
  expect(conducts).toBeLessThanOrEqual(high * (1 + ROUNDING));
}
const usable = (parts: readonly Part[]): boolean => parts.every(({ product }) => !product.startsWith("0-0-0"));
const seeded = { seed: 20_240, numRuns: 600 } as const;

describe("what a label allows never conducts outside the range that is stated", () => {
  test("one product, with or without a salt beside it", () => {
    fc.assert(
      fc.property(dissolving(grade), fc.option(dissolving(salt), { nil: undefined }), (one, other) => {
        fc.pre(usable([one]));
        expectInside(compared(other ? [one, other] : [one]));
      }),
      seeded,
    );
  });

  test("two products, in pure or hard water", () => {
    const water = fc.constantFrom<IonAmounts>({}, { Ca: 0.002, HCO3: 0.004 });
    fc.assert(
      fc.property(dissolving(grade), dissolving(grade), water, (one, other, ions) => {
        fc.pre(usable([one, other]));
        expectInside(compared([one, other], ions));
      }),
      seeded,
    );
  });

  test("so many products that they are taken as one", () => {
    let asOne = 0;
    fc.assert(
      fc.property(fc.array(dissolving(grade), { minLength: 4, maxLength: 7 }), (parts) => {
        fc.pre(usable(parts));
        const result = compared(parts);
        if (compositionsOf(result.amounts, 1)[0]!.some(({ unit }) => unit === "L")) asOne += 1;
        expectInside(result);
      }),
      { ...seeded, numRuns: 200 },
    );
    expect(asOne).toBeGreaterThan(100);
  });
});

describe("which corner is the end", () => {
  test("a sulfate leads in thin water, and where magnesium pairs with it the chloride does", () => {
    const [{ product }] = amountsOf(["0-0-20 + 10 Mg", 1]) as [Amount];
    const most = (massGrams: number): string =>
      electricalConductivity([{ product, massGrams }], 1).working.find(({ label }) =>
        label.startsWith("at the most: ions"),
      )!.label;
    expect(most(0.0001)).toContain("SO4 2-");
    expect(most(1)).toContain("Cl-");
  });
});

describe("products taken as one", () => {
  const five: readonly (readonly [string, number])[] = [
    ["20-20-20", 0.5],
    ["10-30-10 + 0.1 Fe", 0.4],
    ["15-0-15", 0.3],
    ["5-10-10", 0.6],
    ["8-8-8", 0.2],
  ];

  test("come with each nutrient that they deliver, and no more weight than theirs", () => {
    const amounts = amountsOf(...five);
    const compositions = compositionsOf(amounts, 2);
    const delivered = deliver(amounts, { basis: "litre", amount: 2 });
    expect(compositions.length).toBeLessThanOrEqual(40);
    for (const composition of compositions) {
      expect(composition).toHaveLength(1);
      const { name, ions, unit, amount } = composition[0]!;
      expect([name, unit, amount]).toEqual([
        "20-20-20, 10-30-10 + 0.1 Fe, 15-0-15, 5-10-10 and 8-8-8 together",
        "L",
        2,
      ]);
      expect(Math.abs(ions.K! * 39.0983e3 - delivered.K!)).toBeLessThan(1e-4 * delivered.K!);
      expect(Math.abs(ions.H2PO4! * 30.973762e3 - delivered.P!)).toBeLessThan(1e-4 * delivered.P!);
      expect(((ions.NH4 ?? 0) + (ions.NO3 ?? 0)) * 14.007e3).toBeLessThanOrEqual(delivered.N! * (1 + 1e-4));
      const grams = ions.K! * 39.1 + ions.H2PO4! * 97 + (ions.NO3 ?? 0) * 62 + (ions.Cl ?? 0) * 35.4;
      expect(grams).toBeLessThanOrEqual(1.0001);
    }
  });

  test("keep a salt beside them apart, and the floor that a manure beside them does not lower", () => {
    const salted = compositionsOf(amountsOf(["KNO3", 1], ...five), 1);
    expect(salted[0]!.map(({ name }) => name)[0]).toBe("KNO3");
    const floor = (amounts: Amount[]): number => electricalConductivity(amounts, 1).range![0];
    expect(floor(amountsOf(...five, ["poultry-manure-pellets", 5]))).toBe(floor(amountsOf(...five)));
  });
});

test("a label that names too little of its anions leaves the rest of them open, so that the charges balance", () => {
  // A gram holds 4.25 mmol of potassium; the sulfur and chlorine on the label balance 0.9 of them.
  const { chargeBalance } = electricalConductivity(amountsOf(["0-0-20 + 1 S + 1 Cl", 1]), 1);
  expect(Math.abs(chargeBalance.cationMilliequivalents - 4.246)).toBeLessThan(0.001);
  expect(Math.abs(chargeBalance.relativeError)).toBeLessThan(1e-9);
});
