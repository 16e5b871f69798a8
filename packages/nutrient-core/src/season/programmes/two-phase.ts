import type { Programme } from "../programme.ts";
import { ppm } from "./ppm.ts";

/**
 * The rule of thumb of growers: leaf first, then flower and fruit. The strengths are common practice too, at the low
 * end of what is usual for a feed every two weeks.
 */
export const TWO_PHASE: Programme = {
  id: "two-phase",
  name: "leaf first, then flower and fruit",
  evidence: "common-practice",
  sources: ["common-practice"],
  notes: [
    "Common practice: a little extra nitrogen until the first flower, then little nitrogen with more phosphorus and potassium.",
    "No trial was found that supports the switch for peppers; compare it with a programme from trials before choosing.",
  ],
  everyDays: 14,
  litresPerPlant: 1,
  stages: [
    {
      id: "leaf",
      name: "building the frame",
      begins: { kind: "days-after", milestone: "set-out", days: 14 },
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 200, P2O5: 100, K2O: 200 }) },
    },
    {
      id: "fruit",
      name: "flower and fruit",
      begins: { kind: "observed", milestone: "first-flower" },
      ends: { kind: "days-after", milestone: "end", days: -14 },
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 80, P2O5: 160, K2O: 320 }) },
    },
  ],
};
