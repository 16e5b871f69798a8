import { type Material, type MaterialEntry, materialsOf } from "./material.ts";

/** What all dry meals share: they do not dissolve, and their dust is not to be breathed. */
const MEAL = { leavesResidue: true, hazards: ["dust"] } as const satisfies Partial<MaterialEntry>;

/**
 * Plant and animal meals. Their analyses vary from lot to lot: a label goes before this table. Their nitrogen is
 * released by soil life, so it is not split into forms.
 */
export const MEAL_MATERIALS: readonly Material[] = materialsOf("plant and animal meals", [
  {
    // Published 10 to 15.8 % N. Release: of the organic nitrogen, in 8 weeks, mean of 10 to 25 °C.
    ...MEAL,
    id: "blood-meal",
    name: "blood meal",
    analysis: { N: 12.5, P2O5: 1.5, K2O: 0.6 },
    source: "osu-organic-values",
    density: [0.6, 0.7],
    nitrogenShare: [0.66, 0.66],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "hartz-johnstone-2006" },
  },
  {
    // Total P2O5; labels print 10 to 15 % as available, and it needs an acid soil. Ca from memory.
    ...MEAL,
    id: "bone-meal-steamed",
    name: "steamed bone meal",
    aliases: ["bone-meal"],
    analysis: { N: 2, P2O5: 27, Ca: 23 },
    source: "tamu-earth-kind-organics",
    density: [0.75, 0.9],
    nitrogenShare: [0.6, 0.75],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
  {
    ...MEAL,
    id: "bone-meal-raw",
    name: "raw bone meal",
    analysis: { N: 4, P2O5: 22, Ca: 20 },
    source: "tamu-earth-kind-organics",
    density: [0.7, 0.85],
    // Counts as untreated unless it was processed.
    hazards: ["dust", "pathogens"],
    nitrogenShare: [0.5, 0.6],
    evidence: { density: "from-memory", hazards: "nop-raw-manure", nitrogenShare: "from-memory" },
  },
  {
    // Release: of a hydrolysed fish powder.
    ...MEAL,
    id: "fish-meal",
    name: "fish meal",
    analysis: { N: 9, P2O5: 7 },
    source: "tamu-earth-kind-organics",
    density: [0.5, 0.65],
    nitrogenShare: [0.62, 0.62],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "hartz-johnstone-2006" },
  },
  {
    id: "fish-emulsion",
    name: "fish emulsion",
    state: "liquid",
    analysis: { N: 5, P2O5: 2, K2O: 2 },
    source: "from-memory",
    density: [1.15, 1.15],
    leavesResidue: true,
    nitrogenShare: [0.6, 0.75],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
  {
    ...MEAL,
    id: "feather-meal",
    name: "feather meal",
    analysis: { N: 12 },
    source: "hartz-johnstone-2006",
    density: [0.45, 0.6],
    nitrogenShare: [0.6, 0.6],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "hartz-johnstone-2006" },
  },
  {
    ...MEAL,
    id: "hoof-and-horn-meal",
    name: "hoof and horn meal",
    aliases: ["hoof-and-horn", "horn-meal"],
    analysis: { N: 14 },
    source: "tamu-earth-kind-organics",
    evidence: { hazards: "from-memory" },
  },
  {
    // Printed for the crop alfalfa.
    ...MEAL,
    id: "alfalfa-meal",
    name: "alfalfa meal",
    aliases: ["lucerne-meal"],
    analysis: { N: 2.5, P2O5: 0.5, K2O: 2 },
    source: "osu-organic-values",
    density: [0.4, 0.6],
    nitrogenShare: [0.25, 0.4],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
  {
    ...MEAL,
    id: "soybean-meal",
    name: "soybean meal",
    aliases: ["soya-meal"],
    analysis: { N: 7, P2O5: 1.5, K2O: 2.3 },
    source: "from-memory",
    density: [0.6, 0.65],
    nitrogenShare: [0.6, 0.75],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
  {
    ...MEAL,
    id: "cottonseed-meal",
    name: "cottonseed meal",
    analysis: { N: 6, P2O5: 2.5, K2O: 2 },
    source: "tamu-earth-kind-organics",
    density: [0.6, 0.65],
    nitrogenShare: [0.55, 0.75],
    evidence: { density: "lsu-small-area-table", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
  {
    // One printed table; most labels say 2 to 4 % K2O.
    ...MEAL,
    id: "kelp-meal",
    name: "kelp meal",
    aliases: ["seaweed-meal"],
    analysis: { N: 1, P2O5: 0.5, K2O: 9 },
    source: "tamu-earth-kind-organics",
    density: [0.7, 0.8],
    nitrogenShare: [0, 0.2],
    evidence: { density: "from-memory", hazards: "from-memory", nitrogenShare: "from-memory" },
  },
  {
    ...MEAL,
    id: "seabird-guano",
    name: "seabird guano",
    aliases: ["bird-guano"],
    analysis: { N: 13, P2O5: 11, K2O: 3 },
    source: "tamu-earth-kind-organics",
    hazards: ["dust", "pathogens"],
    nitrogenShare: [0.61, 0.61],
    evidence: { hazards: "from-memory", nitrogenShare: "hartz-johnstone-2006" },
  },
]);
