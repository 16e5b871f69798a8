import { type Material, type MaterialEntry, materialsOf } from "./material.ts";

/** Fresh manures as they come, water included; total nutrients, of which only a part is available. */
const FRESH = {
  source: "extension-manure-vegetables",
  leavesResidue: true,
  hazards: ["pathogens"],
  evidence: { hazards: "nop-raw-manure" },
} as const satisfies Partial<MaterialEntry>;

/** Manures and castings. Moisture, bedding and salt vary widely: an analysis of the own heap goes before this table. */
export const MANURE_MATERIALS: readonly Material[] = materialsOf("manures", [
  {
    ...FRESH,
    id: "cattle-manure-fresh",
    name: "fresh cattle manure",
    aliases: ["beef-manure", "cow-manure", "cattle-manure"],
    analysis: { N: 0.7, P2O5: 0.5, K2O: 0.6 },
  },
  {
    ...FRESH,
    id: "dairy-manure-fresh",
    name: "fresh dairy manure",
    aliases: ["dairy-manure"],
    analysis: { N: 0.6, P2O5: 0.3, K2O: 0.6 },
  },
  {
    ...FRESH,
    id: "horse-manure-fresh",
    name: "fresh horse manure",
    aliases: ["horse-manure"],
    analysis: { N: 0.6, P2O5: 0.3, K2O: 0.5 },
  },
  {
    ...FRESH,
    id: "sheep-manure-fresh",
    name: "fresh sheep manure",
    aliases: ["sheep-manure"],
    analysis: { N: 1, P2O5: 0.4, K2O: 1 },
  },
  {
    ...FRESH,
    id: "pig-manure-fresh",
    name: "fresh pig manure",
    aliases: ["pig-manure", "hog-manure"],
    analysis: { N: 0.5, P2O5: 0.4, K2O: 0.7 },
  },
  {
    ...FRESH,
    id: "hen-manure-fresh",
    name: "fresh hen manure",
    aliases: ["hen-manure", "chicken-manure", "poultry-manure"],
    analysis: { N: 1, P2O5: 1.3, K2O: 0.5 },
  },
  {
    // Release: published for poultry litters in 100 days.
    ...FRESH,
    id: "broiler-litter",
    name: "broiler litter",
    aliases: ["poultry-litter"],
    analysis: { N: 3, P2O5: 2.8, K2O: 1.9 },
    hazards: ["pathogens", "dust"],
    nitrogenShare: [0.08, 0.37],
    evidence: { hazards: "nop-raw-manure", nitrogenShare: "sare-ls16-269" },
  },
  {
    // Most pellets are heated; the label says so. 30 to 50 % release is often said (from memory); this was read.
    id: "poultry-manure-pellets",
    name: "poultry manure pellets",
    aliases: ["chicken-manure-pellets"],
    analysis: { N: 4, P2O5: 3, K2O: 2.5, Ca: 8 },
    source: "from-memory",
    density: [0.6, 0.75],
    leavesResidue: true,
    hazards: ["dust", "pathogens"],
    nitrogenShare: [0.08, 0.37],
    evidence: { density: "from-memory", hazards: "nop-raw-manure", nitrogenShare: "sare-ls16-269" },
  },
  {
    // Release: most composts in a first season; 1 to 4 % in 100 days in another trial (sare-ls16-269).
    id: "cattle-manure-composted",
    name: "composted cattle manure",
    aliases: ["composted-manure", "composted-cow-manure"],
    analysis: { N: 1, P2O5: 1, K2O: 1 },
    source: "from-memory",
    density: [0.5, 0.8],
    leavesResidue: true,
    nitrogenShare: [0.05, 0.1],
    evidence: { density: "from-memory", hazards: "nop-raw-manure", nitrogenShare: "uc-compost-release" },
  },
  {
    id: "worm-castings",
    name: "worm castings",
    aliases: ["vermicompost"],
    analysis: { N: 1, P2O5: 0.5, K2O: 0.5 },
    source: "from-memory",
    density: [0.5, 0.8],
    leavesResidue: true,
    nitrogenShare: [0.05, 0.2],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
]);
