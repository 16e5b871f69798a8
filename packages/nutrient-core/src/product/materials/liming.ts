import { type Material, materialsOf } from "./material.ts";

/** Materials that raise the pH of a soil or a mix. */
export const LIMING_MATERIALS: readonly Material[] = materialsOf("liming", [
  {
    // 0.014 g/L in water that has stood in air; 0.006 without carbon dioxide.
    id: "agricultural-lime",
    name: "agricultural lime",
    aliases: ["ground-limestone", "garden-lime", "calcitic-lime", "calcium-carbonate"],
    formula: "CaCO3",
    analysis: { Ca: 38 },
    source: "from-memory",
    density: [1.2, 1.5],
    solubility: 0.014,
    leavesResidue: true,
    hazards: ["dust"],
    evidence: { density: "from-memory", solubility: "from-memory", hazards: "from-memory" },
  },
  {
    id: "dolomitic-lime",
    name: "dolomitic lime",
    aliases: ["dolomite", "magnesian-limestone"],
    formula: "CaMg(CO3)2",
    analysis: { Ca: 21, Mg: 11 },
    source: "from-memory",
    density: [1.2, 1.5],
    solubility: 0.02,
    leavesResidue: true,
    hazards: ["dust"],
    evidence: { density: "from-memory", solubility: "from-memory", hazards: "from-memory" },
  },
  {
    // Irritates the skin and damages the eyes; never together with ammonium, which it drives off as gas.
    id: "hydrated-lime",
    name: "hydrated lime",
    aliases: ["slaked-lime", "calcium-hydroxide"],
    formula: "Ca(OH)2",
    analysis: { Ca: 50 },
    source: "from-memory",
    density: [0.4, 0.6],
    solubility: 1.7,
    leavesResidue: true,
    hazards: ["caustic", "eye-damage", "dust"],
    evidence: { density: "from-memory", solubility: "from-memory", hazards: "ghs-hydrated-lime" },
  },
  {
    // P2O5 and K2O were read; Ca and Mg are from memory.
    id: "wood-ash",
    name: "wood ash",
    analysis: { P2O5: 2, K2O: 6, Ca: 25, Mg: 1 },
    source: "tamu-earth-kind-organics",
    density: [0.4, 0.6],
    leavesResidue: true,
    hazards: ["caustic", "dust"],
    evidence: { density: "from-memory", hazards: "from-memory" },
  },
]);
