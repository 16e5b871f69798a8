import { type Caution, raise } from "../outcome/caution.ts";
import { fractionOf, type Product } from "../product/product.ts";
import type { Amount } from "../supply/supply.ts";
import { ASSUMED_PH, saturations } from "./precipitation.ts";
import { dissolves } from "./solubility.ts";
import {
  CALCIUM_PHOSPHATE,
  CALCIUM_SULFATE,
  type Meeting,
  NEARLY,
  PRECIPITATES,
  RESIDUE,
  TOO_MUCH,
} from "./stock-caution-kinds.ts";

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
  const residue = products
    .filter(({ leavesResidue, solubilityGramsPerLitre }) => leavesResidue || solubilityGramsPerLitre === 0)
    .map(({ name }) => name);
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
