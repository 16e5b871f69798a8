import type { CautionKind } from "../../outcome/caution.ts";

export const notCompared: CautionKind<{ readonly programme: string; readonly reasons: readonly string[] }> = {
  code: "programme-not-compared",
  severity: "note",
  source: "common-practice",
  sentence: ({ programme, reasons }) => `"${programme}" is not among the programmes compared. ${reasons.join(" ")}`,
};
