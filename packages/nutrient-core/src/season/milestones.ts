import type { WorkingLine } from "../outcome/working.ts";
import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import { type Expectation, MILESTONES, type Milestone } from "./crop.ts";
import type { ObservedEntry } from "./log.ts";
import type { Planting } from "./season.ts";
import type { DateRange, MilestoneDate } from "./season-plan.ts";
import type { Surroundings } from "./surroundings.ts";
import type { WarmthScenario } from "./warmth.ts";
import { type WarmthMissing, warmthAhead } from "./warmth-ahead.ts";
import type { WarmthRange } from "./warmth-range.ts";

/** The dates of a planting's milestones, given, observed or predicted, each worked out when it is first asked for. */
export interface MilestoneCalendar {
  readonly dateOf: (milestone: Milestone) => MilestoneDate | undefined;
  /** So many degree days after a milestone; undefined where no weather or no threshold is known. */
  readonly warmthAfter: (milestone: Milestone, amount: number) => DateRange | undefined;
  /** The warmth behind each prediction that was made, day by day. */
  readonly workings: () => readonly WorkingLine[];
  /** Which weather the predictions rest on; undefined where none was used. */
  readonly weatherBasis: () => WarmthScenario["basis"] | undefined;
  /** Why a prediction by warmth failed although there is weather; undefined where none did. */
  readonly warmthMissing: () => WarmthMissing | undefined;
}

/** A milestone that was seen, on its day. */
export type Sighting = Pick<ObservedEntry, "milestone" | "date">;

/**
 * When a planting's milestones are to be expected, or were seen.
 *
 * An observed date goes before everything else. What is not yet seen by `today` lies ahead of it, whatever a figure
 * said, unless what comes after it was seen: where fruit is picked, the flower has been.
 */
export function milestoneCalendar(
  surroundings: Surroundings,
  planting: Planting,
  observed: readonly Sighting[],
  today: CivilDate | null,
): MilestoneCalendar {
  const found = new Map<Milestone, MilestoneDate | undefined>();
  const workings = new Map<Milestone, () => WorkingLine>();
  const warmth = warmthAhead(surroundings, planting, () => dateOf("set-out")!.likely);
  // In order of date: the first sighting counts, later lines repeat it.
  const sightings = [...observed].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const given: Partial<Record<Milestone, CivilDate | undefined>> = {
    sown: planting.sown,
    "set-out": planting.setOut,
    end: planting.end,
  };

  const dateOf = (milestone: Milestone): MilestoneDate | undefined => {
    if (!found.has(milestone)) {
      // Guards against an expectation that leads back to itself.
      found.set(milestone, undefined);
      found.set(milestone, workOut(milestone));
    }
    return found.get(milestone);
  };

  const workOut = (milestone: Milestone): MilestoneDate | undefined => {
    const exact = (date: CivilDate, basis: "given" | "observed"): MilestoneDate => {
      return { planting: planting.name, milestone, earliest: date, likely: date, latest: date, basis, source: null };
    };
    const seen = sightings.find((entry) => entry.milestone === milestone);
    if (seen) return exact(seen.date, "observed");
    const own = given[milestone];
    return own ? exact(own, "given") : predicted(milestone);
  };

  /** By the first of its expectations that can be reckoned. */
  const predicted = (milestone: Milestone): MilestoneDate | undefined => {
    for (const expectation of planting.facts.expected[milestone] ?? []) {
      const reckoned = reckon(expectation);
      if (!reckoned) continue;
      const { working, ...range } = reckoned;
      const { source, unit } = expectation;
      if (working) {
        const label = `${planting.name}: degree days to the likely ${milestone.replace("-", " ")}`;
        workings.set(milestone, () => working(label, source));
      }
      const known = { planting: planting.name, milestone, expected: range, source };
      const later = seenLater(milestone);
      return later
        ? { ...known, ...notAfter(range, later.date), basis: "implied", impliedBy: later.milestone }
        : { ...known, ...notBefore(range, today), basis: unit };
    }
    return undefined;
  };

  /** The first sighting of what comes after this milestone. */
  const seenLater = (milestone: Milestone): Sighting | undefined =>
    sightings.find(
      (entry) => MILESTONES.indexOf(entry.milestone) > MILESTONES.indexOf(milestone) && entry.milestone !== "end",
    );

  const reckon = ({ after, unit, amounts }: Expectation): (DateRange & Partial<WarmthRange>) | undefined => {
    const from = dateOf(after);
    if (!from) return undefined;
    if (unit === "degree-days") return warmth.after(after, from, amounts);
    const [least, likely, most] = amounts;
    const later = (date: CivilDate, days: number): CivilDate => dateOfDay(dayNumber(date) + Math.round(days));
    return {
      earliest: later(from.earliest, least),
      likely: later(from.likely, likely),
      latest: later(from.latest, most),
    };
  };

  return {
    dateOf,
    warmthAfter: (milestone, amount) => {
      const from = dateOf(milestone);
      const range = from && warmth.after(milestone, from, [amount, amount, amount]);
      return range && { earliest: range.earliest, likely: range.likely, latest: range.latest };
    },
    workings: () => [...workings.values()].map((line) => line()),
    weatherBasis: warmth.basis,
    warmthMissing: warmth.missing,
  };
}

/** A prediction that has not come true by today lies ahead. */
function notBefore(range: DateRange, today: CivilDate | null): DateRange {
  if (today === null) return range;
  const ahead = (date: CivilDate): CivilDate => (date < today ? today : date);
  return { earliest: ahead(range.earliest), likely: ahead(range.likely), latest: ahead(range.latest) };
}

/** What comes after it was seen on this day, so it was no later. */
function notAfter(range: DateRange, seen: CivilDate): DateRange {
  const before = (date: CivilDate): CivilDate => (date > seen ? seen : date);
  return { earliest: before(range.earliest), likely: before(range.likely), latest: before(range.latest) };
}
