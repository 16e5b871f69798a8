import type { Product } from "../../product/product.ts";
import { readProduct } from "../../product/read-product.ts";
import type { Ask } from "./ask.ts";

/**
 * Requests with what the explanation says of them, to be read as sentences: would a grower know what to buy or change?
 * The figures in the sentences are checked by solving again in explain.test.ts; here stand the words.
 */
export interface ExplainedCase {
  readonly name: string;
  readonly request: Ask;
  readonly says: readonly string[];
}

const product = (text: string): Product => {
  const read = readProduct(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.value;
};

/** A shelf with a nearly empty bag and invented prices. */
export const SHELF: readonly Product[] = [
  { ...product("potassium-nitrate"), id: "saltpetre", origin: "shelf", stockGrams: 3 },
  { ...product("urea"), id: "my-urea", origin: "shelf", pricePerGram: 0.002 },
  { ...product("potassium-nitrate"), id: "my-kno3", origin: "shelf", pricePerGram: 0.01 },
  { ...product("monopotassium-phosphate"), id: "my-mkp", origin: "shelf", pricePerGram: 0.012 },
];

export const EXPLAINED: readonly ExplainedCase[] = [
  {
    name: "potassium only with nitrogen",
    request: {
      products: "KNO3",
      target: "N 50 ppm, K 200 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 20 % short of what was asked.",
      "N comes out 14 % over what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "If N may rise to 71.7 ppm, everything else is met.",
      "Adding 1.21 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 1.46 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "a second product that cannot help",
    request: {
      products: "KNO3, urea",
      target: "N 50 ppm, K 200 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 20 % short of what was asked.",
      "N comes out 14 % over what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "If N may rise to 71.7 ppm, everything else is met.",
      "Adding 1.21 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 1.46 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "a nutrient that nothing holds",
    request: {
      products: "urea, KNO3",
      target: "N 100 ppm, K 100 ppm, P 30 ppm",
      water: "10 L",
    },
    says: [
      "None of these products holds phosphorus.",
      "Adding 1.13 g of monoammonium phosphate and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "one nutrient missing, the others nearly there",
    request: {
      products: "calcium-nitrate, KNO3",
      target: "N 150 ppm, Ca 120 ppm, K 150 ppm, Mg 30 ppm",
      water: "10 L",
    },
    says: [
      "None of these products holds magnesium.",
      "Adding 3.06 g of magnesium sulfate heptahydrate (magnesium-sulfate) and weighing the rest anew would bring it 99 % closer to what was asked.",
    ],
  },
  {
    name: "water that brings more than is wanted",
    request: {
      products: "calcium-nitrate, KNO3, KH2PO4",
      target: "Ca 60 ppm, N 100 ppm, K 150 ppm, P 30 ppm",
      already: "Ca 90 ppm",
      water: "10 L",
    },
    says: [
      "Ca comes out 50 % over what was asked.",
      "N comes out 46 % short of what was asked.",
      "K comes out 25 % over what was asked.",
      "More nitrogen is held back: calcium nitrate brings calcium and KNO3 brings potassium, and there is enough of each.",
      "If Ca may rise to 163 ppm, 2.7 times what was asked, everything else is met.",
      "Adding 1.3 g of urea and weighing the rest anew would bring it 31 % closer to what was asked.",
    ],
  },
  {
    name: "a bag that runs out",
    request: {
      products: "saltpetre, urea",
      target: "N 100 ppm, K 180 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 39 % short of what was asked.",
      "All 3 g of potassium nitrate on the shelf is used; 0.3 g more would bring the largest miss from 39 % to 33 %.",
      "Adding 1.41 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 1.7 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "an amount held down",
    request: {
      products: "KNO3, urea",
      target: "N 100 ppm, K 180 ppm",
      use: "KNO3 at most 2 g",
      water: "10 L",
    },
    says: [
      "K comes out 57 % short of what was asked.",
      "KNO3 is held to 2 g; 0.2 g more would bring the largest miss from 57 % to 53 %.",
      "Adding 2.06 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 2.47 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "an amount that has to be used",
    request: {
      products: "urea, KNO3",
      target: "N 60 ppm, K 100 ppm",
      use: "urea at least 2 g",
      water: "10 L",
    },
    says: [
      "N comes out 83 % over what was asked.",
      "K comes out 50 % short of what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "At least 2 g of urea has to be used; less would come closer.",
      "If N may rise to 128 ppm, 2.1 times what was asked, everything else is met.",
      "Adding 2.01 g of potassium chloride and weighing the rest anew would bring it 45 % closer to what was asked, but it brings chloride too; 2.41 g of potassium sulfate instead would bring it 45 % closer, and no chloride.",
    ],
  },
  {
    name: "a limit on the conductivity",
    request: {
      products: "calcium-nitrate, KNO3, KH2PO4",
      target: "N 200 ppm, Ca 160 ppm, K 250 ppm, P 40 ppm",
      limit: "EC 1.5 mS/cm",
      water: "10 L",
    },
    says: [
      "N comes out 18 % short of what was asked.",
      "Ca comes out 17 % short of what was asked.",
      "K comes out 17 % short of what was asked.",
      "The limit EC 1.5 mS/cm is reached; a tenth more room would bring the largest miss from 18 % to 8.6 %.",
      "Adding 0.772 g of urea and weighing the rest anew would bring it 20 % closer to what was asked.",
    ],
  },
  {
    name: "a limit on chloride",
    request: {
      products: "urea, potassium-chloride",
      target: "N 100 ppm, K 150 ppm",
      limit: "Cl 50 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 65 % short of what was asked.",
      "The limit Cl 50 ppm is reached; a tenth more room would bring the largest miss from 65 % to 61 %.",
      "Adding 2.2 g of dipotassium phosphate and weighing the rest anew would meet every target, but it brings phosphorus too; 2.34 g of potassium sulfate instead would bring no phosphorus.",
    ],
  },
  {
    name: "a limit on the share of ammonium",
    request: {
      products: "ammonium-sulfate, KNO3",
      target: "N 150 ppm, K 100 ppm",
      limit: "NH4-N 30% of N",
      water: "10 L",
    },
    says: [
      "N comes out 59 % short of what was asked.",
      "K comes out 20 % over what was asked.",
      "The extra potassium comes along with the nitrogen of KNO3.",
      "The limit NH4-N 30 % of N is reached; a tenth more room would bring the largest miss from 59 % to 57 %.",
      "If K may rise to 293 ppm, 2.9 times what was asked, everything else is met.",
      "Adding 1.5 g of urea and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "a grade too strong for the bags",
    request: {
      products: "5-10-10, 46-0-0",
      grade: "20-20-20",
      batch: "1 kg",
    },
    says: [
      "P2O5 comes out 61 % short of what was asked.",
      "K2O comes out 61 % short of what was asked.",
      "N comes out 30 % short of what was asked.",
      "The batch is full: these products are too weak for this grade, even without filler.",
      "Mixed, these two reach only what lies between 1-2-2 (all 5-10-10) and 1-0-0 (all 46-0-0).",
      "Adding 373 g of dipotassium phosphate and weighing the rest anew would bring it 81 % closer to what was asked.",
    ],
  },
  {
    name: "two straights for three numbers",
    request: {
      products: "46-0-0, 0-0-60",
      ratio: "3-1-2",
      batch: "1 kg",
    },
    says: [
      "None of these products holds phosphorus.",
      "Mixed, these two reach only what lies between 1-0-0 (all 46-0-0) and 0-0-1 (all 0-0-60).",
      "Adding 148 g of monoammonium phosphate and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "a ratio beside the line of two bags",
    request: {
      products: "20-10-20, 46-0-0",
      ratio: "1-1-1",
      batch: "1 kg",
    },
    says: [
      "P2O5 comes out 44 % short of what was asked.",
      "N comes out 11 % over what was asked.",
      "K2O comes out 11 % over what was asked.",
      "All the phosphorus here comes with nitrogen, so more phosphorus would bring too much nitrogen.",
      "The extra potassium comes along with the phosphorus of 20-10-20.",
      "Mixed, these two reach only what lies between 2-1-2 (all 20-10-20) and 1-0-0 (all 46-0-0).",
      "A ratio of 1-0.5-1 could be made exactly.",
      "Adding 179 g of triple superphosphate and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "a ratio with a missing part",
    request: {
      products: "46-0-0, 13-0-44",
      ratio: "2-1-2",
      batch: "1 kg",
    },
    says: [
      "None of these products holds phosphorus.",
      "Mixed, these two reach only what lies between 1-0-0 (all 46-0-0) and 1-0-3.38 (all 13-0-44).",
      "Adding 186 g of monoammonium phosphate and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "phosphate only with nitrogen",
    request: {
      products: "18-46-0, 0-0-60",
      ratio: "1-4-4",
      batch: "1 kg",
    },
    says: [
      "P2O5 comes out 26 % short of what was asked.",
      "N comes out 16 % over what was asked.",
      "All the phosphorus here comes with nitrogen, so more phosphorus would bring too much nitrogen.",
      "Mixed, these two reach only what lies between 1-2.56-0 (all 18-46-0) and 0-0-1 (all 0-0-60).",
      "A ratio of 1.57-4-4 could be made exactly.",
      "Adding 204 g of triple superphosphate and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "a grade with less nitrogen than its phosphate brings",
    request: {
      products: "18-46-0, 0-0-60",
      grade: "4-20-20",
      batch: "1 kg",
    },
    says: [
      "P2O5 comes out 39 % short of what was asked.",
      "N comes out 20 % over what was asked.",
      "All the phosphorus here comes with nitrogen, so more phosphorus would bring too much nitrogen.",
      "Mixed, these two reach only what lies between 1-2.56-0 (all 18-46-0) and 0-0-1 (all 0-0-60).",
      "A grade of 7.83-20-20 could be made exactly.",
      "Adding 188 g of monopotassium phosphate and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "potassium only with sulfur",
    request: {
      products: "potassium-sulfate, calcium-nitrate",
      target: "N 100 ppm, K 200 ppm, S 30 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 56 % short of what was asked.",
      "S comes out 20 % over what was asked.",
      "All the potassium here comes with sulfur, so more potassium would bring too much sulfur.",
      "If S may rise to 81.9 ppm, 2.7 times what was asked, everything else is met.",
      "Adding 2.54 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 3.47 g of potassium nitrate instead would bring no chloride.",
    ],
  },
  {
    name: "two ways to potassium, both closed",
    request: {
      products: "potassium-nitrate, potassium-sulfate, urea",
      target: "N 20 ppm, K 200 ppm, S 20 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 42 % short of what was asked.",
      "N comes out 12 % over what was asked.",
      "S comes out 10 % over what was asked.",
      "More potassium is held back: potassium nitrate brings nitrogen and potassium sulfate brings sulfur, and there is enough of each.",
      "If N may rise to 53.8 ppm, 2.7 times what was asked, everything else is met.",
      "Adding 1.91 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too.",
    ],
  },
  {
    name: "chloride that may only be so much",
    request: {
      products: "potassium-chloride, KNO3",
      target: "K 200 ppm, N 30 ppm, Cl at most 50 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 25 % short of what was asked.",
      "N comes out 11 % over what was asked.",
      "Cl comes out 6.7 % over what was asked.",
      "More potassium is held back: potassium chloride brings chloride and KNO3 brings nitrogen, and there is enough of each.",
      "If Cl may rise to 110 ppm, 2.2 times what was asked, everything else is met.",
      "Adding 1.44 g of dipotassium phosphate and weighing the rest anew would meet every target, but it brings phosphorus too; 1.52 g of potassium sulfate instead would bring no phosphorus.",
    ],
  },
  {
    name: "calcium that must be at least so much",
    request: {
      products: "20-10-20",
      target: "N 150 ppm, Ca at least 80 ppm",
      water: "10 L",
    },
    says: [
      "None of these products holds calcium.",
      "Adding 2.35 g of calcium chloride, anhydrous (calcium-chloride-anhydrous) and weighing the rest anew would meet every target, but it brings chloride too; 4.21 g of calcium nitrate instead would bring no chloride.",
    ],
  },
  {
    name: "a tolerance that is not enough",
    request: {
      products: "20-10-20",
      target: "N 150 ppm within 5%, K 110 ppm within 5%",
      water: "10 L",
    },
    says: [
      "N comes out 6.3 % short of what was asked (5 % would still count as met).",
      "K comes out 6.1 % over what was asked (5 % would still count as met).",
      "All the nitrogen here comes with potassium, so more nitrogen would bring too much potassium.",
      "If K may rise to 118 ppm, everything else is met.",
      "Adding 0.38 g of urea and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "a tolerance that is nearly enough",
    request: {
      products: "20-10-20",
      target: "N 150 ppm within 6%, K 110 ppm within 6%",
      water: "10 L",
    },
    says: [
      "N comes out 6.2 % short of what was asked (6 % would still count as met).",
      "K comes out 6.2 % over what was asked (6 % would still count as met).",
      "All the nitrogen here comes with potassium, so more nitrogen would bring too much potassium.",
      "If K may rise to 117 ppm, everything else is met.",
      "Adding 0.38 g of urea and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "all met, nothing to say",
    request: {
      products: "KNO3, urea",
      target: "N 100 ppm, K 100 ppm",
      water: "10 L",
    },
    says: ["Every target is met."],
  },
  {
    name: "met with room: one can go",
    request: {
      products: "KNO3, urea, KH2PO4",
      target: "N 40 ppm within 20%, K 100 ppm within 20%",
      water: "10 L",
    },
    says: ["Every target is met.", "Urea could be left out: KNO3 alone also meets every target."],
  },
  {
    name: "met with a product unused",
    request: {
      products: "urea, calcium-nitrate, potassium-nitrate",
      target: "N at least 100 ppm, K 120 ppm",
      water: "10 L",
    },
    says: ["Every target is met."],
  },
  {
    name: "what asking less would save",
    request: {
      products: "my-urea, my-kno3",
      target: "N 100 ppm, K 150 ppm",
      water: "10 L",
    },
    says: ["Every target is met.", "Asking a tenth less K would save 9 % of the cost."],
  },
  {
    name: "what asking less would save, of three",
    request: {
      products: "my-urea, my-kno3, my-mkp",
      target: "N 100 ppm, K 150 ppm, P 30 ppm",
      water: "10 L",
    },
    says: ["Every target is met.", "Asking a tenth less K would save 7.9 % of the cost."],
  },
  {
    name: "a bed",
    request: {
      products: "46-0-0, bone-meal-raw",
      target: "N 10 g/m2, P 5 g/m2, K 8 g/m2",
      area: "3 m2",
    },
    says: [
      "None of these products holds potassium.",
      "Adding 48.2 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 54.5 g of dipotassium phosphate instead would bring no chloride.",
    ],
  },
  {
    name: "a mix",
    request: {
      products: "gypsum, urea",
      target: "Ca 300 g/m3, N 60 g/m3, S 80 g/m3",
      volume: "100 L",
    },
    says: [
      "Ca comes out 59 % short of what was asked.",
      "S comes out 20 % over what was asked.",
      "All the calcium here comes with sulfur, so more calcium would bring too much sulfur.",
      "If S may rise to 232 g/m3, 2.9 times what was asked, everything else is met.",
      "Adding 51.7 g of agricultural lime and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "the largest miss least",
    request: {
      products: "KNO3, urea",
      target: "N 50 ppm, K 200 ppm",
      aim: "largest",
      water: "10 L",
    },
    says: [
      "N comes out 18 % over what was asked.",
      "K comes out 18 % short of what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "If N may rise to 71.7 ppm, everything else is met.",
      "Adding 1.21 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 1.46 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "one nutrient that matters more",
    request: {
      products: "KNO3",
      target: "N 50 ppm, K 200 ppm weight 10",
      water: "10 L",
    },
    says: [
      "N comes out 36 % over what was asked.",
      "K comes out 5.1 % short of what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "If N may rise to 71.7 ppm, everything else is met.",
      "Adding 1.21 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 1.46 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "so little off that it does not matter",
    request: {
      products: "calcium-nitrate, potassium-nitrate, magnesium-sulfate, monopotassium-phosphate",
      target: "N 150 ppm, P 40 ppm, K 200 ppm, Ca 120 ppm, Mg 40 ppm",
      water: "10 L",
    },
    says: [
      "Nothing is off by more than 0.5 % of what was asked: labels and scales are less exact than that. Within 1 % it would all count as met.",
    ],
  },
  {
    name: "far more than was asked",
    request: {
      products: "urea, KNO3",
      target: "N 100 ppm",
      use: "urea at least 5 g",
      water: "9 L",
    },
    says: ["N comes out at 2.6 times what was asked.", "At least 5 g of urea has to be used; less would come closer."],
  },
  {
    name: "a way out that is far",
    request: {
      products: "20-20-20, calcium-nitrate",
      target: "N 100 ppm, K 180 ppm",
      water: "10 L",
    },
    says: [
      "K comes out 44 % short of what was asked.",
      "N comes out 20 % over what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "If N may rise to 217 ppm, 2.2 times what was asked, everything else is met.",
      "Adding 1.95 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 2.34 g of potassium sulfate instead would bring no chloride.",
    ],
  },
  {
    name: "two bags of one ratio",
    request: {
      products: "10-10-10, 5-5-5",
      ratio: "2-1-1",
      batch: "1 kg",
    },
    says: [
      "N comes out 44 % short of what was asked.",
      "P2O5 comes out 11 % over what was asked.",
      "K2O comes out 11 % over what was asked.",
      "All the nitrogen here comes with phosphorus, so more nitrogen would bring too much phosphorus.",
      "The extra potassium comes along with the nitrogen of 10-10-10.",
      "Both are 1-1-1, and so is every mixture of the two.",
      "A ratio of 1-1-1 could be made exactly.",
      "Adding 179 g of urea and weighing the rest anew would meet every target.",
    ],
  },
  {
    name: "a way out that no one would take",
    request: {
      products: "blood-meal, bone-meal-steamed",
      target: "N 2 lb/1000 sqft, P2O5 3 lb/1000 sqft, K2O 1 lb/1000 sqft",
      area: "32 sq ft",
    },
    says: [
      "K2O comes out 91 % short of what was asked.",
      "All the potassium here comes with nitrogen, so more potassium would bring too much nitrogen.",
      "Adding 22.1 g of potassium chloride and weighing the rest anew would meet every target, but it brings chloride too; 25 g of dipotassium phosphate instead would bring no chloride.",
    ],
  },
  {
    name: "a bed that has enough of one nutrient",
    request: {
      products: "blood-meal, bone-meal-steamed, potassium-sulfate",
      target: "N 10 g/m2, P2O5 8 g/m2, K2O 12 g/m2",
      area: "2.88 m2",
      already: "N 4 g/m2, K2O 14 g/m2",
    },
    says: [
      "K2O comes out 19 % over what was asked.",
      "There is 14 g/m2 of K2O already, more than was asked, and no product takes any away.",
      "If K2O may rise to 14.3 g/m2, everything else is met.",
    ],
  },
  {
    name: "a trace element",
    request: {
      products: "20-10-20, KNO3",
      target: "N 150 ppm, Fe 2 ppm",
      water: "10 L",
    },
    says: [
      "None of these products holds iron.",
      "Adding 0.105 g of iron(II) sulfate heptahydrate (iron-sulfate) and weighing the rest anew would meet every target.",
    ],
  },
];
