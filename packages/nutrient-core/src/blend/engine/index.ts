export { type CertificateReport, checkCertificate } from "./certificate.ts";
export type { BlendAim, BlendProblem, Direction, LinearLimit, NutrientTarget } from "./problem.ts";
export type {
  AimProof,
  BindingLimit,
  BlendSolution,
  Certificate,
  Choice,
  ChoiceSearch,
  ContradictionProof,
  ReachedBlend,
  UnreachableBlend,
} from "./solution.ts";
export { solveBlend } from "./solve.ts";
