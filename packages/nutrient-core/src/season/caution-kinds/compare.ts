import type { CautionKind } from "../../outcome/caution.ts";

export const notCompared: CautionKind<{ readonly programme: string; readonly reason: string }> = {
  code: "programme-not-compared",
  severity: "note",
  source: "common-practice",
  sentence: ({ programme, reason }) => `"${programme}" is not among the programmes compared. ${reason}`,
};
