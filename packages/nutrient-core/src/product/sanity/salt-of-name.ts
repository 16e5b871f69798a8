import { massFractions, readFormula } from "../../element/formula.ts";
import { NUTRIENT_ELEMENTS, type NutrientElement } from "../../element/nutrient.ts";
import type { Material } from "../materials/material.ts";
import { MATERIALS } from "../materials.ts";
import type { Product } from "../product.ts";

/** A salt that a product is named after, with the formula that bounds what it can hold. */
interface NamedSalt {
  readonly material: Material;
  /** Without its water when the name does not say which hydrate it is. */
  readonly formula: string;
}

/** An element that does not fit the salt, in percent. */
export interface Misfit {
  readonly salt: string;
  readonly element: NutrientElement;
  readonly percent: number;
  readonly lowPercent: number;
  readonly highPercent: number;
}

const HYDRATE = /-(?:(?:mono|di|tri|tetra|penta|hexa|hepta|deca)hydrate|anhydrous)$/;
/** Words that make a product a mixture with the salt in it. */
const MIXTURE = /(?:^|-)(?:with|and|plus|mix|mixed|mixture|blend|based|feed|npk)(?:-|$)/;
/** Words that, next to a salt's name, make it another salt's: calcium ammonium nitrate is no ammonium nitrate. */
const CHEMICAL =
  /^(?:ammonium|calcium|magnesium|potassium|sodium|iron|zinc|copper|manganese|urea|nitrate|sulfate|phosphate|chloride|carbonate|acid)$/;

/**
 * What in a product's analysis does not fit the salt of its name; undefined when all fits, or when the name (or the
 * formula beside the label) is of no salt that is known here.
 *
 * The bounds are wide: from three quarters of the usual analysis to the pure salt, and 3 percent points of anything
 * else as impurity. A liquid is a solution, and may hold as little as it likes.
 */
export function misfitOf(product: Product): Misfit | undefined {
  const salts = saltsOf(product);
  const misfits = salts.map((salt) => misfitsWith(product, salt));
  // A name without its hydrate means several salts: fitting one is enough.
  if (misfits.some((list) => list.length === 0)) return undefined;
  return misfits.sort((a, b) => a.length - b.length)[0]?.sort((a, b) => farness(b) - farness(a))[0];
}

/** How many times outside its bounds an element lies. */
function farness({ percent, lowPercent, highPercent }: Misfit): number {
  return percent > highPercent ? percent / Math.max(highPercent, 3) : lowPercent / Math.max(percent, 1e-9);
}

function saltsOf({ id, name, formula }: Product): readonly NamedSalt[] {
  const byFormula = formula === undefined ? [] : MATERIALS.filter((material) => material.formula === formula);
  if (byFormula.length > 0) return byFormula.map((material) => ({ material, formula: formula! }));
  for (const words of [name, id].map(kebab)) {
    if (MIXTURE.test(words)) return [];
    const salts = saltsNamed(words);
    if (salts.length > 0) return salts;
  }
  return [];
}

function saltsNamed(words: string): readonly NamedSalt[] {
  const matches = MATERIALS.flatMap((material) =>
    keysOf(material).flatMap(({ key, hydrateSaid }) => (names(words, key) ? [{ material, key, hydrateSaid }] : [])),
  );
  // The longest name is the most exact: "urea phosphate" is not urea.
  const longest = Math.max(0, ...matches.map(({ key }) => key.length));
  return matches
    .filter(({ key }) => key.length === longest)
    .flatMap(({ material, hydrateSaid }) => {
      const { formula } = material;
      return formula === undefined ? [] : [{ material, formula: hydrateSaid ? formula : withoutWater(formula) }];
    });
}

function keysOf({ id, aliases }: Material): { key: string; hydrateSaid: boolean }[] {
  return [id, ...aliases].flatMap((name) => {
    const bare = name.replace(HYDRATE, "").replace(/-\d+$/, "");
    const generic = /-(?:sulfate|nitrate|chloride|molybdate)$/.test(bare);
    return [
      { key: name, hydrateSaid: HYDRATE.test(name) || !generic },
      ...(bare === name ? [] : [{ key: bare, hydrateSaid: !generic }]),
    ];
  });
}

/** Whether the words name the salt: as a whole, or as two words or more that stand alone among them. */
function names(words: string, key: string): boolean {
  if (words === key) return true;
  if (!key.includes("-")) return false;
  const at = `-${words}-`.indexOf(`-${key}-`);
  if (at < 0) return false;
  const before = words.slice(0, at).split("-").filter(Boolean).at(-1) ?? "";
  const after =
    words
      .slice(at + key.length)
      .split("-")
      .filter(Boolean)[0] ?? "";
  return !CHEMICAL.test(before) && !CHEMICAL.test(after);
}

const kebab = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll("sulph", "sulf")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");

const withoutWater = (formula: string): string => formula.replace(/·\d*H2O$/, "");

function misfitsWith(product: Product, { material, formula }: NamedSalt): Misfit[] {
  const pure = fractionsOf(formula);
  // A pure salt with its water holds less: the bag may be either.
  const hydrated = fractionsOf(material.formula ?? formula);
  return NUTRIENT_ELEMENTS.flatMap((element) => {
    const share = product.composition[element];
    if (share === undefined) return [];
    const inSalt = pure[element] ?? 0;
    const usual = material.composition[element] ?? 0;
    const high = inSalt === 0 ? 0.03 : Math.max(inSalt, usual) + 0.005;
    const low = product.state === "liquid" ? 0 : 0.75 * Math.min(hydrated[element] ?? 0, usual);
    if (share <= high && share >= low) return [];
    return [
      {
        salt: material.name,
        element,
        percent: 100 * share,
        lowPercent: 100 * low,
        highPercent: inSalt === 0 ? 0 : 100 * Math.max(inSalt, usual),
      },
    ];
  });
}

function fractionsOf(formula: string): ReturnType<typeof massFractions> {
  const atoms = readFormula(formula);
  if (!atoms.ok) throw new Error(`not a formula: ${formula}`);
  return massFractions(atoms.value);
}
