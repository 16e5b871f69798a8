import type { BlendProblem } from "../problem.ts";

/** Two salts short of potassium: a ceiling on all salts binds. Per litre; all salts together at most 1 g. */
export const SHORT: BlendProblem = {
  supply: [
    [130, 155, 0],
    [370, 0, 450],
  ],
  targets: [{ wanted: 150 }, { wanted: 400, bandBelow: 20, bandAbove: 20 }],
  ceilings: [{ coefficients: [1, 1, 1], limit: 1 }],
  prices: [0.004, 0.002, 0.003],
};
