import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { metres } from "../shape/measure.ts";
import { rectangularPlan } from "../shape/plan.ts";
import { ridgeVolume } from "../shape/ridge.ts";
import { ridgeSection } from "../shape/section.ts";
import { plantCount } from "../shape/spacing.ts";
import type { Clauses } from "./clauses.ts";
import type { Fill } from "./fill.ts";
import { moundFromClause } from "./mound-from-clause.ts";
import { clauseUnusable, sizesUnusable } from "./problems.ts";
import type { FillReading } from "./read-fill.ts";

/** A free-standing ridge: base width, height and length in metres. */
export function ridgeFill({ text, written, count, lengths }: FillReading, clauses: Clauses): Outcome<Fill> {
  const [base, height, length] = lengths as [number, number, number];
  if (lengths.length !== 3) {
    return unusable(
      sizesUnusable(text, lengths.length, "a base width, a height and a length", "ridge 60 cm x 20 cm x 5 m"),
    );
  }
  if (
    clauses.depths ||
    clauses.headspace ||
    clauses.layers.length > 0 ||
    clauses.plantsEach !== undefined ||
    (clauses.mound?.heightMetres ?? 0) > 0
  ) {
    return unusable(
      clauseUnusable(
        text,
        "A ridge takes an outline and a spacing, nothing else.",
        'write "ridge 60 cm x 20 cm x 5 m triangle"',
      ),
    );
  }
  const mound = moundFromClause({ ...clauses.mound, heightMetres: height }, base, text);
  if (!mound.ok) return mound;
  const plan = rectangularPlan(base, length);
  return answer({
    written,
    label: `ridge ${lengths.map(metres).join(" x ")} (${mound.value.profile})`,
    kind: "ridge",
    count,
    volume: ridgeVolume(base, length, mound.value),
    area: plan.area,
    section: ridgeSection(base, mound.value),
    ...(clauses.spacing ? { plants: plantCount(plan, clauses.spacing) } : {}),
  });
}
