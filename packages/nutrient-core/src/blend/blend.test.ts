import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gapOf } from "../mix/testing/evaluate.ts";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import type { Extent } from "../supply/basis.ts";
import { asTriple } from "../supply/ratio.ts";
import { deliver } from "../supply/supply.ts";
import { blend } from "./blend.ts";
import type { BlendInput } from "./blend-input.ts";
import { checkBlendCertificate } from "./check-blend.ts";
import { ask, gap } from "./testing/ask.ts";

const product = (text: string): Product => {
  const read = readProduct(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};
const solved = (input: BlendInput) => {
  const outcome = blend(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
};

const NAMES = [
  "46-0-0",
  "18-46-0",
  "0-0-60",
  "13-0-44",
  "15.5-0-0 + 19 Ca",
  "0-52-34",
  "20-10-20",
  "magnesium-sulfate",
  "KNO3",
] as const;
const products = fc
  .uniqueArray(fc.constantFrom(...NAMES), { minLength: 1, maxLength: 5 })
  .map((list) => list.map(product));
const triple = fc.tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 }));
const purpose: fc.Arbitrary<BlendInput["purpose"]> = fc.oneof(
  fc.record({ kind: fc.constant("ratio" as const), ratio: triple, batchGrams: fc.constantFrom(100, 1000, 2500) }),
  fc.record({ kind: fc.constant("grade" as const), grade: triple, batchGrams: fc.constantFrom(100, 1000, 2500) }),
  fc.record({
    kind: fc.constant("target" as const),
    extent: fc.constantFrom<Extent>({ basis: "litre", amount: 9 }, { basis: "squareMetre", amount: 3 }),
    wanted: fc
      .tuple(fc.integer({ min: 20, max: 200 }), fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 200 }))
      .map((rates) =>
        (["N", "P", "K"] as const).map((nutrient, i) => ({
          nutrient,
          rate: rates[i]!,
          asked: { form: nutrient, rate: rates[i]! },
        })),
      ),
  }),
);
const inputs: fc.Arbitrary<BlendInput> = fc.record({
  products: products.map((list) => [product("46-0-0"), ...list.filter(({ id }) => id !== "46-0-0")]),
  purpose,
  already: fc.constant({}),
  within: fc.constantFrom(0, 0.05),
});

/** Sums of a handful of terms, through a linear system whose size the engine scales: from its own certificate's 1e-9. */
const THROUGH_THE_ENGINE = 1e-8;
const FLOATING = 1e-12;

describe("properties", () => {
  test("conservation: the amounts and the filler are the batch, and the shares are the whole", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { amounts, totalGrams, fillerGrams = 0 } = solved(input);
        const sum = amounts.reduce((all, { massGrams }) => all + massGrams, 0);
        expect(gap(sum + fillerGrams, totalGrams)).toBeLessThan(FLOATING);
        if (input.purpose.kind !== "target")
          expect(gap(totalGrams, input.purpose.batchGrams)).toBeLessThan(THROUGH_THE_ENGINE);
        const shares = amounts.reduce((all, { share }) => all + share, 0) + fillerGrams / totalGrams;
        expect(gap(shares, 1)).toBeLessThan(FLOATING);
        expect(amounts.every(({ massGrams }) => massGrams >= 0)).toBe(true);
      }),
    );
  });

  test("what is said to be delivered is what the amounts deliver", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { amounts, residuals, totalGrams } = solved(input);
        const list = amounts.map(({ massGrams }, j) => ({ product: input.products[j]!, massGrams }));
        if (input.purpose.kind === "target") {
          const delivered = deliver(list, input.purpose.extent);
          residuals.forEach((one, i) => {
            const { nutrient } = (input.purpose as Extract<BlendInput["purpose"], { kind: "target" }>).wanted[i]!;
            expect(gap(one.delivered, delivered[nutrient] ?? 0)).toBeLessThan(FLOATING);
          });
          return;
        }
        // A grade is shown in percent of the batch; a ratio on its own scale, so only its proportions are the batch's.
        const shares = asTriple(deliver(list, { basis: "squareMetre", amount: totalGrams }));
        const scale = input.purpose.kind === "grade" ? 100 : residuals[0]!.delivered / shares[0];
        residuals.forEach(({ delivered }, i) => {
          expect(Math.abs(delivered - shares[i]! * scale) / scale).toBeLessThan(FLOATING);
        });
      }),
    );
  });

  test("scaling: twice the batch or water takes twice the amounts", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const twice: BlendInput = {
          ...input,
          purpose:
            input.purpose.kind === "target"
              ? { ...input.purpose, extent: { ...input.purpose.extent, amount: input.purpose.extent.amount * 2 } }
              : { ...input.purpose, batchGrams: input.purpose.batchGrams * 2 },
        };
        const single = solved(input);
        const double = solved(twice);
        expect(double.status).toBe(single.status);
        const size = single.totalGrams;
        single.amounts.forEach(({ massGrams }, j) => {
          expect(Math.abs(double.amounts[j]!.massGrams - 2 * massGrams) / size).toBeLessThan(THROUGH_THE_ENGINE);
        });
      }),
    );
  });

  test("order: the products named the other way round come just as near", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const forwards = solved(input);
        const backwards = solved({ ...input, products: [...input.products].reverse() });
        expect(backwards.status).toBe(forwards.status);
        if (input.within > 0) return; // Inside a band there is more than one answer, and the first products win.
        forwards.residuals.forEach(({ delivered }, i) => {
          const scale = Math.max(...forwards.residuals.map(({ wanted }) => wanted));
          expect(Math.abs(backwards.residuals[i]!.delivered - delivered) / scale).toBeLessThan(1e-6);
        });
      }),
    );
  });

  test("round trip: amounts made into a target are found again", () => {
    const independent = [
      "calcium-nitrate",
      "potassium-nitrate",
      "monopotassium-phosphate",
      "magnesium-sulfate",
      "urea",
    ];
    const list = independent.map(product);
    const wantedOf = ["N", "P", "K", "Ca", "Mg", "S"] as const;
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.1, max: 20, noNaN: true }), { minLength: 5, maxLength: 5 }), (masses) => {
        const extent: Extent = { basis: "litre", amount: 10 };
        const delivered = deliver(
          list.map((one, j) => ({ product: one, massGrams: masses[j]! })),
          extent,
        );
        const wanted = wantedOf.map((nutrient) => {
          const rate = delivered[nutrient]!;
          return { nutrient, rate, asked: { form: nutrient, rate } };
        });
        const { amounts, status } = solved({
          products: list,
          purpose: { kind: "target", wanted, extent },
          already: {},
          within: 0,
        });
        expect(status).toBe("met");
        amounts.forEach(({ massGrams }, j) => {
          expect(Math.abs(massGrams - masses[j]!) / Math.max(...masses)).toBeLessThan(THROUGH_THE_ENGINE);
        });
      }),
    );
  });

  test("certificate: holds after a way through JSON, and fails when an amount is changed", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { certificate } = solved(input);
        const stored = JSON.parse(JSON.stringify(certificate)) as typeof certificate;
        expect(checkBlendCertificate(stored)).toMatchObject({ valid: true, failures: [] });
        const masses = stored.solution.masses.map((mass) => mass * 1.001);
        expect(checkBlendCertificate({ ...stored, solution: { ...stored.solution, masses } }).valid).toBe(false);
      }),
    );
  });
});

describe("working", () => {
  const PURPOSES = {
    ratio: { products: "46-0-0, 18-46-0, 0-0-60", ratio: "3-1-2", batch: "1 kg" },
    "ratio of two, by the square": { products: "46-0-0, 20-10-20", ratio: "3-1-2", batch: "1 kg" },
    grade: { products: "46-0-0, 18-46-0, 0-0-60", grade: "15-5-10", batch: "5 lb" },
    water: {
      products: "calcium-nitrate, potassium-nitrate, KH2PO4",
      target: "N 90 ppm, P2O5 60 ppm, K 180 ppm",
      water: "9 L",
    },
    "water, measured": {
      products: "calcium-nitrate, potassium-nitrate, urea",
      target: "N 90 ppm, K 180 ppm, Ca 40 ppm",
      water: "9 L",
      scale: "1 g",
      already: "Ca 10 ppm",
    },
    area: { products: "46-0-0, 0-0-60", target: "N 2 lb/1000 sqft, K2O 1 lb/1000 sqft", area: "100 sq ft" },
    mix: { products: "gypsum, magnesium-sulfate", target: "Ca 200 g/m3, Mg 40 g/m3", volume: "200 L" },
    stock: {
      products: "KNO3, urea",
      target: "N 10 mmol/L, K 5 mmol/L",
      stock: "1:100",
      tank: "20 L",
    },
  } as const;

  test.each(Object.entries(PURPOSES))("%s: every line is what its expression says", (_, request) => {
    const { working, value } = ask(request);
    expect(working.length).toBeGreaterThan(0);
    for (const line of working) expect(gapOf(line), `${line.label}: ${line.expression}`).toBeLessThan(FLOATING);
    // The lines find what the result says.
    const found = working.filter(({ unit }) => unit === "g").map(({ value: grams }) => grams);
    const said = [
      ...value.amounts,
      ...(value.weighed?.amounts ?? []),
      ...(value.stock?.tanks.flatMap(({ amounts }) => amounts) ?? []),
    ];
    for (const grams of found) expect(said.some(({ massGrams }) => gap(massGrams, grams) < 1e-9)).toBe(true);
  });
});

describe("by hand", () => {
  test("1 kg of 3-1-2 from 46-0-0, 18-46-0 and 0-0-60", () => {
    const { value } = ask(PURPOSE_3_1_2);
    // Per kg of N: P2O5 1/3 from 18-46-0: 0.7246 kg, bringing 0.13043 kg of N; the rest from 46-0-0: 1.89036 kg;
    // K2O 2/3 from 0-0-60: 1.11111 kg. Together 3.72609 kg.
    const whole = 1 / 3 / 0.46 + (1 - (0.18 * (1 / 3)) / 0.46) / 0.46 + 2 / 3 / 0.6;
    const [urea, dap, potash] = value.amounts.map(({ massGrams }) => massGrams);
    expect(gap(dap!, ((1 / 3 / 0.46) * 1000) / whole)).toBeLessThan(THROUGH_THE_ENGINE);
    expect(gap(potash!, ((2 / 3 / 0.6) * 1000) / whole)).toBeLessThan(THROUGH_THE_ENGINE);
    expect(gap(urea!, (((1 - (0.18 * (1 / 3)) / 0.46) / 0.46) * 1000) / whole)).toBeLessThan(THROUGH_THE_ENGINE);
    expect(value.status).toBe("met");
  });

  test("what is there already is taken off", () => {
    const { value } = ask({ products: "KNO3", target: "K 100 ppm", water: "10 L", already: "K 40 ppm" });
    // 60 ppm in 10 L of K; KNO3 holds 39.098/101.102.
    expect(gap(value.amounts[0]!.massGrams, 0.6 / (39.098 / 101.102))).toBeLessThan(1e-9);
    expect(gap(value.deliveredPpm!.K!, 100)).toBeLessThan(1e-9);
  });
});

const PURPOSE_3_1_2 = { products: "46-0-0, 18-46-0, 0-0-60", ratio: "3-1-2", batch: "1 kg" };

test("what is asked as at least comes to no more where no other target loses by it, whichever product is named first", () => {
  for (const products of ["KNO3, calcium-nitrate", "calcium-nitrate, KNO3"]) {
    const { value } = ask({ products, target: "N 150 ppm, K at least 150 ppm", water: "10 L" });
    expect(value.status).toBe("met");
    for (const nutrient of ["N", "K"] as const) expect(gap(value.deliveredPpm![nutrient]!, 150)).toBeLessThan(1e-9);
  }
  // Alone, potassium nitrate brings what its nitrogen needs.
  const { value } = ask({ products: "KNO3", target: "N 150 ppm, K at least 150 ppm", water: "10 L" });
  expect(value.deliveredPpm!.K!).toBeGreaterThan(400);
});
