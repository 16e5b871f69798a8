import type { Basis } from "../supply/basis.ts";
import type { Wanted } from "../supply/target.ts";
import type { CivilDate } from "./civil-date.ts";
import type { Milestone } from "./crop.ts";

/** When a stage begins or ends. */
export type Condition =
  | { readonly kind: "date"; readonly date: CivilDate }
  /** So many days after a milestone; 0 for the day itself. */
  | { readonly kind: "days-after"; readonly milestone: Milestone; readonly days: number }
  /** So many degree days (°C, the crop's thresholds) after a milestone. */
  | { readonly kind: "degree-days-after"; readonly milestone: Milestone; readonly degreeDays: number }
  /** When it is seen; until then on the predicted day. */
  | { readonly kind: "observed"; readonly milestone: Milestone };

/** What a stage's feeds are to bring. */
export interface StageTarget {
  /** `litre`: mg per litre of feed. `plant`: grams per plant. `squareMetre`: grams per square metre. */
  readonly basis: Extract<Basis, "litre" | "squareMetre"> | "plant";
  readonly wanted: readonly Wanted[];
  /** Each feed brings this much, or all feeds of the stage together do. */
  readonly per: "feed" | "stage";
}

export interface Stage {
  /** Short, kebab-case, unique in its programme. */
  readonly id: string;
  readonly name: string;
  readonly begins: Condition;
  /** Where left out, the next stage's beginning ends it. */
  readonly ends?: Condition;
  readonly target: StageTarget;
  /** Days from one feed to the next; the programme's where left out. */
  readonly everyDays?: number;
  /** Litres of feed for each plant; the programme's where left out. */
  readonly litresPerPlant?: number;
  /** Ids of the products to feed with; where left out, the season's. */
  readonly products?: readonly string[];
}

/** What a programme rests on. */
export type Evidence = "common-practice" | "trial" | "published-advice" | "own";

/** Stages of feeding over a season, as data. */
export interface Programme {
  readonly id: string;
  readonly name: string;
  readonly evidence: Evidence;
  /** Ids of sources; `common-practice` where there is none. */
  readonly sources: readonly string[];
  /** What to know before following it, one plain sentence each. */
  readonly notes: readonly string[];
  readonly everyDays: number;
  readonly litresPerPlant: number;
  readonly stages: readonly Stage[];
}
