import { ATOMIC_WEIGHT, type ElementSymbol } from "./atomic-weight.ts";
import { type AtomCounts, molarMass } from "./formula.ts";

/**
 * The nutrient elements a label, a target or an analysis may name, in the order in which they are shown.
 * Sodium, chlorine, silicon, selenium and cobalt are not essential to every crop, but labels and waters name them.
 */
export const NUTRIENT_ELEMENTS = [
  "N",
  "P",
  "K",
  "Ca",
  "Mg",
  "S",
  "Fe",
  "Mn",
  "Zn",
  "Cu",
  "B",
  "Mo",
  "Ni",
  "Cl",
  "Na",
  "Si",
  "Co",
  "Se",
] as const satisfies readonly ElementSymbol[];
export type NutrientElement = (typeof NUTRIENT_ELEMENTS)[number];

/** The forms of nitrogen that labels part: all are masses of nitrogen, and together the total. */
export const NITROGEN_FORMS = ["NO3-N", "NH4-N", "urea-N", "organic-N"] as const;
export type NitrogenForm = (typeof NITROGEN_FORMS)[number];

/** What a composition is kept in: nutrient elements, and the parts of the nitrogen whose form is known. */
export type Nutrient = NutrientElement | NitrogenForm;
export const NUTRIENTS: readonly Nutrient[] = [...NUTRIENT_ELEMENTS, ...NITROGEN_FORMS];

/** Oxides and ions in which labels and analyses print a nutrient: its element, its formula, and how often the element stands in it. */
interface Compound {
  readonly element: NutrientElement;
  readonly atoms: AtomCounts;
}

/** The oxides of fertilizer labels, by the formula that is printed. */
export const OXIDES = {
  P2O5: { element: "P", atoms: { P: 2, O: 5 } },
  K2O: { element: "K", atoms: { K: 2, O: 1 } },
  CaO: { element: "Ca", atoms: { Ca: 1, O: 1 } },
  MgO: { element: "Mg", atoms: { Mg: 1, O: 1 } },
  SO3: { element: "S", atoms: { S: 1, O: 3 } },
  Na2O: { element: "Na", atoms: { Na: 2, O: 1 } },
  SiO2: { element: "Si", atoms: { Si: 1, O: 2 } },
  B2O3: { element: "B", atoms: { B: 2, O: 3 } },
  MnO: { element: "Mn", atoms: { Mn: 1, O: 1 } },
  ZnO: { element: "Zn", atoms: { Zn: 1, O: 1 } },
  CuO: { element: "Cu", atoms: { Cu: 1, O: 1 } },
  Fe2O3: { element: "Fe", atoms: { Fe: 2, O: 3 } },
  MoO3: { element: "Mo", atoms: { Mo: 1, O: 3 } },
} as const satisfies Readonly<Record<string, Compound>>;
export type OxideName = keyof typeof OXIDES;

/** Ions and compounds that water and soil analyses, and feed recipes, print. */
const OTHER_FORMS = {
  NO3: { element: "N", atoms: { N: 1, O: 3 } },
  NH4: { element: "N", atoms: { N: 1, H: 4 } },
  NH3: { element: "N", atoms: { N: 1, H: 3 } },
  SO4: { element: "S", atoms: { S: 1, O: 4 } },
  PO4: { element: "P", atoms: { P: 1, O: 4 } },
  H2PO4: { element: "P", atoms: { H: 2, P: 1, O: 4 } },
  HPO4: { element: "P", atoms: { H: 1, P: 1, O: 4 } },
  H3BO3: { element: "B", atoms: { H: 3, B: 1, O: 3 } },
  CaCO3: { element: "Ca", atoms: { Ca: 1, C: 1, O: 3 } },
  MgCO3: { element: "Mg", atoms: { Mg: 1, C: 1, O: 3 } },
  KCl: { element: "K", atoms: { K: 1, Cl: 1 } },
} as const satisfies Readonly<Record<string, Compound>>;
export type OtherForm = keyof typeof OTHER_FORMS;

/** Every name under which an amount of a nutrient can be given. */
export type ContentForm = Nutrient | OxideName | OtherForm;

/** The ion whose nitrogen is of one form only. */
const FORM_OF_ION: Readonly<Partial<Record<ContentForm, NitrogenForm>>> = { NO3: "NO3-N", NH4: "NH4-N", NH3: "NH4-N" };

const COMPOUNDS: Readonly<Partial<Record<ContentForm, Compound>>> = { ...OXIDES, ...OTHER_FORMS };

/**
 * The nutrient that a form is an amount of: `P2O5` is phosphorus, `NO3` is nitrate nitrogen.
 *
 * @example
 * nutrientOf("K2O")  // => "K"
 */
export function nutrientOf(form: ContentForm): Nutrient {
  const compound = COMPOUNDS[form];
  return compound ? (FORM_OF_ION[form] ?? compound.element) : (form as Nutrient);
}

/**
 * Mass of the nutrient in one unit of mass of the form, derived from the atomic weights: 1 for the element itself.
 *
 * @example
 * elementPerForm("P2O5")  // => 0.4364287...
 */
export function elementPerForm(form: ContentForm): number {
  const compound = COMPOUNDS[form];
  if (!compound) return 1;
  const atoms: AtomCounts = compound.atoms;
  return ((atoms[compound.element] ?? 0) * ATOMIC_WEIGHT[compound.element]) / molarMass(atoms);
}

/**
 * Grams of a form in one mole of it; the mole of a nitrogen form is the mole of nitrogen.
 *
 * @example
 * gramsPerMole("NO3")  // => 62.004
 */
export function gramsPerMole(form: ContentForm): number {
  const compound = COMPOUNDS[form];
  if (compound) return molarMass(compound.atoms);
  return ATOMIC_WEIGHT[form.endsWith("-N") ? "N" : (form as NutrientElement)];
}

/** The oxide in which labels print this nutrient, if they do. */
export function oxideOf(nutrient: Nutrient): OxideName | undefined {
  return (Object.keys(OXIDES) as OxideName[]).find((name) => OXIDES[name].element === nutrient);
}

/** Words and spellings for the forms, lower case. "Phosphate" and "potash" are the trade's words for the oxides. */
const WORDS: Readonly<Record<string, ContentForm>> = {
  nitrogen: "N",
  phosphorus: "P",
  potassium: "K",
  calcium: "Ca",
  magnesium: "Mg",
  sulfur: "S",
  sulphur: "S",
  iron: "Fe",
  manganese: "Mn",
  zinc: "Zn",
  copper: "Cu",
  boron: "B",
  molybdenum: "Mo",
  nickel: "Ni",
  chlorine: "Cl",
  chloride: "Cl",
  sodium: "Na",
  silicon: "Si",
  cobalt: "Co",
  selenium: "Se",
  phosphate: "P2O5",
  potash: "K2O",
  lime: "CaO",
  magnesia: "MgO",
  "nitrate nitrogen": "NO3-N",
  "nitrate-n": "NO3-N",
  "n-no3": "NO3-N",
  "ammonium nitrogen": "NH4-N",
  "ammoniacal nitrogen": "NH4-N",
  "ammonium-n": "NH4-N",
  "n-nh4": "NH4-N",
  "urea nitrogen": "urea-N",
  "urea n": "urea-N",
  "organic nitrogen": "organic-N",
  "organic n": "organic-N",
  nitrate: "NO3",
  ammonium: "NH4",
  sulfate: "SO4",
  sulphate: "SO4",
};

const FORMS: readonly ContentForm[] = [
  ...NUTRIENTS,
  ...(Object.keys(OXIDES) as OxideName[]),
  ...(Object.keys(OTHER_FORMS) as OtherForm[]),
];

/** Whether a name is a nutrient or an oxide as labels print them, rather than an ion or a salt. */
export function isLabelForm(name: string): boolean {
  const form = formNamed(name);
  return form !== undefined && !Object.hasOwn(OTHER_FORMS, form);
}

let bySpelling: ReadonlyMap<string, ContentForm> | undefined;

/**
 * The form that a written name means, whatever its case: `k2o`, `K₂O`, `potash`, `NO3-N`; undefined when there is none.
 *
 * @example
 * formNamed("potash")  // => "K2O"
 */
export function formNamed(text: string): ContentForm | undefined {
  bySpelling ??= new Map([...FORMS.map((form) => [form.toLowerCase(), form] as const), ...Object.entries(WORDS)]);
  const name = text
    .trim()
    .toLowerCase()
    .replace(/[₀-₉]/g, (digit) => String(digit.charCodeAt(0) - 0x2080))
    .replace(/\s+/g, " ");
  return bySpelling.get(name);
}
