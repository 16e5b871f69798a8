import { OWN } from "../recipe/recipe.ts";

/** A lowest and a highest published value, and where they stand. */
export interface PublishedRange {
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** What an ingredient can do to people or plants, each with a caution of its own. */
export type IngredientHazard =
  | "mineral-dust"
  | "silica-dust"
  | "legionella"
  | "herbicide-residue"
  | "salts"
  | "raw-manure"
  | "rotted-manure"
  | "soil-lead";

/** What is published of one kind of ingredient. Where nothing was found, nothing stands here. */
export interface IngredientFacts {
  readonly kind: string;
  readonly isCompost: boolean;
  /** Oven-dry, loose, kg per litre. */
  readonly dryKilogramsPerLitre?: PublishedRange;
  /** As it is delivered, moist, kg per litre; where it is sold dry, the dry value holds. */
  readonly deliveredKilogramsPerLitre?: PublishedRange;
  /** Litres of water that a litre holds after draining in a pot: for weight only, never for air. */
  readonly waterShare?: PublishedRange;
  /** Litres of pores in a litre: as heavy as it can get. */
  readonly poreShare?: PublishedRange;
  readonly hazards: readonly IngredientHazard[];
}

const range = (low: number, high: number, source: string): PublishedRange => ({ low, high, source });

const PEAT: IngredientFacts = {
  kind: "peat",
  isCompost: false,
  // 0.11 (ija-pine-bark-peat-2012) and 0.113.
  dryKilogramsPerLitre: range(0.11, 0.113, "frontiers-growing-media-2014"),
  // Dry value at the 50 to 60 % moisture at which such materials are handled (arkansas-unit-7-tables): derived.
  deliveredKilogramsPerLitre: range(0.22, 0.2825, "arkansas-unit-7-tables"),
  waterShare: range(0.79, 0.87, "frontiers-growing-media-2014"),
  poreShare: range(0.93, 0.98, "ija-pine-bark-peat-2012"),
  hazards: ["legionella"],
};

const COIR: IngredientFacts = {
  kind: "coir",
  isCompost: false,
  // 0.04-0.08 over five sources, 0.08 packed as in a pot (ashs-packing-2024), up to 0.12 over seven others.
  dryKilogramsPerLitre: range(0.04, 0.12, "hortscience-coir-1996"),
  waterShare: range(0.73, 0.8, "hortscience-coir-1996"),
  poreShare: range(0.855, 0.95, "hortscience-coir-1996"),
  hazards: ["salts"],
};

const PERLITE: IngredientFacts = {
  kind: "perlite",
  isCompost: false,
  dryKilogramsPerLitre: range(0.105, 0.105, "frontiers-growing-media-2014"),
  waterShare: range(0.44, 0.44, "frontiers-growing-media-2014"),
  poreShare: range(0.85, 0.96, "acta-hort-779-porosity"),
  hazards: ["mineral-dust"],
};

const VERMICULITE: IngredientFacts = {
  kind: "vermiculite",
  isCompost: false,
  dryKilogramsPerLitre: range(0.07, 0.1, "frontiers-growing-media-2014"),
  waterShare: range(0.4, 0.55, "from-memory"),
  poreShare: range(0.9, 0.95, "from-memory"),
  hazards: ["mineral-dust"],
};

const PUMICE: IngredientFacts = {
  kind: "pumice",
  isCompost: false,
  dryKilogramsPerLitre: range(0.431, 0.431, "frontiers-growing-media-2014"),
  waterShare: range(0.57, 0.57, "frontiers-growing-media-2014"),
  poreShare: range(0.722, 0.83, "acta-hort-779-porosity"),
  hazards: ["mineral-dust"],
};

const BARK: IngredientFacts = {
  kind: "bark",
  isCompost: false,
  dryKilogramsPerLitre: range(0.17, 0.18, "ija-pine-bark-peat-2012"),
  deliveredKilogramsPerLitre: range(0.34, 0.45, "arkansas-unit-7-tables"),
  waterShare: range(0.48, 0.48, "ija-pine-bark-peat-2012"),
  poreShare: range(0.79, 0.79, "ija-pine-bark-peat-2012"),
  hazards: ["legionella"],
};

const WOOD_FIBRE: IngredientFacts = {
  kind: "wood fibre",
  isCompost: false,
  dryKilogramsPerLitre: range(0.087, 0.087, "frontiers-growing-media-2014"),
  waterShare: range(0.2, 0.2, "frontiers-growing-media-2014"),
  poreShare: range(0.82, 0.94, "frontiers-growing-media-2014"),
  hazards: [],
};

const COMPOST: IngredientFacts = {
  kind: "compost",
  isCompost: true,
  // 0.420 to 0.655 kg/L at 32.1 and 23.5 % moisture, without the water: derived.
  dryKilogramsPerLitre: range(0.285, 0.501, "benha-compost-properties"),
  // Up to 1200 lb per cubic yard, what a composting council is quoted to aim for.
  deliveredKilogramsPerLitre: range(0.42, 0.712, "soil-yard-compost-weight"),
  // Saturated and compacted 1724 lb per cubic yard is 1.023 kg/L; less its dry mass: derived, an upper bound.
  waterShare: range(0.45, 0.6, "soil-yard-compost-weight"),
  poreShare: range(0.607, 0.725, "benha-compost-properties"),
  hazards: ["legionella", "herbicide-residue"],
};

const SOIL: IngredientFacts = {
  kind: "soil",
  isCompost: false,
  // 69 lb per cubic foot of field soil; the upper value from memory.
  dryKilogramsPerLitre: range(1.105, 1.4, "commercial-gardening-1913"),
  deliveredKilogramsPerLitre: range(1.2, 1.6, "from-memory"),
  waterShare: range(0.3, 0.45, "from-memory"),
  poreShare: range(0.45, 0.55, "from-memory"),
  hazards: ["soil-lead"],
};

const SAND: IngredientFacts = {
  kind: "sand",
  isCompost: false,
  dryKilogramsPerLitre: range(1.4, 1.7, "from-memory"),
  waterShare: range(0.2, 0.35, "from-memory"),
  poreShare: range(0.35, 0.45, "from-memory"),
  hazards: ["silica-dust"],
};

const POTTING_MIX: IngredientFacts = {
  kind: "potting mix",
  isCompost: false,
  // Peat-based mixes; one with compost or loam is heavier.
  dryKilogramsPerLitre: range(0.09, 0.16, "arkansas-unit-7-tables"),
  deliveredKilogramsPerLitre: range(0.2, 0.4, "from-memory"),
  waterShare: range(0.54, 0.73, "arkansas-unit-7-tables"),
  poreShare: range(0.77, 0.86, "arkansas-unit-7-tables"),
  hazards: ["legionella"],
};

/** A heap that was not hot and turned is raw all the same; only its maker knows. */
const ROTTED_MANURE: IngredientFacts = { ...COMPOST, hazards: [...COMPOST.hazards, "rotted-manure"] };

const RAW_MANURE: IngredientFacts = {
  kind: "manure",
  isCompost: false,
  hazards: ["raw-manure", "herbicide-residue"],
};

/** First match holds; a bought "potting compost" is a mix, not compost. */
const KINDS: readonly (readonly [RegExp, IngredientFacts])[] = [
  [/potting|multi-?purpose|bought mix|growing mix/, POTTING_MIX],
  [/\b(composted|rotted) .*manure|manure compost/, ROTTED_MANURE],
  [/manure|\bdroppings|\bguano|\b(broiler|poultry|chicken|hen|turkey|stable) litter/, RAW_MANURE],
  [/compost(?!ed)/, COMPOST],
  [/\bpeat|sphagnum/, PEAT],
  [/\bcoir|\bcoco/, COIR],
  [/perlite/, PERLITE],
  [/vermiculite/, VERMICULITE],
  [/pumice/, PUMICE],
  [/\bbark/, BARK],
  [/wood fib/, WOOD_FIBRE],
  [/\b(soil|topsoil|loam)\b/, SOIL],
  [/\bsand|\bgrit/, SAND],
];

/** "coco peat" is coir: what a name says last does not always come first. */
const COCONUT = /\bcoco|\bcoir/;

/**
 * What is published of an ingredient of this name; undefined where it is of no kind that is known.
 *
 * @example
 * ingredientFacts("own garden soil")?.kind  // => "soil"
 */
export function ingredientFacts(name: string): IngredientFacts | undefined {
  const plain = name.toLowerCase().replace(OWN, "").replace(/[-_]/g, " ");
  if (COCONUT.test(plain)) return COIR;
  return KINDS.find(([pattern]) => pattern.test(plain))?.[1];
}
