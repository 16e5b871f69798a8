import { term, type WorkingLine } from "../outcome/working.ts";
import { MEHLICH } from "./mehlich-table.ts";
import { around, type Need, SIX_INCHES } from "./need.ts";
import { inUnit, POUNDS_PER_1000_SQUARE_FEET, type PrintedUnit, US_TONS_PER_ACRE } from "./printed-unit.ts";
import { SIKORA } from "./sikora-table.ts";
import { MEHLICH_ACIDITY_PER_UNIT, MEHLICH_BUFFER_PH, type SoilTest, type TestMethod } from "./soil-test.ts";
import { inGrid, type Reading } from "./table.ts";

/** The lime that North Carolina's recommendations are counted in holds this much calcium carbonate. */
const STANDARD_LIME_SHARE = 0.9;

/** What share of the differences between soils a test of the kind explained, in the study that found least. */
export const EXPLAINED: Readonly<Record<TestMethod, { readonly share: number; readonly source: string }>> = {
  // For the SMP buffer, which the Sikora buffer was made to stand in for; no study of its own was read.
  sikora: { share: 0.82, source: "psu-buffer-comparison-2008" },
  "mehlich-formula": { share: 0.72, source: "virginia-mehlich-2005" },
  "mehlich-table": { share: 0.87, source: "psu-buffer-comparison-2008" },
};

/**
 * How much calcium carbonate takes a soil to a pH, by a laboratory's test of it?
 *
 * By the printed table, between its rows and columns in a straight line; by the Mehlich formula, acidity times
 * (wanted - now) / (6.6 - now) tons of standard lime, without the credit for lime given in the last year or two. The
 * range is the scatter of such tests, sqrt(1 - R2), with the soils' own spread taken to be as large as the amount, which
 * is wide.
 *
 * @param test Within its method's printed range.
 * @param fromPh Measured in water; the tables go by the test alone, the formula below 6.6 only.
 * @param toPh Above it, within the method's printed range.
 * @example
 * testNeed({ method: "sikora", bufferPh: 6.2 }, 5.5, 6.4).gramsPerSquareMetre  // => 627.67...
 */
export function testNeed(test: SoilTest, fromPh: number, toPh: number): Need {
  const { working, source } = NEEDS[test.method](test as never, fromPh, toPh);
  const gramsPerSquareMetre = working.at(-1)!.value;
  const ends = (["-", "+"] as const).map((sign) => scatterLine(sign, gramsPerSquareMetre, EXPLAINED[test.method]));
  return {
    gramsPerSquareMetre,
    range: around(
      gramsPerSquareMetre,
      ends.map(({ value }) => value),
    ),
    depthMetres: SIX_INCHES,
    source,
    working: [...working, ...ends],
  };
}

function scatterLine(
  sign: "-" | "+",
  grams: number,
  { share, source }: { share: number; source: string },
): WorkingLine {
  const scatter = Math.sqrt(1 - share);
  return {
    label: sign === "-" ? "at the lower end of the test's scatter" : "at the upper end of the test's scatter",
    expression: `${term(grams)} g/m^2 * (1 ${sign} sqrt(1 - ${share}))`,
    value: grams * (sign === "-" ? 1 - scatter : 1 + scatter),
    unit: "g/m^2",
    source,
  };
}

type NeedOf<M extends TestMethod> = (
  test: Extract<SoilTest, { method: M }>,
  fromPh: number,
  toPh: number,
) => { readonly working: readonly WorkingLine[]; readonly source: string };

const NEEDS: { readonly [M in TestMethod]: NeedOf<M> } = {
  sikora: ({ bufferPh }, _fromPh, toPh) => ({
    source: "osu-em-9585",
    working: [
      needLine(
        `calcium carbonate by the Sikora buffer's pH ${term(bufferPh)} for pH ${term(toPh)}`,
        inGrid(SIKORA, bufferPh, toPh),
        US_TONS_PER_ACRE,
        "osu-em-9585",
      ),
    ],
  }),
  "mehlich-table": ({ acidity }, _fromPh, toPh) => ({
    source: "psu-turf-lime",
    working: [
      needLine(
        `calcium carbonate by ${term(acidity)} meq/100 g for pH ${term(toPh)}`,
        inGrid(MEHLICH, acidity, toPh),
        POUNDS_PER_1000_SQUARE_FEET,
        "psu-turf-lime",
      ),
    ],
  }),
  "mehlich-formula": ({ acidity, bufferPh }, fromPh, toPh) => {
    const tons = (acidity * (toPh - fromPh)) / (MEHLICH_BUFFER_PH - fromPh);
    const source = "ncda-lime-formula";
    const acidityLine: WorkingLine[] =
      bufferPh === undefined
        ? []
        : [
            {
              label: "acidity, meq/100 cm3",
              expression: `(${MEHLICH_BUFFER_PH} - ${term(bufferPh)}) * ${MEHLICH_ACIDITY_PER_UNIT}`,
              value: acidity,
              unit: "",
              source,
            },
          ];
    const standard: WorkingLine = {
      label: "standard lime, US tons an acre",
      expression: `${term(acidity)} * (${term(toPh)} - ${term(fromPh)}) / (${MEHLICH_BUFFER_PH} - ${term(fromPh)})`,
      value: tons,
      unit: "",
      source,
    };
    const pure = { value: tons * STANDARD_LIME_SHARE, expression: `${term(tons)} * ${STANDARD_LIME_SHARE}` };
    return {
      source,
      working: [
        ...acidityLine,
        standard,
        needLine("calcium carbonate in that", pure, US_TONS_PER_ACRE, "ncda-standard-lime"),
      ],
    };
  },
};

function needLine(label: string, reading: Reading, unit: PrintedUnit, source: string): WorkingLine {
  return {
    label,
    expression: inUnit(reading, unit),
    value: reading.value * unit.gramsPerSquareMetre,
    unit: "g/m^2",
    source,
  };
}
