import { type Caution, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { LIME_IN_ONE_GO } from "../solution/feed-limits.ts";
import { isAsh, isBurnt, isSlaked } from "./amendment.ts";
import { ASH_A_YEAR } from "./applications.ts";
import {
  ASH_SALTY,
  BUFFER_BELOW,
  BY_TEXTURE,
  CAUSTIC_LIME,
  LIME_APART,
  LIME_GOES,
  LIME_HEAVY,
  LIME_QUICK,
  LIME_SLOW,
  MAGNESIUM_BROUGHT,
  OVERLIMING,
  QUICKLIME,
  TEST_SCATTER,
} from "./caution-kinds/lime.ts";
import { GOAL_REACHED, NO_ACID, SAND_HOLDS_LITTLE, SOIL_NOT_MIX } from "./caution-kinds/soil.ts";
import {
  FREE_LIME,
  SULFUR_GOES,
  SULFUR_NEAR_PLANTS,
  SULFUR_SLOW,
  SULFUR_SOURCES,
  TOO_SOUR,
} from "./caution-kinds/sulfur.ts";
import type { LimeInput, LimeResult } from "./lime-input.ts";
import type { Need } from "./need.ts";
import { POUNDS_PER_100_SQUARE_FEET } from "./printed-unit.ts";
import type { Soil } from "./read-soil.ts";
import { EXPLAINED } from "./test-need.ts";

/** From here on lime does more harm than good, and sulfur too, to what fruits (common practice, no source). */
const OVERLIMED_ABOVE_PH = 7;
const TOO_SOUR_BELOW_PH = 5.5;
/** 0.7 lb/100 sq ft a year on the surface of a planted bed (extension-blueberry-ph). */
const SULFUR_ON_PLANTED_A_YEAR = 0.7 * POUNDS_PER_100_SQUARE_FEET.gramsPerSquareMetre;

/** The salts of a buffer may lower a reading by a few tenths (common practice, no source). */
const BUFFER_BELOW_SOIL = 0.3;

/** What to heed when a soil's pH is moved. */
export function limeCautions(input: LimeInput, result: LimeResult, need: Need): Caution[] {
  const [first] = result.applications;
  if (!first)
    return [
      input.fromPh === input.toPh ? raise(GOAL_REACHED, { ph: input.toPh }) : raise(NO_ACID, { toPh: input.toPh }),
    ];
  return [
    ...hazardCautions([input.product]),
    ...(input.amendment.kind === "lime" ? cautionsOfLime(input, result) : cautionsOfSulfur(input, result, need)),
    ...(input.soil.kind === "texture" && input.soil.texture === "sand" ? [raise(SAND_HOLDS_LITTLE, {})] : []),
    raise(SOIL_NOT_MIX, {}),
  ];
}

function cautionsOfLime(
  { product, soil, fromPh, toPh }: LimeInput,
  { applications, needed, deliveredGramsPerSquareMetre }: LimeResult,
): Caution[] {
  const [slaked, burnt, ash] = [isSlaked(product), isBurnt(product), isAsh(product)];
  const magnesium = deliveredGramsPerSquareMetre.Mg ?? 0;
  const inOneGo = needed.gramsPerSquareMetre / applications.length;
  return [
    ...contradiction(soil, fromPh),
    ...(slaked ? [raise(CAUSTIC_LIME, { product: product.name })] : []),
    ...(burnt ? [raise(QUICKLIME, { product: product.name })] : []),
    ...(inOneGo > LIME_IN_ONE_GO
      ? [raise(LIME_HEAVY, { gramsPerSquareMetreInOneGo: inOneGo, limitGramsPerSquareMetre: LIME_IN_ONE_GO })]
      : []),
    ...(applications.length > 1 && !ash ? [raise(LIME_GOES, { goes: applications.length })] : []),
    ...(toPh > OVERLIMED_ABOVE_PH ? [raise(OVERLIMING, { toPh })] : []),
    ...(ash ? [raise(ASH_SALTY, { gramsPerSquareMetreAYear: ASH_A_YEAR })] : []),
    raise(LIME_APART, {}),
    ...(soil.kind === "texture"
      ? [raise(BY_TEXTURE, { alsoBy: DERIVED[soil.texture] ?? "" })]
      : [
          raise(
            { ...TEST_SCATTER, source: EXPLAINED[soil.test.method].source },
            { percentExplained: 100 * EXPLAINED[soil.test.method].share, method: METHOD_WORDS[soil.test.method] },
          ),
        ]),
    ...(magnesium > 0 ? [raise(MAGNESIUM_BROUGHT, { magnesiumGramsPerSquareMetre: magnesium })] : []),
    raise(slaked || burnt || ash ? LIME_QUICK : LIME_SLOW, {}),
  ];
}

/** An acid soil pulls a buffer's pH down, never as far as its own: two figures the other way round are mixed up. */
function contradiction(soil: Soil, fromPh: number): Caution[] {
  if (soil.kind !== "test" || !("bufferPh" in soil.test) || soil.test.bufferPh === undefined) return [];
  const { bufferPh } = soil.test;
  return bufferPh < fromPh - BUFFER_BELOW_SOIL ? [raise(BUFFER_BELOW, { bufferPh, fromPh })] : [];
}

/** Textures that the table lacks are told apart. */
const DERIVED: Readonly<Record<string, string>> = {
  sand: ", carried over to sand from sandy loam as sulfur rates compare",
  clay: ", carried over to clay from clay loam as sulfur rates compare",
};

const METHOD_WORDS = {
  sikora: "by the Sikora buffer",
  "mehlich-formula": "by the Mehlich buffer and North Carolina's formula",
  "mehlich-table": "by the Mehlich acidity and Pennsylvania's table for turf",
} as const;

function cautionsOfSulfur({ toPh }: LimeInput, { applications, depthMetres }: LimeResult, need: Need): Caution[] {
  const [low, high] = need.range.map((grams) => (grams * depthMetres) / need.depthMetres) as [number, number];
  return [
    raise(FREE_LIME, {}),
    ...(applications.length > 1 ? [raise(SULFUR_GOES, { goes: applications.length })] : []),
    ...(toPh < TOO_SOUR_BELOW_PH ? [raise(TOO_SOUR, { toPh })] : []),
    raise(SULFUR_NEAR_PLANTS, { gramsPerSquareMetreAYear: SULFUR_ON_PLANTED_A_YEAR }),
    raise(SULFUR_SOURCES, { low, high }),
    raise(SULFUR_SLOW, {}),
  ];
}
