import { IONS, type Ion, type IonAmounts } from "./ion.ts";

/** Pieces of a formula that carry no charge in water. */
const UNCHARGED: ReadonlySet<string> = new Set(["H2O", "CO(NH2)2", "(NH2)2CO", "CH4N2O", "H3BO3", "B(OH)3", "S"]);

/** Groups of several atoms, longest first, so that `H2PO4` is not read as hydrogen and phosphate. */
const GROUPS: Readonly<Record<string, readonly (readonly [Ion, number])[]>> = {
  H2PO4: [["H2PO4", 1]],
  Mo7O24: [["MoO4", 3]], // one part of its molybdenum is counted with the charge, the rest as uncharged
  B4O7: [["BOH4", 2]], // two of its four boron atoms become uncharged boric acid
  HPO4: [["HPO4", 1]],
  HCO3: [["HCO3", 1]],
  MoO4: [["MoO4", 1]],
  SO4: [["SO4", 1]],
  PO4: [["PO4", 1]],
  NO3: [["NO3", 1]],
  CO3: [["CO3", 1]],
  NH4: [["NH4", 1]],
  OH: [["OH", 1]],
};
const ATOMS: readonly Ion[] = ["H", "K", "Na", "Ca", "Mg", "Fe", "Mn", "Zn", "Cu", "Cl"];

const GROUP = Object.keys(GROUPS).join("|");
const ATOM = [...ATOMS].sort((a, b) => b.length - a.length).join("|");
const TOKEN = new RegExp(`\\((${GROUP})\\)(\\d*)|(${GROUP})(?!\\d)|(${ATOM})(\\d*)`, "y");
const CHELATE = /^(Na|K)(Fe|Mn|Zn|Cu)C\d+H\d+N\d*O\d*$/;

/**
 * The ions that one formula unit of a salt gives in water. Undefined when the formula is not that of a salt, an acid
 * or a base that is known here, or when its charges would not balance (iron(III) salts).
 *
 * @param formula As chemists write it, hydrate included: `Ca(NO3)2·4H2O`.
 * @example
 * ionsOfFormula("MgSO4·7H2O")  // => { Mg: 1, SO4: 1 }
 */
export function ionsOfFormula(formula: string): IonAmounts | undefined {
  const ions: Partial<Record<Ion, number>> = {};
  const written = formula.replace(/[₀-₉]/g, (digit) => String(digit.charCodeAt(0) - 0x2080)).replace(/\s+/g, "");
  for (const piece of written.split(/[·•∙⋅.*]/)) {
    const [, digits, body] = /^(\d*)(.+)$/.exec(piece) ?? [];
    if (body === undefined) return undefined;
    const inside = ionsOfPiece(body);
    if (!inside) return undefined;
    const times = digits === "" ? 1 : Number(digits);
    for (const [ion, count] of inside) ions[ion] = (ions[ion] ?? 0) + times * count;
  }
  const charge = (Object.entries(ions) as [Ion, number][]).reduce((sum, [ion, n]) => sum + n * IONS[ion].charge, 0);
  return charge === 0 ? ions : undefined;
}

function ionsOfPiece(piece: string): readonly (readonly [Ion, number])[] | undefined {
  if (UNCHARGED.has(piece)) return [];
  const chelate = CHELATE.exec(piece);
  if (chelate) return [[chelate[1] as Ion, 1], ["chelate", 1]]; // biome-ignore format: one pair a line hides the pair
  const found: (readonly [Ion, number])[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < piece.length) {
    const token = TOKEN.exec(piece);
    if (!token) return undefined;
    const [, bracketed, bracketCount, group, atom, atomCount] = token;
    if (atom) found.push([atom as Ion, Number(atomCount || 1)]);
    else for (const [ion, n] of GROUPS[(bracketed ?? group)!]!) found.push([ion, n * Number(bracketCount || 1)]);
  }
  return found;
}
