import { type Caution, type CautionKind, raise } from "../outcome/caution.ts";
import { hazardCautions } from "../product/hazard-cautions.ts";
import { materialById } from "../product/materials.ts";
import { ingredientFacts } from "./ingredient/facts.ts";
import { OWN, type Recipe } from "./recipe/recipe.ts";

/** Names of what changes the pH, beside the materials on file. */
export const LIME: RegExp = /\blime|quicklime|limestone|chalk|calcium carbonate|dolomi/;
const FED = /fertili[sz]er|plant food|\bfeed\b|superphosphate|\b\d+-\d+-\d+\b/;

/** More than any published mix holds of lime or fertilizer: 6 kg/m3 are 0.6 % at a kilogram to the litre. */
const FAR_TOO_MUCH_SHARE = 0.02;

interface PartFacts {
  readonly [fact: string]: string | number;
  readonly material: string;
  readonly sharePercent: number;
  /** 0 where its density is not on file. */
  readonly kilogramsPerCubicMetre: number;
}

const number = (value: number): string => String(Number(value.toPrecision(3)));

const sentence = ({ material, sharePercent, kilogramsPerCubicMetre }: PartFacts): string => {
  const heavy = kilogramsPerCubicMetre > 0 ? `, about ${number(kilogramsPerCubicMetre)} kg/m3,` : "";
  return `${number(sharePercent)} % of the volume${heavy} is ${material}: mixes are given up to about 6 kg/m3 of lime or 3 kg/m3 of starter fertilizer. More can burn roots or lock up nutrients. Write it by mass after a plus: "+ ${material} 3 kg/m3".`;
};

/** A rate that no published mix comes near. */
const farTooMuch: CautionKind<PartFacts> = {
  code: "material-as-part",
  severity: "danger",
  source: "rutgers-table-r4",
  sentence,
};
const asPart: CautionKind<PartFacts> = { ...farTooMuch, severity: "caution" };

/** Fresh manure as a share of a mix, against the rates published for beds. */
const manureShare: CautionKind<{ readonly manures: readonly string[]; readonly sharePercent: number }> = {
  code: "manure-share",
  severity: "caution",
  // 7 (broiler litter) to 40 lb (pig manure) on 100 square feet.
  source: "extension-manure-vegetables",
  sentence: ({ manures, sharePercent }) =>
    `${number(sharePercent)} % of the volume is ${manures.join(", ")}: published rates for vegetable beds run from 0.34 kg/m2 (broiler litter) to 2 kg/m2 (pig manure), not to a share of a mix. Let it compost hot first.`,
};

/** Lime, fertilizers and fresh manure that stand among the ingredients by volume. */
export function materialPartCautions({ components }: Recipe): Caution[] {
  const plain = components.map(({ name, share }) => ({ name: name.replace(OWN, ""), share }));
  const isManure = (name: string): boolean => ingredientFacts(name)?.kind === "manure";
  const materials = plain.filter(({ name }) => isMaterial(name) && !isManure(name));
  const manures = plain.filter(({ name }) => isManure(name));
  return [
    ...materials.map(({ name, share }) => {
      const density = materialById(name)?.densityKilogramsPerLitre ?? 0;
      const facts = { material: name, sharePercent: 100 * share, kilogramsPerCubicMetre: 1000 * share * density };
      return raise(share > FAR_TOO_MUCH_SHARE ? farTooMuch : asPart, facts);
    }),
    ...hazardCautions(materials.flatMap(({ name }) => materialById(name) ?? [])),
    ...(manures.length > 0
      ? [
          raise(manureShare, {
            manures: manures.map(({ name }) => name),
            sharePercent: 100 * manures.reduce((sum, { share }) => sum + share, 0),
          }),
        ]
      : []),
  ];
}

function isMaterial(name: string): boolean {
  const material = materialById(name);
  // Composts and castings stand among the manures and are ingredients.
  return material ? material.group !== "manures" : LIME.test(name) || FED.test(name);
}
