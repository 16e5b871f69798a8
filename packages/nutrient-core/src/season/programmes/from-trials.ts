import type { Programme, Stage } from "../programme.ts";
import { ppm } from "./ppm.ts";

/**
 * Programmes from published trials with peppers. The trials fed with every watering; a grower with a can waters by
 * hand, so each is given here at every watering of three days' use: 0.6 to 0.7 L a plant and day under cover in August
 * (`moller-2004`), two litres together.
 */
const WITH_EVERY_WATERING = { everyDays: 3, litresPerPlant: 2 } as const;
const EVERY_WATERING_NOTE =
  "The trial fed with every watering. Water as much as the plants use: the litres here are those of a warm month under cover.";

const fromSetOut = { kind: "days-after", milestone: "set-out", days: 7 } as const;
const untilEnd = { kind: "days-after", milestone: "end", days: -7 } as const;

function steady(target: Stage["target"]["wanted"]): Stage[] {
  return [
    {
      id: "steady",
      name: "the same feed throughout",
      begins: fromSetOut,
      ends: untilEnd,
      target: { basis: "litre", per: "feed", wanted: target },
    },
  ];
}

/** Pots of 9 and 18 L: 6, 1 and 2.5 mmol/L yielded as much as half as much again. */
export const STEADY_IN_POTS: Programme = {
  id: "steady-in-pots",
  name: "one steady feed for pots",
  evidence: "trial",
  sources: ["xu-2001", "moller-2004"],
  notes: ["In pots of 9 and 18 litres this strength yielded as much as one half as strong again.", EVERY_WATERING_NOTE],
  ...WITH_EVERY_WATERING,
  stages: steady(ppm({ N: 84, P: 31, K: 98 })),
};

/** Soil, drip: full yield at 56.2 mg/L N; 102 and 158 mg/L only lost 400 and 800 kg/ha. */
export const STEADY_IN_SOIL: Programme = {
  id: "steady-in-soil",
  name: "one steady, weak feed for soil",
  evidence: "trial",
  sources: ["yasuor-2013", "moller-2004"],
  notes: [
    "In soil the whole yield was reached at 56 mg/L of nitrogen; stronger feeds only lost more of it.",
    "The trial speaks of nitrogen only: phosphorus and potassium come from the soil, or by a soil test. What else comes along depends on the product: choose one whose potassium and phosphorus suit the soil.",
    EVERY_WATERING_NOTE,
  ],
  ...WITH_EVERY_WATERING,
  stages: steady(ppm({ N: 56.2 })),
};

/** Rockwool: 60, 90 and 120 mg/L N by stage lost only little against 175; nitrogen through fruiting must not be cut. */
export const RISING_NITROGEN: Programme = {
  id: "rising-nitrogen",
  name: "nitrogen that rises with the fruit",
  evidence: "trial",
  sources: ["florida-rockwool-nitrogen", "xu-2001", "szeged-nitrogen-potassium", "moller-2004"],
  notes: [
    "In rockwool 120 mg/L of nitrogen was enough; 175 gave no more to sell and lost two and a half times more nitrate.",
    "It runs against the rule of thumb: nitrogen rises when the fruit sets.",
    "The trial speaks of nitrogen only: here phosphorus is that of a trial in pots, and potassium is 1.3 times the nitrogen, the best of a trial of ratios.",
    EVERY_WATERING_NOTE,
  ],
  ...WITH_EVERY_WATERING,
  stages: [
    {
      id: "leaf",
      name: "building the frame",
      begins: fromSetOut,
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 60, P: 31, K: 78 }) },
    },
    {
      id: "first-fruit",
      name: "first fruit",
      begins: { kind: "observed", milestone: "first-fruit-set" },
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 90, P: 31, K: 117 }) },
    },
    {
      id: "later-fruit",
      name: "picking",
      begins: { kind: "observed", milestone: "first-harvest" },
      ends: untilEnd,
      target: { basis: "litre", per: "feed", wanted: ppm({ N: 120, P: 31, K: 156 }) },
    },
  ],
};
