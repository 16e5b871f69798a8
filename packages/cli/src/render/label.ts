import type { LabelResult, Product, UnitHabit } from "nutrient-core";
import { deliveredLine } from "./delivered.ts";
import { shown, weighed } from "./number.ts";

const FORM_WORDS = {
  "NO3-N": "nitrate",
  "NH4-N": "ammonium",
  "urea-N": "urea",
  "organic-N": "organic",
} as const;

/** Labels print an oxide for these. */
const OXIDE_OF = { P: "P2O5", K: "K2O", Ca: "CaO", Mg: "MgO", S: "SO3" } as const;

/** The product and its grade first, then what it holds by element and by oxide, then what is known beside. */
export function labelLines(product: Product, result: LabelResult, habit: UnitHabit): string[] {
  const { elementPercent, oxidePercent, ratio, nitrogenFormsPercent, massGrams } = result;
  const grade = [oxidePercent.N, oxidePercent.P2O5, oxidePercent.K2O].map((percent) => shown(percent ?? 0)).join("-");
  const formula = result.formula !== undefined && result.formula !== product.name ? ` (${result.formula})` : "";
  const lines = [
    `${product.name}${formula}: ${grade} (N-P2O5-K2O)`,
    `  elements  ${percentLine(elementPercent)}`,
    `  as oxides ${percentLine(oxidePercent)}`,
  ];
  if (nitrogenFormsPercent) lines.push(`  nitrogen  ${formsLine(nitrogenFormsPercent)}`);
  if (ratio.some((part) => part > 0)) lines.push(`  ratio     ${ratio.map((part) => shown(part)).join(" : ")}`);
  if (result.firstSeasonNitrogenShare) {
    const [low, high] = result.firstSeasonNitrogenShare.map((share) => shown(100 * share));
    lines.push(`  of the N, ${low === high ? low : `${low} to ${high}`} % can be used in the first season`);
  }
  if (result.molarMassGramsPerMole !== undefined)
    lines.push(`  molar mass of ${result.formula} ${shown(result.molarMassGramsPerMole, 6)} g/mol`);
  lines.push(...densityLines(product, result));
  if (result.solubilityGramsPerLitre !== undefined && result.solubilityGramsPerLitre > 0)
    lines.push(`  ${shown(result.solubilityGramsPerLitre)} g dissolve in 1 L of added water at 20 °C`);
  if (massGrams !== undefined) lines.push(`${weighed(massGrams, habit)} holds:`, ...contentLines(result, habit));
  return lines;
}

function percentLine(percent: Readonly<Record<string, number>>): string {
  const parts = Object.entries(percent).flatMap(([form, value]) => (value > 0 ? [`${form} ${shown(value, 4)}`] : []));
  return parts.length > 0 ? `${parts.join(", ")} %` : "no nutrient";
}

function formsLine(forms: NonNullable<LabelResult["nitrogenFormsPercent"]>): string {
  const parts = (Object.entries(forms) as [keyof typeof FORM_WORDS, number][]).map(
    ([form, percent]) => `${FORM_WORDS[form]} ${shown(percent, 4)}`,
  );
  return `${parts.join(", ")} %`;
}

function densityLines(product: Product, { densityKilogramsPerLitre: density, gramsPerLitre }: LabelResult): string[] {
  if (density === undefined) return [];
  const [low, high] = product.densityRange ?? [density, density];
  const range = low === high ? `${shown(density)} kg/L` : `${shown(low)} to ${shown(high)} kg/L`;
  if (!gramsPerLitre) return [`  loose in a measure ${range}`];
  return [`  density ${range}; a litre holds ${deliveredLine(gramsPerLitre, "g")}`];
}

function contentLines({ contents = {} }: LabelResult, habit: UnitHabit): string[] {
  return Object.entries(contents).flatMap(([form, { massGrams }]) => {
    if (massGrams === 0 || form.endsWith("-N") || Object.values(OXIDE_OF).some((oxide) => oxide === form)) return [];
    const oxide = OXIDE_OF[form as keyof typeof OXIDE_OF];
    const beside = oxide ? `, counted as ${oxide} ${weighed(contents[oxide]!.massGrams, habit)}` : "";
    return [`  ${form.padEnd(2)} ${weighed(massGrams, habit)}${beside}`];
  });
}
