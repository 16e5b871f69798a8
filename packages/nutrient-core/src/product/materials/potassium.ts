import { type Material, materialsOf } from "./material.ts";

/** Materials bought for their potassium. */
export const POTASSIUM_MATERIALS: readonly Material[] = materialsOf("potassium", [
  {
    // The analysis that was read; a soluble grade is printed 13.7-0-46 (from memory). A much copied solubility
    // table has this salt's row one column late and gives 209 at 20 °C, which is 10 °C.
    id: "potassium-nitrate",
    name: "potassium nitrate",
    aliases: ["nop", "nitrate-of-potash", "saltpetre", "saltpeter"],
    formula: "KNO3",
    analysis: { N: 13, "NO3-N": 13, K2O: 44 },
    source: "cornell-cca-po28",
    density: [1.0, 1.2],
    solubility: 316,
    hazards: ["oxidiser", "eye-damage"],
    evidence: { density: "from-memory", solubility: "solubility-table", hazards: "gischem" },
  },
  {
    id: "monopotassium-phosphate",
    name: "monopotassium phosphate",
    aliases: ["mkp", "potassium-dihydrogen-phosphate"],
    formula: "KH2PO4",
    analysis: { P2O5: 52, K2O: 34 },
    source: "from-memory",
    density: [1.1, 1.3],
    solubility: 226,
    evidence: { density: "from-memory", solubility: "solubility-table", hazards: "from-memory" },
  },
  {
    id: "dipotassium-phosphate",
    name: "dipotassium phosphate",
    aliases: ["dkp"],
    formula: "K2HPO4",
    analysis: { P2O5: 40, K2O: 53 },
    source: "from-memory",
    density: [0.9, 1.1],
    solubility: 1500,
    evidence: { density: "from-memory", solubility: "solubility-table", hazards: "echa-14877" },
  },
  {
    // Sulfur from memory.
    id: "potassium-sulfate",
    name: "potassium sulfate",
    aliases: ["sop", "sulfate-of-potash"],
    formula: "K2SO4",
    analysis: { K2O: 50, S: 17 },
    source: "cornell-cca-po28",
    density: [1.2, 1.5],
    solubility: 111,
    evidence: { density: "from-memory", solubility: "solubility-table", hazards: "echa-14970" },
  },
  {
    // 60 % K2O and 47 % Cl: over 100 together, and honest, for the oxide is only a way of counting.
    // 255 g, printed in one table, is per kilogram of solution.
    id: "potassium-chloride",
    name: "potassium chloride",
    aliases: ["mop", "muriate-of-potash"],
    formula: "KCl",
    analysis: { K2O: 60, Cl: 47 },
    source: "cornell-cca-po28",
    density: [0.93, 1.04],
    solubility: 342,
    evidence: {
      density: "physical-characteristics-sheet",
      solubility: "solubility-table",
      hazards: "from-memory",
    },
  },
  {
    // The source prints the formula as one to one; the mineral is one to two, and only that fits the analysis.
    id: "potassium-magnesium-sulfate",
    name: "potassium magnesium sulfate",
    aliases: ["langbeinite", "sulfate-of-potash-magnesia"],
    formula: "K2SO4·2MgSO4",
    analysis: { K2O: 22, Mg: 11, S: 22 },
    source: "cornell-cca-po28",
    density: [1.44, 1.57],
    solubility: 240,
    evidence: { density: "physical-characteristics-sheet", solubility: "from-memory", hazards: "from-memory" },
  },
  {
    // Soluble potash as labels print it; the total is 5 to 7 %, of almost no use in a first season.
    id: "greensand",
    name: "greensand",
    aliases: ["glauconite"],
    analysis: { K2O: 3 },
    source: "from-memory",
    density: [1.2, 1.5],
    leavesResidue: true,
    hazards: ["dust"],
    evidence: { density: "from-memory", hazards: "from-memory" },
  },
]);
