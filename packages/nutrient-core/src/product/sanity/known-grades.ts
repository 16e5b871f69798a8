import { elementPerForm } from "../../element/nutrient.ts";
import { materialById } from "../materials.ts";
import { fractionOf, type Product } from "../product.ts";
import type { Triple } from "../triple.ts";

/** Whether P and K count as oxides or as elements. */
export type TripleBasis = "oxide" | "element";

/** Lowest and highest percent that a salt is sold with. */
type Range = readonly [low: number, high: number];

interface KnownGrade {
  readonly id: string;
  /** N, P2O5, K2O in percent: from the printed analysis to the pure salt. */
  readonly ranges: readonly [n: Range, p2o5: Range, k2o: Range];
  /** Too near to the grades of mixtures to accuse one of them. */
  readonly onlyExcuses?: true;
}

const NONE: Range = [0, 0];

/**
 * The grades in which phosphates and potassium salts are sold. Low ends are printed analyses of the generic
 * materials, high ends the pure salts; superphosphates and granular MAP from the range of their grades (from memory,
 * 11-48-0 to 11-52-0 read in nrcs-nm-note-76).
 */
const KNOWN_GRADES: readonly KnownGrade[] = [
  { id: "potassium-nitrate", ranges: [[13, 13.85], NONE, [44, 46.58]] },
  { id: "monopotassium-phosphate", ranges: [NONE, [52, 52.15], [34, 34.61]] },
  { id: "dipotassium-phosphate", ranges: [NONE, [40, 40.75], [53, 54.08]] },
  { id: "potassium-sulfate", ranges: [NONE, NONE, [50, 54.06]] },
  { id: "potassium-chloride", ranges: [NONE, NONE, [60, 63.18]] },
  { id: "monoammonium-phosphate", ranges: [[12, 12.18], [61, 61.7], NONE] },
  { id: "monoammonium-phosphate-granular", ranges: [[10, 11], [48, 52], NONE] },
  { id: "diammonium-phosphate", ranges: [[18, 21.21], [46, 53.74], NONE] },
  { id: "triple-superphosphate", ranges: [NONE, [44, 48], NONE] },
  { id: "single-superphosphate", ranges: [NONE, [16, 20], NONE] },
  { id: "potassium-magnesium-sulfate", ranges: [NONE, NONE, [21, 22.7]], onlyExcuses: true },
];

/** Half a percent point: labels print whole numbers, and goods vary. */
const ALLOWANCE = 0.5;

/** Contents beside N, P and K that tell the salts apart, when a label prints them. */
const TELLING = ["S", "Cl", "Ca", "Mg", "Na"] as const;

/**
 * The salt that a label's three numbers are a grade of, if they are one on this basis.
 *
 * @param numbers N, P and K as they are printed, in percent.
 * @param product For what it holds beside them.
 */
export function gradeFitting(numbers: Triple, basis: TripleBasis, product: Product): KnownGrade | undefined {
  const factors: Triple = basis === "oxide" ? [1, 1, 1] : [1, elementPerForm("P2O5"), elementPerForm("K2O")];
  return KNOWN_GRADES.find(
    ({ id, ranges }) =>
      ranges.every(([low, high], index) => {
        const [printed, factor] = [numbers[index]!, factors[index]!];
        return printed >= low * factor - ALLOWANCE && printed <= high * factor + ALLOWANCE;
      }) && besidesFit(product, id),
  );
}

function besidesFit(product: Product, id: string): boolean {
  const salt = materialById(id)!;
  return TELLING.every((element) => fractionOf(product, element) < 0.03 || fractionOf(salt, element) > 0);
}
