import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Product } from "../product/product.ts";
import { readProduct } from "../product/read-product.ts";
import { electricalConductivity } from "../solution/conductivity.ts";
import { blend } from "./blend.ts";
import { checkBlendCertificate } from "./check-blend.ts";
import { readAim, readLabelRule } from "./read-choices.ts";
import { type Ask, ask, gap, inputOf, problemOf } from "./testing/ask.ts";

const product = (text: string): Product => {
  const read = readProduct(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};
const can = { water: "10 L" } as const;
/** The engine's certificate holds to 1e-9; a hundred times that for sums on top. */
const KEPT = 1e-7;

describe("ceilings are kept whatever else is missed", () => {
  const FEED: Ask = {
    products: "calcium-nitrate, potassium-nitrate, potassium-chloride, ammonium-sulfate, urea",
    target: "N 150 ppm, Ca 100 ppm, K 200 ppm",
    ...can,
  };

  test("a nutrient, with what is there already counted in", () => {
    const bound = ask({
      products: "urea, potassium-chloride",
      target: "N 100 ppm, K 150 ppm",
      limit: "Cl 50 ppm",
      already: "Cl 20 ppm",
      ...can,
    });
    // It is the limit that holds the potassium back, so it is reached to rounding.
    expect(gap(bound.value.deliveredPpm!.Cl!, 50)).toBeLessThan(KEPT);
    const { value } = ask({ ...FEED, limit: "Cl 30 ppm, S 10 ppm", already: "Cl 12 ppm" });
    expect(value.deliveredPpm!.Cl!).toBeLessThanOrEqual(30 * (1 + KEPT));
    expect(value.deliveredPpm!.S ?? 0).toBeLessThanOrEqual(10 * (1 + KEPT));
  });

  test("a share of ammonium, with what is there already on both sides", () => {
    const request = { products: "ammonium-sulfate, potassium-nitrate", target: "N 150 ppm, K 80 ppm", ...can };
    const free = ask(request).value.deliveredPpm!;
    expect(free["NH4-N"]! / free.N!).toBeGreaterThan(0.25);
    const { value } = ask({ ...request, limit: "ammonium 25% of N", already: "N 10 ppm" });
    // The limit binds, so it is reached to rounding.
    expect(gap(value.deliveredPpm!["NH4-N"]! / value.deliveredPpm!.N!, 0.25)).toBeLessThan(KEPT);
  });

  test("conductivity: neither passed nor left unused, by the full model", () => {
    for (const limit of ["0.8", "1.5", "2.5"]) {
      const request = {
        products: "calcium-nitrate, KNO3, KH2PO4, magnesium-sulfate",
        target: "N 300 ppm, Ca 200 ppm, K 400 ppm, P 60 ppm, Mg 50 ppm",
        ...can,
      };
      const { value } = ask({ ...request, limit: `EC ${limit} mS/cm` });
      expect(value.status).toBe("closest");
      // Settled to 1e-6 by the rounds of correction.
      expect(gap(value.ecMilliSiemensPerCm!, Number(limit))).toBeLessThan(1e-5);
    }
  });

  test("a conductivity that is not reached changes nothing", () => {
    const request = { products: "KNO3, urea", target: "N 60 ppm, K 80 ppm", ...can };
    expect(ask({ ...request, limit: "EC 4 mS/cm" }).value.amounts).toEqual(ask(request).value.amounts);
  });

  test("property: every limit is kept, and the certificate holds", () => {
    const products = ["calcium-nitrate", "KNO3", "potassium-chloride", "ammonium-sulfate", "urea", "KH2PO4"];
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...products), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 5, max: 80 }),
        fc.integer({ min: 5, max: 60 }),
        fc.integer({ min: 5, max: 30 }),
        (names, chloride, share, tenths) => {
          const request = {
            products: [...new Set([...names, "KNO3"])].join(", "),
            target: "N 120 ppm, K 180 ppm, Ca 60 ppm",
            limit: `Cl ${chloride} ppm, NH4-N ${share}% of N, EC ${tenths / 10} mS/cm`,
            ...can,
          };
          const { value } = ask(request);
          const { N = 0, Cl = 0, "NH4-N": ammonium = 0 } = value.deliveredPpm!;
          expect(Cl).toBeLessThanOrEqual(chloride * (1 + KEPT));
          expect(ammonium).toBeLessThanOrEqual((share / 100) * N + KEPT);
          const amounts = inputOf(request).products.map((one, j) => ({
            product: one,
            massGrams: value.amounts[j]!.massGrams,
          }));
          expect(electricalConductivity(amounts, 10).milliSiemensPerCm).toBeLessThanOrEqual((tenths / 10) * 1.00001);
          expect(checkBlendCertificate(value.certificate).valid).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("amounts of single products", () => {
  const FEED = { products: "KNO3, urea", target: "N 100 ppm, K 180 ppm", ...can };
  const grams = (request: Ask, shelf: readonly Product[] = []) =>
    ask(request, shelf).value.amounts.map(({ massGrams }) => massGrams);

  test("at most, at least, stock, and none or enough", () => {
    expect(grams({ ...FEED, use: "KNO3 at most 2 g" })[0]).toBe(2);
    expect(grams({ ...FEED, use: "urea at least 3 g" })[1]).toBe(3);
    // Exact is 0.76 g of urea: too little to weigh, so it is left out or taken whole.
    expect(grams(FEED)[1]!).toBeGreaterThan(0.5);
    expect([0, 1]).toContain(grams({ ...FEED, use: "urea at least 1 g or none" })[1]);
    const shelf = [{ ...product("KNO3"), id: "nitre", stockGrams: 1.5 }];
    expect(grams({ ...FEED, products: "nitre, urea" }, shelf)[0]).toBe(1.5);
  });

  test("a stock too small for its least amount is left out, or refused", () => {
    const shelf = [{ ...product("KNO3"), id: "nitre", stockGrams: 0.5 }];
    const request = { ...FEED, products: "nitre, urea" };
    expect(grams({ ...request, use: "nitre at least 2 g or none" }, shelf)[0]).toBe(0);
    expect(problemOf({ ...request, use: "nitre at least 2 g" }, shelf)).toBe("limits-contradict");
  });

  test("a ratio keeps to the stock too, and still makes the whole batch", () => {
    const shelf = [{ ...product("0-0-60"), id: "potash", stockGrams: 100 }];
    const request = { products: "46-0-0, 18-46-0, potash, 13-0-44", ratio: "3-1-2", batch: "1 kg" };
    const { value } = ask(request, shelf);
    expect(value.status).toBe("met");
    expect(value.amounts[2]!.massGrams).toBeLessThanOrEqual(100);
    expect(gap(value.totalGrams, 1000)).toBeLessThan(KEPT);
    for (const [i, part] of value.ratio.entries()) expect(gap(part, [3, 1, 2][i]!)).toBeLessThan(KEPT);
    expect(checkBlendCertificate(value.certificate).valid).toBe(true);
  });

  test("a ratio that the stock does not allow is as near as it gets, and says what ran out", () => {
    const shelf = [{ ...product("0-0-60"), id: "potash", name: "potash", stockGrams: 100 }];
    const { value } = ask({ products: "46-0-0, 18-46-0, potash", ratio: "3-1-2", batch: "1 kg" }, shelf);
    expect(value.status).toBe("closest");
    expect(gap(value.amounts[2]!.massGrams, 100)).toBeLessThan(KEPT);
    expect(gap(value.totalGrams, 1000)).toBeLessThan(KEPT);
    expect(value.explanation.join(" ")).toContain("All 100 g of potash on the shelf is used");
  });
});

describe("tolerances, sides and weights", () => {
  test("a tolerance of its own counts as met, and only to its edge", () => {
    const request = { products: "20-10-20", ...can };
    expect(ask({ ...request, target: "N 150 ppm, K 130 ppm within 5%" }).value.status).toBe("met");
    expect(ask({ ...request, target: "N 150 ppm, K 130 ppm within 4%" }).value.status).toBe("closest");
    expect(ask({ ...request, target: "N 150 ppm, K 130 ppm", within: "5%" }).value.status).toBe("met");
    // 20-10-20 at N 150 brings K 124.5.
    expect(ask({ ...request, target: "N 150 ppm, K 124 to 126 ppm" }).value.status).toBe("met");
    expect(ask({ ...request, target: "N 150 ppm, K 130 ppm within 6 ppm" }).value.status).toBe("met");
    expect(ask({ ...request, target: "N 150 ppm, K 130 ppm within 5 ppm" }).value.status).toBe("closest");
  });

  test("at least minds only a shortage, at most only an excess", () => {
    const request = { products: "20-10-20", ...can };
    expect(ask({ ...request, target: "N 150 ppm, K at least 100 ppm" }).value.status).toBe("met");
    expect(ask({ ...request, target: "N 150 ppm, K at least 130 ppm" }).value.status).toBe("closest");
    expect(ask({ ...request, target: "N 150 ppm, K at most 130 ppm" }).value.status).toBe("met");
    expect(ask({ ...request, target: "N 150 ppm, K at most 100 ppm" }).value.status).toBe("closest");
  });

  test("a heavier nutrient comes nearer", () => {
    const off = (target: string) =>
      Math.abs(ask({ products: "KNO3", target, ...can }).value.residuals[1]!.relativeMiss!);
    expect(off("N 50 ppm, K 200 ppm weight 5")).toBeLessThan(off("N 50 ppm, K 200 ppm"));
    expect(off("N 50 ppm weight 5, K 200 ppm")).toBeGreaterThan(off("N 50 ppm, K 200 ppm"));
  });

  test("largest: both misses are the same size where two pull against each other", () => {
    const { residuals } = ask({ products: "KNO3", target: "N 50 ppm, K 200 ppm", aim: "largest", ...can }).value;
    expect(gap(residuals[0]!.relativeMiss!, -residuals[1]!.relativeMiss!)).toBeLessThan(KEPT);
  });

  test("prefer: fewest leaves out what can be left out, cheapest takes the cheap one", () => {
    const request = {
      products: "calcium-nitrate, urea, KNO3",
      target: "N 100 ppm within 10%, K 100 ppm within 10%",
      ...can,
    };
    const used = (prefer: string) =>
      ask({ ...request, prefer }).value.amounts.filter(({ massGrams }) => massGrams > 0).length;
    expect(used("fewest")).toBe(2);
    const shelf = [
      { ...product("potassium-nitrate"), id: "dear", pricePerGram: 1 },
      { ...product("potassium-nitrate"), id: "cheap", pricePerGram: 0.1 },
    ];
    const { amounts } = ask({ products: "dear, cheap", target: "K 100 ppm", ...can, prefer: "cheapest" }, shelf).value;
    expect(amounts[0]!.massGrams).toBe(0);
    expect(amounts[1]!.massGrams).toBeGreaterThan(0);
  });
});

describe("problems", () => {
  const FEED = { products: "KNO3, urea", target: "N 100 ppm, K 180 ppm", ...can };
  test.each([
    ["limit-already-passed", { ...FEED, limit: "Cl 10 ppm", already: "Cl 20 ppm" }],
    ["limits-contradict", { ...FEED, limit: "K 10 ppm", use: "KNO3 at least 5 g" }],
    ["limit-unreadable", { ...FEED, limit: " , " }],
    ["limit-basis-mismatch", { ...FEED, limit: "Cl 5 g/m2" }],
    ["limit-basis-mismatch", { products: "46-0-0, 0-0-60", ratio: "1-0-1", batch: "1 kg", limit: "EC 2 mS/cm" }],
    ["limit-unreadable", { ...FEED, limit: "EC 2 furlongs" }],
    ["nutrient-unknown", { ...FEED, limit: "Xx 20% of N" }],
    ["nutrient-unknown", { ...FEED, limit: "NH4-N 20% of Xx" }],
    ["use-unreadable", { ...FEED, use: "KNO3 5 g" }],
    ["use-unreadable", { ...FEED, use: "KNO3 at most 5 g or none" }],
    ["use-unreadable", { ...FEED, use: "KNO3 at most 5 g, KNO3 at least 6 g" }],
    ["use-product-unknown", { ...FEED, use: "gypsum at most 5 g" }],
    ["dimension-mismatch", { ...FEED, use: "KNO3 at most 5 m2" }],
    ["target-unclear", { ...FEED, target: "K 200 to 100 ppm" }],
    ["target-unclear", { ...FEED, target: "K at least 100 to 200 ppm" }],
    ["target-unclear", { ...FEED, target: "K 100 ppm within 500%" }],
    ["target-unclear", { ...FEED, target: "K 100 ppm weight 0" }],
    ["target-unclear", { ...FEED, target: "N 100 ppm, K 0 ppm within 5 ppm" }],
    ["not-positive", { ...FEED, target: "N at most 100 ppm, K at most 100 ppm" }],
    ["choice-unknown", { ...FEED, aim: "best" }],
    ["choice-unknown", { ...FEED, prefer: "best" }],
    ["price-missing", { ...FEED, prefer: "cheapest" }],
    ["choice-unknown", { ...FEED, labelRule: "mars" }],
    ["choice-unknown", { ...FEED, spoons: "imperial" }],
    ["option-missing", { ...FEED, stock: "1:100" }],
    ["options-conflict", { products: "46-0-0, 0-0-60", ratio: "1-0-1", batch: "1 kg", already: "N 5 ppm" }],
    ["options-conflict", { products: "46-0-0, 0-0-60", grade: "10-0-10", batch: "1 kg", water: "5 L" }],
    ["options-conflict", { ...FEED, batch: "1 kg" }],
    ["options-conflict", { products: "46-0-0", target: "N 5 g/m2", area: "1 m2", stock: "1:100", tank: "5 L" }],
    ["density-missing", { ...FEED, spoons: "metric" }],
    ["measure-missing", { products: "phosphoric-acid-85", target: "P 30 ppm", ...can, spoons: "metric" }],
    ["measure-too-coarse", { ...FEED, scale: "500 g", use: "KNO3 at least 1 g", limit: "K 300 ppm" }],
    ["measure-too-coarse", { ...FEED, scale: "500 g" }],
  ] as const)("%s: %j", (code, request) => expect(problemOf(request)).toBe(code));

  test("the choices are listed as people list them", () => {
    const aim = readAim({ prefer: "price" }, []);
    expect(aim.ok ? "" : aim.problems[0]!.expected).toBe("nearest, cheapest or fewest");
    const rule = readLabelRule("mars");
    expect(rule.ok ? "" : rule.problems[0]!.expected).toBe("us or eu");
  });

  test("a limit that is passed already says by what, with its unit and no more digits than count", () => {
    const outcome = blend(inputOf({ ...FEED, limit: "Cl 10 ppm", already: "Cl 0.5647 mmol/L" }));
    // 0.5647 mmol/L of 35.45 g/mol.
    expect(outcome.ok ? "" : outcome.problems[0]!.expected).toBe("a limit above what is there, 20 ppm of Cl");
  });
});
