import type { Programme } from "../programme.ts";
import { ppm } from "./ppm.ts";

/** Advice for drip in soil, printed by stage: nitrogen rises and potassium falls from the first flower on. */
export const PUBLISHED_BY_STAGE: Programme = {
  id: "published-by-stage",
  name: "printed advice by stage, for drip in soil",
  evidence: "published-advice",
  sources: ["pepper-drip-newsletter-2001", "moller-2004"],
  notes: [
    "A growers' newsletter, not a trial. Nitrogen rises and potassium falls from the first flower on: the opposite of the rule of thumb.",
    "It does not say whether P and K are elements or oxides; they are taken as elements.",
    "It feeds with every watering. Water as much as the plants use: the litres here are those of a warm month under cover.",
  ],
  everyDays: 3,
  litresPerPlant: 2,
  stages: [
    {
      id: "leaf",
      name: "building the frame",
      begins: { kind: "days-after", milestone: "set-out", days: 7 },
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 80, P: 20, K: 60 }) },
    },
    {
      id: "first-fruit",
      name: "flower and first fruit",
      begins: { kind: "observed", milestone: "first-flower" },
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 110, P: 20, K: 40 }) },
    },
    {
      id: "later-fruit",
      name: "picking",
      begins: { kind: "observed", milestone: "first-harvest" },
      ends: { kind: "days-after", milestone: "end", days: -7 },
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 120, P: 20, K: 40 }) },
    },
  ],
};
