import { type Content, percentOf } from "../../element/content.ts";
import type { ContentForm } from "../../element/nutrient.ts";
import { compositionOf } from "../composition.ts";
import type { Composition, Hazard, Product } from "../product.ts";

/** The families in which the materials are listed, in this order. */
export const MATERIAL_GROUPS = [
  "nitrogen",
  "phosphorus",
  "potassium",
  "calcium, magnesium and sulfur",
  "liming",
  "trace elements",
  "plant and animal meals",
  "manures",
] as const;
export type MaterialGroup = (typeof MATERIAL_GROUPS)[number];

/** A generic material: what is sold under a substance's own name, whoever sells it. */
export interface Material extends Product {
  readonly group: MaterialGroup;
  /** Short names and other spellings of the trade, kebab-case. */
  readonly aliases: readonly string[];
  /** Ids of the sources of what stands beside the analysis; `from-memory` marks what was not read anywhere. */
  readonly evidence: Evidence;
}

export interface Evidence {
  readonly density?: string;
  readonly solubility?: string;
  readonly hazards?: string;
  readonly nitrogenShare?: string;
}

/**
 * A material as its table writes it.
 *
 * The composition is that of the printed analysis, not of the formula: goods of the trade differ from the pure
 * salt (calcium nitrate is sold above its theory, diammonium phosphate 15 % below).
 */
export interface MaterialEntry {
  readonly id: string;
  readonly name: string;
  readonly aliases?: readonly string[];
  /** The pure substance behind it, for its hazards and its ions; never for its analysis. */
  readonly formula?: string;
  readonly state?: "liquid";
  /** Percent by mass as printed. Nitrogen forms are parts of the nitrogen. */
  readonly analysis: Readonly<Partial<Record<ContentForm, number>>>;
  /** Source of the analysis; `from-memory` when it was not read. */
  readonly source: string;
  /** Loose bulk density of a solid, density of a liquid, kg/L: lowest and highest published. */
  readonly density?: readonly [number, number];
  /**
   * Grams of the material as it is named (hydrate water included) that dissolve in one litre of added water at
   * 20 °C; tables per kilogram of water are taken as per litre. Not grams per litre of the solution that results.
   */
  readonly solubility?: number;
  readonly leavesResidue?: true;
  readonly hazards?: readonly Hazard[];
  /** Share of the nitrogen that a crop can use in the first season, 0 to 1: lowest and highest published. */
  readonly nitrogenShare?: readonly [number, number];
  readonly evidence?: Evidence;
}

/** Makes a material of each entry of a family's table. */
export function materialsOf(group: MaterialGroup, entries: readonly MaterialEntry[]): readonly Material[] {
  return entries.map((entry) => materialOf(group, entry));
}

function materialOf(group: MaterialGroup, entry: MaterialEntry): Material {
  const printed = printedOf(entry.analysis);
  const { density, solubility, nitrogenShare } = entry;
  return {
    id: entry.id,
    name: entry.name,
    aliases: entry.aliases ?? [],
    group,
    origin: "material",
    state: entry.state ?? "solid",
    composition: group === "plant and animal meals" ? slowlyReleased(printed) : compositionOf(printed),
    printed,
    hazards: entry.hazards ?? [],
    source: entry.source,
    evidence: entry.evidence ?? {},
    ...(entry.formula === undefined ? {} : { formula: entry.formula }),
    // A spoon or a jug is reckoned with the middle of what is published; the range goes along.
    ...(density ? { densityKilogramsPerLitre: (density[0] + density[1]) / 2, densityRange: density } : {}),
    ...(solubility === undefined ? {} : { solubilityGramsPerLitre: solubility }),
    ...(entry.leavesResidue ? { leavesResidue: true } : {}),
    ...(nitrogenShare ? { firstSeasonNitrogenShare: nitrogenShare } : {}),
  };
}

/** A meal's nitrogen is bound in its proteins until soil life takes them apart: all of it is organic. */
function slowlyReleased(printed: readonly Content[]): Composition {
  const composition = compositionOf(printed);
  return composition.N === undefined ? composition : { ...composition, "organic-N": composition.N };
}

function printedOf(analysis: MaterialEntry["analysis"]): Content[] {
  return (Object.entries(analysis) as [ContentForm, number][]).map(([form, percent]) => percentOf(form, percent));
}
