import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { term } from "../../outcome/working.ts";
import { bedVolume, moundedBedVolume } from "../shape/bed.ts";
import { depthFromReadings, evenDepth, meanDepth } from "../shape/depth.ts";
import { type Measure, metres } from "../shape/measure.ts";
import type { Mound } from "../shape/mound.ts";
import { lShapedPlan, type Plan, rectangularPlan, roundPlan, trapezoidPlan } from "../shape/plan.ts";
import { containerSection, type Section } from "../shape/section.ts";
import { plantCount } from "../shape/spacing.ts";
import { type Clauses, type Kept, layerNotes, type MoundClause } from "./clauses.ts";
import type { Fill } from "./fill.ts";
import { moundFromClause } from "./mound-from-clause.ts";
import { clauseUnusable, sizesConflict, sizesUnusable } from "./problems.ts";
import type { FillReading } from "./read-fill.ts";

export type BedShape = "rectangle" | "round" | "L" | "trapezoid";

interface ShapeWords {
  /** How many sizes make the plan. */
  readonly planSizes: readonly number[];
  readonly name: string;
  readonly sizes: string;
  readonly example: string;
}

const WORDS: Readonly<Record<BedShape, ShapeWords>> = {
  rectangle: { planSizes: [2], name: "bed", sizes: "two sides and a depth", example: "bed 1.2 m x 2.4 m x 30 cm" },
  round: { planSizes: [1], name: "round bed", sizes: "a diameter and a depth", example: "round 60 cm x 45 cm" },
  L: {
    planSizes: [3, 4],
    name: "L-bed",
    sizes: "two outer sides, the leg width (or both widths) and a depth",
    example: "L-bed 2 m x 3 m x 80 cm x 30 cm",
  },
  trapezoid: {
    planSizes: [3],
    name: "trapezoid bed",
    sizes: "two parallel sides, the distance between them and a depth",
    example: "trapezoid 2 m x 1.4 m x 3 m x 30 cm",
  },
};

/** A bed from its sizes in metres and its clauses. */
export function bedFill(
  { text, written, count, lengths }: FillReading,
  shape: BedShape,
  clauses: Clauses,
): Outcome<Fill> {
  const words = WORDS[shape];
  // Readings of the depth stand in place of the one depth.
  const planSizes = clauses.depths ? lengths.length : lengths.length - 1;
  if (!words.planSizes.includes(planSizes)) {
    const expected = clauses.depths
      ? words.sizes.replace(/ and a depth$/, "; the depth comes from the readings")
      : words.sizes;
    return unusable(sizesUnusable(text, lengths.length, expected, words.example));
  }
  if (clauses.plantsEach !== undefined) {
    return unusable(
      clauseUnusable(text, "A bed's plants need a distance.", 'write "plants 45 cm" or "rows 60 cm x 40 cm"'),
    );
  }
  const plan = planOf(shape, lengths);
  if (!plan) {
    return unusable(
      sizesConflict(
        text,
        "A leg of the L is as wide as the whole bed.",
        "each leg must be narrower than the other side",
      ),
    );
  }
  const full = depthOf(plan, lengths, clauses);
  const depth = withoutLayers(full, clauses, text);
  if (!depth.ok) return depth;
  const mound = clauses.mound && moundOf(clauses.mound, plan, lengths, text);
  if (mound && !mound.ok) return mound;
  const volume = mound ? moundedBedVolume(plan, depth.value, mound.value) : bedVolume(plan, depth.value);
  const size = `${lengths.slice(0, planSizes).map(metres).join(" x ")} x ${metres(Number(depth.value.value.toPrecision(4)))}`;
  return answer({
    written,
    label: `${words.name} ${size}${mound ? `, mound ${metres(mound.value.heightMetres)} (${mound.value.profile})` : ""}`,
    kind: "bed",
    count,
    volume,
    area: plan.area,
    heightMetres: volume.value / 1000 / plan.area.value,
    section: sectionOf(widthAcross(shape, plan, lengths), full.value, clauses, mound?.value),
    ...(clauses.spacing ? { plants: plantCount(plan, clauses.spacing) } : {}),
    ...layerNotes(clauses),
  });
}

function planOf(shape: BedShape, lengths: readonly number[]): Plan | undefined {
  const [a, b, c, d] = lengths as [number, number, number, number];
  switch (shape) {
    case "rectangle":
      return rectangularPlan(a, b);
    case "round":
      return roundPlan(a);
    case "trapezoid":
      return trapezoidPlan(a, b, c);
    case "L": {
      // Outer sides, one leg width for both or one each; the last size is the depth (or none with readings).
      const widthB = lengths.length === 5 ? d : c;
      return c < b && widthB < a ? lShapedPlan(a, b, c, widthB) : undefined;
    }
  }
}

/** The width that a cut across shows: of a trapezoid the mean one, of an L the one of its first leg. */
function widthAcross(shape: BedShape, plan: Plan, lengths: readonly number[]): number {
  if (plan.sides) return plan.sides.widthMetres;
  if (shape === "trapezoid") return (lengths[0]! + lengths[1]!) / 2;
  return shape === "L" ? lengths[2]! : lengths[0]!;
}

function sectionOf(width: number, depth: number, { layers, headspace }: Clauses, mound: Mound | undefined): Section {
  const thickness = (kept: Kept): number => ("metres" in kept ? kept.metres : kept.share * depth);
  const from = layers.reduce((sum, layer) => sum + thickness(layer), 0);
  return containerSection(width, width, depth, from, depth - (headspace ? thickness(headspace) : 0), mound);
}

function depthOf(plan: Plan, lengths: readonly number[], { depths }: Clauses): Measure {
  if (!depths) return evenDepth(lengths.at(-1)!);
  return plan.sides ? depthFromReadings(depths) : meanDepth(depths.flat());
}

function withoutLayers(full: Measure, { headspace, layers }: Clauses, text: string): Outcome<Measure> {
  let depth = full;
  for (const kept of [...layers, ...(headspace ? [headspace] : [])]) {
    depth =
      "metres" in kept
        ? { value: depth.value - kept.metres, expression: `(${depth.expression} - ${metres(kept.metres)})` }
        : {
            value: depth.value - kept.share * full.value,
            expression: `(${depth.expression} - ${term(kept.share)} * ${full.expression})`,
          };
  }
  return depth.value > 0
    ? answer(depth)
    : unusable(
        sizesConflict(text, "Layers and headspace leave no room for the mix.", "make them thinner or the bed deeper"),
      );
}

function moundOf(clause: MoundClause, plan: Plan, lengths: readonly number[], text: string): Outcome<Mound> {
  if (clause.heightMetres === 0) {
    return unusable(clauseUnusable(text, "An outline needs the height of a mound.", 'write "mound 10 cm triangle"'));
  }
  const width = plan.sides?.widthMetres ?? (plan.isRound ? lengths[0] : undefined);
  return moundFromClause(clause, width, text);
}
