import { describe, expect, test } from "vitest";
import sources from "../../../../test-data/sources.json" with { type: "json" };
import type { Caution } from "../outcome/caution.ts";
import type { Extent } from "../supply/basis.ts";
import { deliver } from "../supply/supply.ts";
import { feedCautions, nitrogenFormCautions, stockCautions } from "./cautions.ts";
import { electricalConductivity } from "./conductivity.ts";
import { STRONGEST_FEED, STRONGEST_TRACE_FEED, TRACE_DRESSING, WHOLE_SEASON } from "./feed-limits.ts";
import { amountsOf, SOLUTION_1 } from "./testing/support.ts";

const FEED: Extent = { basis: "litre", amount: 10 };
const BED: Extent = { basis: "squareMetre", amount: 3 };
const MIX: Extent = { basis: "cubicMetre", amount: 1 };
const given = (extent: Extent, ...products: readonly (readonly [string, number])[]) => {
  const amounts = amountsOf(...products);
  return feedCautions(deliver(amounts, extent), extent, undefined, amounts);
};
const ec = (milliSiemensPerCm: number) => ({ milliSiemensPerCm });

interface Row {
  readonly code: string;
  readonly severity: Caution["severity"];
  readonly why: string;
  readonly raised: readonly Caution[];
  readonly justNot: readonly Caution[];
}

const TABLE: readonly Row[] = [
  {
    code: "feed-strength",
    severity: "caution",
    why: "nitrogen over one and a half times the strongest published feed (284 mg/L)",
    raised: feedCautions({ N: 427 }, FEED),
    justNot: feedCautions({ N: 426 }, FEED),
  },
  {
    code: "feed-strength",
    severity: "danger",
    why: "nitrogen over three times the strongest published feed",
    raised: feedCautions({ N: 853 }, FEED),
    justNot: feedCautions({ N: 852 }, FEED),
  },
  {
    code: "feed-strength",
    severity: "caution",
    why: "phosphorus over one and a half times the strongest published feed (62 mg/L)",
    raised: feedCautions({ P: 94 }, FEED),
    justNot: feedCautions({ P: 93 }, FEED),
  },
  {
    code: "feed-strength",
    severity: "caution",
    why: "a conductivity that is a severe problem in irrigation water",
    raised: feedCautions({}, FEED, ec(3.01)),
    justNot: feedCautions({}, FEED, ec(3)),
  },
  {
    code: "feed-strength",
    severity: "danger",
    why: "a conductivity at which half of a pepper crop is lost",
    raised: feedCautions({}, FEED, ec(5.11)),
    justNot: feedCautions({}, FEED, ec(5.1)),
  },
  {
    code: "feed-strength",
    severity: "caution",
    why: "one dressing of more than a whole season's nitrogen (22.4 g/m2)",
    raised: feedCautions({ N: 22.5 }, BED),
    justNot: feedCautions({ N: 22.4 }, BED),
  },
  {
    code: "feed-strength",
    severity: "danger",
    why: "one dressing of two seasons' nitrogen; 1 lb per 100 sq ft, as a web page advises, is 48.8 g/m2",
    raised: feedCautions({ N: 48.8 }, BED),
    justNot: feedCautions({ N: 44.8 }, BED),
  },
  {
    code: "feed-strength",
    severity: "caution",
    why: "blood meal with more usable nitrogen (66 %) than a whole season's 22.4 g/m2",
    raised: given(BED, ["blood-meal", 820]),
    justNot: given(BED, ["blood-meal", 810]),
  },
  {
    code: "feed-strength",
    severity: "danger",
    why: "blood meal with the usable nitrogen of two seasons",
    raised: given(BED, ["blood-meal", 1640]),
    justNot: given(BED, ["blood-meal", 1620]),
  },
  {
    code: "lime-heavy",
    severity: "caution",
    why: "11 lb of calcium carbonate on 100 sq ft (537 g/m2) as agricultural lime of 95 %",
    raised: given(BED, ["agricultural-lime", 1700]),
    justNot: given(BED, ["agricultural-lime", 1690]),
  },
  {
    code: "lime-heavy",
    severity: "caution",
    why: "the same as dolomitic lime, whose magnesium counts",
    raised: given(BED, ["dolomitic-lime", 1655]),
    justNot: given(BED, ["dolomitic-lime", 1640]),
  },
  {
    code: "lime-heavy",
    severity: "danger",
    why: "21 lb on 100 sq ft (1025 g/m2) as hydrated lime, which counts for 1.25",
    raised: given(BED, ["hydrated-lime", 2470]),
    justNot: given(BED, ["hydrated-lime", 2450]),
  },
  {
    code: "lime-heavy",
    severity: "caution",
    why: "wood ash is a lime, gypsum is none",
    raised: given(BED, ["wood-ash", 3000]),
    justNot: given(BED, ["gypsum", 9000]),
  },
  {
    code: "sulfur-heavy",
    severity: "caution",
    why: "more sulfur than a clay takes for one step of pH (270 g/m2)",
    raised: given(BED, ["elemental-sulfur", 905]),
    justNot: given(BED, ["elemental-sulfur", 895]),
  },
  {
    code: "chloride",
    severity: "note",
    why: "potassium chloride with over 4 me/L (142 mg/L) of chloride",
    raised: given(FEED, ["potassium-chloride", 3.03]),
    justNot: given(FEED, ["potassium-chloride", 3]),
  },
  {
    code: "chloride",
    severity: "caution",
    why: "potassium chloride with over 10 me/L (355 mg/L) of chloride",
    raised: given(FEED, ["potassium-chloride", 7.56]),
    justNot: given(FEED, ["potassium-chloride", 7.53]),
  },
  {
    code: "sodium",
    severity: "caution",
    why: "sodium nitrate with over 3 me/L (69 mg/L) of sodium",
    raised: given(FEED, ["sodium-nitrate", 2.66]),
    justNot: given(FEED, ["sodium-nitrate", 2.64]),
  },
  {
    code: "does-not-dissolve",
    severity: "caution",
    why: "bone meal in a can, against liquid fish and a salt that only leaves a residue",
    raised: given(FEED, ["bone-meal-steamed", 10]),
    justNot: given(FEED, ["fish-emulsion", 10], ["diammonium-phosphate", 5]),
  },
  {
    code: "does-not-dissolve",
    severity: "caution",
    why: "elemental sulfur, also by its formula",
    raised: given(FEED, ["S", 0.333]),
    justNot: given(FEED, ["potassium-sulfate", 5]),
  },
  {
    code: "does-not-dissolve",
    severity: "caution",
    why: "gypsum beyond 2.4 g/L",
    raised: given(FEED, ["gypsum", 24.1]),
    justNot: given(FEED, ["gypsum", 23.9]),
  },
  {
    code: "does-not-dissolve",
    severity: "caution",
    why: "lime, of which next to nothing dissolves, in a can and not on a bed",
    raised: given(FEED, ["CaCO3", 5]),
    justNot: given(BED, ["CaCO3", 5]),
  },
  {
    code: "boron-narrow",
    severity: "danger",
    why: "boron over 1 mg/L, where pepper begins to suffer",
    raised: feedCautions({ B: 1.01 }, FEED),
    justNot: feedCautions({ B: 0.7 }, FEED),
  },
  {
    code: "boron-narrow",
    severity: "danger",
    why: "100 g of borax on 10 m2, as a retailer's page advises, against 1 oz per 1000 sq ft of borax",
    raised: feedCautions(deliver(amountsOf(["Na2B4O7·10H2O", 100]), { basis: "squareMetre", amount: 10 }), BED),
    justNot: feedCautions(deliver(amountsOf(["Na2B4O7·10H2O", 28.35]), { basis: "squareMetre", amount: 92.9 }), BED),
  },
  {
    code: "micronutrient-narrow",
    severity: "caution",
    why: "copper over three times the strongest published feed (0.2 mg/L)",
    raised: feedCautions({ Cu: 0.61 }, FEED),
    justNot: feedCautions({ Cu: 0.6 }, FEED),
  },
  {
    code: "micronutrient-narrow",
    severity: "caution",
    why: "zinc over 10 kg/ha in one dressing",
    raised: feedCautions({ Zn: 1.1 }, BED),
    justNot: feedCautions({ Zn: 1 }, BED),
  },
  {
    code: "runoff",
    severity: "note",
    why: "more nitrogen than drinking water may hold",
    raised: feedCautions({ N: 11 }, FEED),
    justNot: feedCautions({ N: 10 }, FEED),
  },
  {
    code: "runoff",
    severity: "note",
    why: "nitrogen or phosphorus on a bed",
    raised: feedCautions({ P: 1 }, BED),
    justNot: feedCautions({ K: 1 }, BED),
  },
  {
    code: "ammonium-share",
    severity: "caution",
    why: "ammonium over 28 mg/L, the break in the yield of pepper",
    raised: nitrogenFormCautions({ N: 200, "NH4-N": 29 }),
    justNot: nitrogenFormCautions({ N: 200, "NH4-N": 28 }),
  },
  {
    code: "ammonium-share",
    severity: "caution",
    why: "over half of the nitrogen as ammonium or urea",
    raised: nitrogenFormCautions({ N: 40, "NH4-N": 11, "urea-N": 10 }),
    justNot: nitrogenFormCautions({ N: 40, "NH4-N": 10, "urea-N": 10 }),
  },
  {
    code: "stock-calcium-with-sulfate",
    severity: "caution",
    why: "calcium nitrate and Epsom salt in one tank",
    raised: stockCautions(amountsOf(["calcium-nitrate", 500], ["magnesium-sulfate", 300]), 10),
    justNot: stockCautions(amountsOf(["calcium-nitrate", 500], ["Mg(NO3)2·6H2O", 300]), 10),
  },
  {
    code: "stock-calcium-with-phosphate",
    severity: "caution",
    why: "calcium nitrate and monopotassium phosphate in one tank",
    raised: stockCautions(amountsOf(["calcium-nitrate", 500], ["monopotassium-phosphate", 100]), 10),
    justNot: stockCautions(amountsOf(["calcium-nitrate", 500], ["potassium-nitrate", 100]), 10),
  },
  {
    code: "stock-precipitates",
    severity: "caution",
    why: "more gypsum than water holds, against a tank so thin that it stays dissolved",
    raised: stockCautions(amountsOf(["calcium-nitrate", 60], ["magnesium-sulfate", 60]), 10),
    justNot: stockCautions(amountsOf(["calcium-nitrate", 50], ["magnesium-sulfate", 50]), 10),
  },
  {
    code: "stock-solubility-exceeded",
    severity: "caution",
    why: "potassium sulfate over what dissolves",
    raised: stockCautions(amountsOf(["potassium-sulfate", 106]), 1),
    justNot: stockCautions(amountsOf(["potassium-sulfate", 104]), 1),
  },
  {
    code: "stock-solubility-near",
    severity: "note",
    why: "over 80 % of what dissolves",
    raised: stockCautions(amountsOf(["potassium-sulfate", 85]), 1),
    justNot: stockCautions(amountsOf(["potassium-sulfate", 83]), 1),
  },
  {
    code: "residue-in-stock",
    severity: "caution",
    why: "superphosphate does not dissolve",
    raised: stockCautions(amountsOf(["single-superphosphate", 100]), 10),
    justNot: stockCautions(amountsOf(["monoammonium-phosphate", 100]), 10),
  },
];

test("sulfur by its formula does not dissolve in a stock either", () => {
  expect(stockCautions(amountsOf(["S", 10]), 10).map(({ code }) => code)).toEqual(["residue-in-stock"]);
});

const said = (cautions: readonly Caution[], row: Row) =>
  cautions.filter(({ code, severity }) => code === row.code && severity === row.severity);

describe.each(TABLE)("$code ($severity): $why", (row) => {
  test("is raised once, with a source on file and a whole sentence", () => {
    const [caution, ...more] = said(row.raised, row);
    expect(more).toEqual([]);
    expect(Object.keys(sources)).toContain(caution!.source);
    expect(caution!.message).not.toMatch(/undefined|NaN|Infinity|\[object/);
    expect(caution!.message).toMatch(/^[A-Z0-9].*\.$/);
  });

  test("is not raised just short of it", () => {
    expect(said(row.justNot, row)).toEqual([]);
  });
});

test("the sentences say what is wrong, with numbers, and what to do", () => {
  // Read aloud before they were written down here.
  expect(feedCautions({ N: 500, P: 100 }, FEED, ec(4))[0]!.message).toBe(
    "This feed is far stronger than those that are published: N 500 mg/L (strongest published 284), P 100 mg/L (strongest published 62) and EC 4 mS/cm (limit 3). It can burn roots and leaves: use less product or more water, and follow the label.",
  );
  expect(feedCautions({ N: 97.6 }, BED)[0]!.message).toBe(
    "Do not spread this in one go: N 97.6 g/m2 (a whole season 22.4). It will burn roots and wash out. Check the amounts and the units: pounds of product are not pounds of nutrient.",
  );
  expect(feedCautions({ N: 150 }, FEED)[0]!.message).toBe(
    "Not for drinking: its nitrogen is 15 times the limit for drinking water. Mark the can, keep it from children and animals, pour leftovers on a bed and never into a drain or a stream, and follow local rules.",
  );
  expect(given(BED, ["blood-meal", 1640])[0]!.message).toBe(
    "Do not spread this in one go: N usable in the first season 45.1 g/m2 (a whole season 22.4). It will burn roots and wash out. Check the amounts and the units: pounds of product are not pounds of nutrient.",
  );
  const first = (code: string, cautions: readonly Caution[]) => cautions.find((one) => one.code === code)!.message;
  expect(first("lime-heavy", given(BED, ["agricultural-lime", 2000]))).toBe(
    "This much agricultural lime, 633 g/m2 counted as calcium carbonate, goes on in two dressings half a year apart (from 537 g/m2 on), and only where a soil test asks for it: too much lime locks up iron, manganese, zinc and phosphorus for years.",
  );
  expect(first("lime-heavy", given(BED, ["hydrated-lime", 5000]))).toBe(
    "Do not spread this in one go: hydrated lime comes to 2080 g/m2 counted as calcium carbonate. Even on a very sour soil 1030 g/m2 or more is split over three dressings half a year apart. It can spoil the bed for years: check the amounts, and have the soil tested.",
  );
  expect(first("does-not-dissolve", given(FEED, ["bone-meal-steamed", 10], ["rock-phosphate", 1]))).toBe(
    "Steamed bone meal and rock phosphate: will dissolve in part at best, so what is reckoned here is not all in the water. Spread it on the bed or mix it into the soil, and choose something soluble for the can.",
  );
  expect(first("does-not-dissolve", given(FEED, ["bone-meal-steamed", 10], ["elemental-sulfur", 1]))).toBe(
    "Elemental sulfur: will not dissolve, so what is reckoned here is not in the water. Spread it on the bed or mix it into the soil, and choose something soluble for the can.",
  );
  expect(first("does-not-dissolve", given(FEED, ["gypsum", 50]))).toBe(
    "Gypsum: of 5 g in each litre about 2.4 g dissolve at 20 °C; the rest sinks, and what is reckoned here is not all in the water. Use less of it or more water, or spread it on the bed.",
  );
  const tank = amountsOf(["calcium-nitrate", 500], ["magnesium-sulfate", 300]);
  expect(stockCautions(tank, 10)[0]!.message).toBe(
    "Calcium and sulfate must not share a stock: calcium nitrate with magnesium sulfate heptahydrate drops gypsum, which clogs and takes nutrients out. Keep the calcium in a stock of its own, or weigh everything straight into the full can.",
  );
});

test("a complete published feed raises nothing but the note on leftovers", () => {
  const delivered = deliver(SOLUTION_1, { basis: "litre", amount: 1 });
  const conductivity = electricalConductivity(SOLUTION_1, 1);
  expect(feedCautions(delivered, FEED, conductivity).map(({ code }) => code)).toEqual(["runoff"]);
  expect(nitrogenFormCautions(delivered)).toEqual([]);
});

test("in a can, nitrogen that is still to be released burns nothing", () => {
  expect(feedCautions({ N: 900, "organic-N": 890 }, FEED).map(({ code }) => code)).toEqual(["runoff"]);
});

test("on a bed, manure's nitrogen counts as far as the first season uses it, its phosphorus whole", () => {
  // 10 kg of composted manure on 3 m2: 33.3 g/m2 of nitrogen, a tenth of it usable; 14.5 g/m2 of phosphorus.
  const [caution] = given(BED, ["cattle-manure-composted", 10_000]);
  expect(caution).toMatchObject({ code: "feed-strength", severity: "caution" });
  expect(caution!.facts["excesses"]).toEqual(["P 14.5 g/m2 (a whole season 10.9)"]);
  expect(given(BED, ["cattle-manure-composted", 7000]).map(({ code }) => code)).toEqual(["runoff"]);
  // What was there already is not the manure's: it counts whole.
  const amounts = amountsOf(["cattle-manure-composted", 3000]);
  const [withMore] = feedCautions({ N: 10 + 22 }, BED, undefined, amounts);
  expect(withMore!.facts["excesses"]).toEqual(["N usable in the first season 23 g/m2 (a whole season 22.4)"]);
});

test("a product without a published release counts whole", () => {
  expect(given(BED, ["hoof-and-horn-meal", 500])[0]!.facts["excesses"]).toEqual(["N 23.3 g/m2 (a whole season 22.4)"]);
});

test("ammonium on a bed, and a starter charge in a mix, are not judged by the limits of feeds", () => {
  expect(nitrogenFormCautions({ N: 20, "NH4-N": 20 }, BED)).toEqual([]);
  expect(feedCautions({ N: 200 }, MIX)).toEqual([]);
});

test("one superphosphate alone is a residue, not a meeting", () => {
  const codes = stockCautions(amountsOf(["single-superphosphate", 100]), 10).map(({ code }) => code);
  expect(codes).toEqual(["residue-in-stock"]);
});

test("elemental sulfur is no sulfate", () => {
  const codes = stockCautions(amountsOf(["calcium-nitrate", 100], ["S", 5]), 10).map(({ code }) => code);
  expect(codes).not.toContain("stock-calcium-with-sulfate");
});

test("every limit's source is on file", () => {
  for (const limits of [STRONGEST_FEED, STRONGEST_TRACE_FEED, WHOLE_SEASON, TRACE_DRESSING])
    for (const { source } of Object.values(limits)) expect(Object.keys(sources)).toContain(source);
});
