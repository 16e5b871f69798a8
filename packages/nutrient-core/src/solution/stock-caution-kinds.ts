import type { CautionKind, Facts } from "../outcome/caution.ts";
import { capital, listed, shown } from "../outcome/sentence.ts";

/** Products that must not meet. */
export interface Meeting extends Facts {
  readonly calcium: readonly string[];
  readonly others: readonly string[];
}

export const CALCIUM_SULFATE: CautionKind<Meeting> = {
  code: "stock-calcium-with-sulfate",
  severity: "caution",
  source: "fertilizer-interaction-note",
  sentence: ({ calcium, others }) =>
    `Calcium and sulfate must not share a stock: ${listed(calcium)} with ${listed(others)} drops gypsum, which clogs and takes nutrients out. Keep the calcium in a stock of its own, or weigh everything straight into the full can.`,
};

export const CALCIUM_PHOSPHATE: CautionKind<Meeting> = {
  code: "stock-calcium-with-phosphate",
  severity: "caution",
  source: "fertilizer-interaction-note",
  sentence: ({ calcium, others }) =>
    `Calcium and phosphate must not share a stock: ${listed(calcium)} with ${listed(others)} drops calcium phosphate, which clogs and takes nutrients out. Keep the calcium in a stock of its own, or weigh everything straight into the full can.`,
};

export interface Precipitate extends Facts {
  readonly solid: string;
  readonly formula: string;
  readonly certain: "yes" | "no";
  readonly timesSaturatedLow: number;
  readonly timesSaturatedHigh: number;
  readonly pHLow: number;
  readonly pHHigh: number;
}

export const PRECIPITATES: CautionKind<Precipitate> = {
  code: "stock-precipitates",
  severity: "caution",
  source: "phreeqc-databases",
  sentence: (facts) =>
    `${capital(facts.solid)} (${facts.formula}) ${facts.certain === "yes" ? "will" : "may"} fall out of this stock: its ions are ${shown(facts.timesSaturatedLow)} to ${shown(facts.timesSaturatedHigh)} times what water holds, at pH ${facts.pHLow} to ${facts.pHHigh}. Split the products over two stocks, or make it weaker.`,
};

export interface Solubility extends Facts {
  readonly product: string;
  readonly gramsPerLitre: number;
  readonly mostGramsPerLitre: number;
  readonly fractionUsed: number;
}

export const TOO_MUCH: CautionKind<Solubility> = {
  code: "stock-solubility-exceeded",
  severity: "caution",
  source: "solubility-tables",
  sentence: ({ product, gramsPerLitre, mostGramsPerLitre }) =>
    `${capital(product)} will not all dissolve: ${shown(gramsPerLitre)} g per litre of stock, and at 20 °C a litre holds about ${shown(mostGramsPerLitre)} g. Make the stock weaker, or the tank larger.`,
};

export const NEARLY: CautionKind<Solubility> = {
  code: "stock-solubility-near",
  severity: "note",
  source: "solubility-tables",
  sentence: ({ product, fractionUsed }) =>
    `${capital(product)} fills ${shown(fractionUsed * 100)} % of what dissolves at 20 °C: crystals form when the tank gets colder. Stay under 80 %, or keep it warm.`,
};

export const RESIDUE: CautionKind<{ readonly products: readonly string[] }> = {
  code: "residue-in-stock",
  severity: "caution",
  source: "common-practice",
  sentence: ({ products }) =>
    `${capital(listed(products))} leaves a residue that clogs injectors, drippers and fine roses. Spread it on the bed or mix it into the soil instead.`,
};
