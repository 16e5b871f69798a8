import type { WorkingLine } from "../outcome/working.ts";
import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import { type Expectation, MILESTONES, type Milestone } from "./crop.ts";
import { degreeDays, type Thresholds } from "./degree-days.ts";
import type { ObservedEntry } from "./log.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { DateRange, MilestoneDate } from "./season-plan.ts";
import { type Indoors, type WarmthScenario, warmthScenarios } from "./warmth.ts";
import { type WarmthRange, warmthRange } from "./warmth-range.ts";

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

/** The warmth of the house in which seedlings stand, or days in the weather record. */
export type WarmthMissing = "house" | "days";

/** A milestone that was seen, on its day. */
export type Sighting = Pick<ObservedEntry, "milestone" | "date">;

/** What the plants have around them. */
export interface Surroundings {
  readonly raisedAtCelsius?: number;
  /** The ways the weather may go, in degree days between these thresholds; none where no weather is known. */
  readonly weather: (thresholds: Thresholds) => readonly WarmthScenario[];
}

/** Keeps the scenarios of each pair of thresholds: many plantings share them. */
export function surroundingsOf(input: Pick<SeasonInput, "weather" | "raisedAtCelsius">): Surroundings {
  const known = new Map<string, readonly WarmthScenario[]>();
  return {
    ...(input.raisedAtCelsius === undefined ? {} : { raisedAtCelsius: input.raisedAtCelsius }),
    weather: (thresholds) => {
      const key = `${thresholds.lowerCelsius}/${thresholds.upperCelsius}`;
      if (!known.has(key)) known.set(key, warmthScenarios(input.weather, thresholds));
      return known.get(key)!;
    },
  };
}

/**
 * When a planting's milestones are to be expected, or were seen.
 *
 * An observed date goes before everything else. What is not yet seen by `today` lies ahead of it, whatever a figure
 * said, unless what comes after it was seen: where fruit is picked, the flower has been.
 */
export function milestoneCalendar(
  { raisedAtCelsius, weather }: Surroundings,
  planting: Planting,
  observed: readonly Sighting[],
  today: CivilDate | null,
): MilestoneCalendar {
  const found = new Map<Milestone, MilestoneDate | undefined>();
  const thresholds = planting.facts.thresholds;
  const scenarios = thresholds ? weather(thresholds) : [];
  const workings = new Map<Milestone, () => WorkingLine>();
  let used = false;
  let missing: WarmthMissing | undefined;

  const given = (milestone: Milestone): CivilDate | undefined =>
    milestone === "sown"
      ? planting.sown
      : milestone === "set-out"
        ? planting.setOut
        : milestone === "end"
          ? planting.end
          : undefined;

  const dateOf = (milestone: Milestone): MilestoneDate | undefined => {
    if (!found.has(milestone)) {
      // Guards against an expectation that leads back to itself.
      found.set(milestone, undefined);
      found.set(milestone, workOut(milestone));
    }
    return found.get(milestone);
  };

  const workOut = (milestone: Milestone): MilestoneDate | undefined => {
    const seen = observed.filter((entry) => entry.milestone === milestone).map(({ date }) => date);
    // The first sighting counts: later lines repeat it.
    const first = [...seen].sort()[0];
    const exact = (date: CivilDate, basis: "given" | "observed"): MilestoneDate => {
      return { planting: planting.name, milestone, earliest: date, likely: date, latest: date, basis, source: null };
    };
    if (first) return exact(first, "observed");
    const own = given(milestone);
    if (own) return exact(own, "given");
    for (const expectation of planting.facts.expected[milestone] ?? []) {
      const predicted = expect(expectation);
      if (!predicted) continue;
      const { working, ...range } = predicted;
      if (working) {
        const label = `${planting.name}: degree days to the likely ${milestone.replace("-", " ")}`;
        workings.set(milestone, () => working(label, expectation.source));
      }
      const sighted = seenLater(milestone);
      if (sighted) {
        const { earliest, likely, latest } = notAfter(range, sighted.date);
        const by = { basis: "implied", impliedBy: sighted.milestone, source: expectation.source } as const;
        return { planting: planting.name, milestone, earliest, likely, latest, expected: range, ...by };
      }
      const basis = expectation.unit;
      return {
        planting: planting.name,
        milestone,
        ...notBefore(range, today),
        expected: range,
        basis,
        source: expectation.source,
      };
    }
    return undefined;
  };

  /** The first sighting of what comes after this milestone. */
  const seenLater = (milestone: Milestone): Sighting | undefined =>
    observed
      .filter(
        (entry) => MILESTONES.indexOf(entry.milestone) > MILESTONES.indexOf(milestone) && entry.milestone !== "end",
      )
      .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))[0];

  const expect = ({ after, unit, amounts }: Expectation): (DateRange & Partial<WarmthRange>) | undefined => {
    const from = dateOf(after);
    if (!from) return undefined;
    if (unit === "degree-days") return warmth(after, amounts);
    const [least, likely, most] = amounts;
    const later = (date: CivilDate, days: number): CivilDate => dateOfDay(dayNumber(date) + Math.round(days));
    return {
      earliest: later(from.earliest, least),
      likely: later(from.likely, likely),
      latest: later(from.latest, most),
    };
  };

  const warmth = (after: Milestone, amounts: readonly [number, number, number]): WarmthRange | undefined => {
    const from = dateOf(after);
    if (!from || scenarios.length === 0) return undefined;
    const indoors = underCover(after);
    if (indoors === "unknown") {
      missing = "house";
      return undefined;
    }
    const range = warmthRange(scenarios, from, amounts, indoors);
    if (range) used = true;
    else missing = "days";
    return range;
  };

  /** Seedlings raised under cover gather the warmth of the house; where that is not known nothing can be reckoned. */
  const underCover = (after: Milestone): Indoors | undefined | "unknown" => {
    const setOut = dateOf("set-out")!.likely;
    if (after !== "sown" || !planting.sown || planting.sown >= setOut) return undefined;
    if (raisedAtCelsius === undefined) return "unknown";
    return { warmth: degreeDays(raisedAtCelsius, raisedAtCelsius, thresholds!), until: dayNumber(setOut) };
  };

  return {
    dateOf,
    warmthAfter: (milestone, amount) => {
      const range = warmth(milestone, [amount, amount, amount]);
      return range && { earliest: range.earliest, likely: range.likely, latest: range.latest };
    },
    workings: () => [...workings.values()].map((line) => line()),
    weatherBasis: () => (used ? scenarios[0]?.basis : undefined),
    warmthMissing: () => missing,
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
