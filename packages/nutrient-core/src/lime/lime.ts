import { inOrderOfUrgency } from "../outcome/caution.ts";
import { answer, type Outcome } from "../outcome/outcome.ts";
import type { Extent } from "../supply/basis.ts";
import { inBothForms } from "../supply/both-forms.ts";
import { volumeOf } from "../supply/one-product.ts";
import { deliver, massForRate } from "../supply/supply.ts";
import { type Amendment, isAsh } from "./amendment.ts";
import { amountWorking } from "./amount-working.ts";
import { applicationsOf } from "./applications.ts";
import { limeCautions } from "./cautions.ts";
import type { LimeInput, LimeResult } from "./lime-input.ts";
import { FIFTEEN_CENTIMETRES, type Need, SIX_INCHES } from "./need.ts";
import { sulfurNeed } from "./sulfur-need.ts";
import { testNeed } from "./test-need.ts";
import { textureNeed } from "./texture-need.ts";

/**
 * How much lime, or sulfur, moves this bed's pH?
 *
 * What the soil asks for, in pure calcium carbonate or sulfur over a depth, by its texture or a laboratory's test; times
 * the depth over the source's depth; over what the material holds of it (calcium carbonate equivalent times fineness,
 * or its share of sulfur); times the area.
 *
 * @param input As {@link readLime} lets it in: pH 3 to 10, each figure within its source's printed range.
 * @returns The amount, for the whole area and each square metre, its range, the goes it is spread in, and what comes
 *   along with it. Cautions: burns, goes, free lime, dust, magnesium, sources that differ.
 * @example
 * lime({ product: readProduct("CaCO3").value, amendment: { kind: "lime", equivalent: 1, equivalentFrom: "composition" }, area: { squareMetres: 2 }, fromPh: 5.5, toPh: 6.5, soil: { kind: "texture", texture: "loam" } })  // => { gramsPerSquareMetre: 390.59... }
 */
export function lime(input: LimeInput): Outcome<LimeResult> {
  const { product, amendment, area } = input;
  const extent: Extent = { basis: "squareMetre", amount: area.squareMetres };
  const need = needOf(input);
  const depthMetres = input.depthMetres ?? need.depthMetres;
  const toDepth = depthMetres / need.depthMetres;
  const needed = need.gramsPerSquareMetre * toDepth;
  const massGrams = massFor(input, needed, extent);
  const amounts = [{ product, massGrams }];
  const gramsPerSquareMetre = massGrams / area.squareMetres;
  const [low, high] = need.range.map((grams) => massFor(input, grams * toDepth, extent)) as [number, number];
  const { working: volumeWorking, ...volume } = volumeOf(product, massGrams);
  const result: LimeResult = {
    amounts: [
      {
        product: product.id,
        massGrams,
        gramsPerSquareMetre,
        rangeGrams: [low, high],
        ...volume,
        ...(product.pricePerGram === undefined ? {} : { cost: massGrams * product.pricePerGram }),
      },
    ],
    gramsPerSquareMetre,
    rangeGramsPerSquareMetre: [low / area.squareMetres, high / area.squareMetres],
    areaSquareMetres: area.squareMetres,
    depthMetres,
    applications: applicationsOf(isAsh(product) ? "ash" : amendment.kind, needed, Math.abs(input.toPh - input.fromPh), {
      massGrams,
      gramsPerSquareMetre,
    }),
    needed: { of: amendment.kind === "lime" ? "calcium carbonate" : "sulfur", gramsPerSquareMetre: needed },
    ...(amendment.kind === "lime" ? { calciumCarbonateEquivalentPercent: 100 * amendment.equivalent } : {}),
    ...(amendment.kind === "lime" && amendment.fineness ? { finenessPercent: 100 * amendment.fineness.value } : {}),
    by: input.soil.kind === "texture" ? "texture" : input.soil.test.method,
    source: need.source,
    deliveredGramsPerSquareMetre: inBothForms(deliver(amounts, extent)),
  };
  const working = [
    ...need.working,
    ...amountWorking(input, need, { depthMetres, needed, massGrams }),
    ...volumeWorking,
  ];
  return answer(result, inOrderOfUrgency(limeCautions(input, result, need)), working);
}

function needOf({ amendment, soil, fromPh, toPh }: LimeInput): Need {
  if (fromPh === toPh) return nothing(amendment);
  // The door lets no test in with sulfur.
  if (soil.kind === "test") return testNeed(soil.test, fromPh, toPh);
  return amendment.kind === "lime" ? textureNeed(soil.texture, fromPh, toPh) : sulfurNeed(soil.texture, fromPh, toPh);
}

const nothing = ({ kind }: Amendment): Need => ({
  gramsPerSquareMetre: 0,
  range: [0, 0],
  depthMetres: kind === "lime" ? SIX_INCHES : FIFTEEN_CENTIMETRES,
  source: null,
  working: [],
});

/** How much of a lime counts: as calcium carbonate, and fine enough to work. */
const countsOf = (amendment: Extract<Amendment, { kind: "lime" }>): number =>
  amendment.equivalent * (amendment.fineness?.value ?? 1);

function massFor({ amendment, product, area }: LimeInput, needed: number, extent: Extent): number {
  // The door lets sulfur in only where the product holds some.
  if (amendment.kind === "sulfur") return massForRate(product, "S", needed, extent)!;
  return (area.squareMetres * needed) / countsOf(amendment);
}
