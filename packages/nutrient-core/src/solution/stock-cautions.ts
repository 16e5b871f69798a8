import { type Caution, type CautionKind, type Facts, raise } from "../outcome/caution.ts";
import { fractionOf, type Product } from "../product/product.ts";
import type { Amount } from "../supply/supply.ts";
import { ASSUMED_PH, saturations } from "./precipitation.ts";
import { capital, listed, shown } from "./shown.ts";
import { dissolves } from "./solubility.ts";

/** Products that must not meet. */
interface Meeting extends Facts {
  readonly calcium: readonly string[];
  readonly others: readonly string[];
}

const CALCIUM_SULFATE: CautionKind<Meeting> = {
  code: "stock-calcium-with-sulfate",
  severity: "caution",
  source: "fertilizer-interaction-note",
  sentence: ({ calcium, others }) =>
    `Calcium and sulfate must not share a stock: ${listed(calcium)} with ${listed(others)} drops gypsum, which clogs and takes nutrients out. Keep the calcium in a stock of its own, or weigh everything straight into the full can.`,
};

const CALCIUM_PHOSPHATE: CautionKind<Meeting> = {
  code: "stock-calcium-with-phosphate",
  severity: "caution",
  source: "fertilizer-interaction-note",
  sentence: ({ calcium, others }) =>
    `Calcium and phosphate must not share a stock: ${listed(calcium)} with ${listed(others)} drops calcium phosphate, which clogs and takes nutrients out. Keep the calcium in a stock of its own, or weigh everything straight into the full can.`,
};

interface Precipitate extends Facts {
  readonly solid: string;
  readonly formula: string;
  readonly certain: "yes" | "no";
  readonly timesSaturatedLow: number;
  readonly timesSaturatedHigh: number;
  readonly pHLow: number;
  readonly pHHigh: number;
}

const PRECIPITATES: CautionKind<Precipitate> = {
  code: "stock-precipitates",
  severity: "caution",
  source: "phreeqc-databases",
  sentence: (facts) =>
    `${capital(facts.solid)} (${facts.formula}) ${facts.certain === "yes" ? "will" : "may"} fall out of this stock: its ions are ${shown(facts.timesSaturatedLow)} to ${shown(facts.timesSaturatedHigh)} times what water holds, at pH ${facts.pHLow} to ${facts.pHHigh}. Split the products over two stocks, or make it weaker.`,
};

interface Solubility extends Facts {
  readonly product: string;
  readonly gramsPerLitre: number;
  readonly mostGramsPerLitre: number;
  readonly fractionUsed: number;
}

const TOO_MUCH: CautionKind<Solubility> = {
  code: "stock-solubility-exceeded",
  severity: "caution",
  source: "solubility-tables",
  sentence: ({ product, gramsPerLitre, mostGramsPerLitre }) =>
    `${capital(product)} will not all dissolve: ${shown(gramsPerLitre)} g per litre of stock, and at 20 °C a litre holds about ${shown(mostGramsPerLitre)} g. Make the stock weaker, or the tank larger.`,
};

const NEARLY: CautionKind<Solubility> = {
  code: "stock-solubility-near",
  severity: "note",
  source: "solubility-tables",
  sentence: ({ product, fractionUsed }) =>
    `${capital(product)} fills ${shown(fractionUsed * 100)} % of what dissolves at 20 °C: crystals form when the tank gets colder. Stay under 80 %, or keep it warm.`,
};

const RESIDUE: CautionKind<{ readonly products: readonly string[] }> = {
  code: "residue-in-stock",
  severity: "caution",
  source: "common-practice",
  sentence: ({ products }) =>
    `${capital(listed(products))} leaves a residue that clogs injectors, drippers and fine roses. Spread it on the bed or mix it into the soil instead.`,
};

/** Solutions are kept at 80 % of the tables or less, for cold nights (from memory). */
const SAFE_SHARE = 0.8;

/**
 * What to heed before these products go into one stock tank.
 *
 * That calcium stays apart from sulfate and phosphate is a rule of the trade and holds at any strength;
 * `stock-precipitates` says with numbers what the rule says without.
 *
 * @param amounts Products and grams in the tank.
 * @param stockLitres Finished volume of the stock, more than zero.
 * @param pH Lowest and highest pH of the stock, where it was measured.
 * @returns `stock-calcium-with-sulfate`, `stock-calcium-with-phosphate`, `stock-precipitates`,
 *   `stock-solubility-exceeded`, `stock-solubility-near`, `residue-in-stock`.
 * @example
 * const tank = ["calcium-nitrate", "epsom-salt"].map((id) => ({ product: materialById(id), massGrams: 100 }));
 * stockCautions(tank, 1).map(({ code }) => code)  // => ["stock-calcium-with-sulfate", "stock-precipitates"]
 */
export function stockCautions(
  amounts: readonly Amount[],
  stockLitres: number,
  pH: readonly [number, number] = ASSUMED_PH,
): Caution[] {
  const used = amounts.filter(({ massGrams }) => massGrams > 0);
  const products = used.map(({ product }) => product);
  const cautions: Caution[] = [];
  const sulfate = meeting(products, (product) => fractionOf(product, "S") > 0 && product.formula !== "S");
  if (sulfate) cautions.push(raise(CALCIUM_SULFATE, sulfate));
  const phosphate = meeting(products, (product) => fractionOf(product, "P") > 0);
  if (phosphate) cautions.push(raise(CALCIUM_PHOSPHATE, phosphate));
  for (const { solid, formula, index, verdict } of saturations(used, stockLitres, pH)) {
    if (verdict === "stays-dissolved") continue;
    cautions.push(
      raise(PRECIPITATES, {
        solid,
        formula,
        certain: verdict === "precipitates" ? "yes" : "no",
        timesSaturatedLow: 10 ** index[0],
        timesSaturatedHigh: 10 ** index[1],
        pHLow: pH[0],
        pHHigh: pH[1],
      }),
    );
  }
  for (const { product, gramsPerLitre, mostGramsPerLitre, fractionUsed } of dissolves(used, stockLitres)) {
    if (fractionUsed <= SAFE_SHARE) continue;
    const kind = fractionUsed > 1 ? TOO_MUCH : NEARLY;
    cautions.push(raise(kind, { product, gramsPerLitre, mostGramsPerLitre, fractionUsed }));
  }
  const residue = products.filter(({ leavesResidue }) => leavesResidue).map(({ name }) => name);
  if (residue.length > 0) cautions.push(raise(RESIDUE, { products: residue }));
  return cautions;
}

/** Calcium on the one side and another product on the other; undefined when no two different products meet so. */
function meeting(products: readonly Product[], isOther: (product: Product) => boolean): Meeting | undefined {
  const calcium = products.filter((product) => fractionOf(product, "Ca") > 0);
  const others = products.filter(isOther);
  if (!calcium.some((one) => others.some((other) => other.id !== one.id))) return undefined;
  // A superphosphate is on both sides: it is named on the second only where nothing else stands there.
  const apart = others.filter((other) => !calcium.includes(other));
  return {
    calcium: calcium.map(({ name }) => name),
    others: (apart.length > 0 ? apart : others).map(({ name }) => name),
  };
}
