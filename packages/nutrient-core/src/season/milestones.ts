import { type CivilDate, dateOfDay, dayNumber } from "./civil-date.ts";
import type { Expectation, Milestone } from "./crop.ts";
import { degreeDays, type Thresholds } from "./degree-days.ts";
import type { ObservedEntry } from "./log.ts";
import type { DateRange, MilestoneDate, Planting, SeasonInput } from "./season.ts";
import { dayOfWarmth, type WarmthScenario, warmthScenarios } from "./warmth.ts";

/** The dates of a planting's milestones, given, observed or predicted, each worked out when it is first asked for. */
export interface MilestoneCalendar {
  readonly dateOf: (milestone: Milestone) => MilestoneDate | undefined;
  /** So many degree days after a milestone; undefined where no weather or no threshold is known. */
  readonly warmthAfter: (milestone: Milestone, amount: number) => DateRange | undefined;
  /** Which weather the predictions rest on; undefined where none was used. */
  readonly weatherBasis: () => WarmthScenario["basis"] | undefined;
}

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
 * An observed date goes before everything else. What is not yet seen by `today` lies ahead of it, whatever a figure said.
 */
export function milestoneCalendar(
  { raisedAtCelsius, weather }: Surroundings,
  planting: Planting,
  observed: readonly ObservedEntry[],
  today: CivilDate | null,
): MilestoneCalendar {
  const found = new Map<Milestone, MilestoneDate | undefined>();
  const thresholds = planting.facts.thresholds;
  const scenarios = thresholds ? weather(thresholds) : [];
  let used = false;

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
      const range = expect(expectation);
      if (!range) continue;
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

  const expect = ({ after, unit, amounts: [least, likely, most] }: Expectation): DateRange | undefined => {
    const from = dateOf(after);
    if (!from) return undefined;
    if (unit === "degree-days") return warmth(after, [least, likely, most]);
    const later = (date: CivilDate, days: number): CivilDate => dateOfDay(dayNumber(date) + Math.round(days));
    return {
      earliest: later(from.earliest, least),
      likely: later(from.likely, likely),
      latest: later(from.latest, most),
    };
  };

  const warmth = (
    after: Milestone,
    [least, likely, most]: readonly [number, number, number],
  ): DateRange | undefined => {
    const from = dateOf(after);
    if (!from || scenarios.length === 0) return undefined;
    const indoors = underCover(after);
    if (indoors === "unknown") return undefined;
    const days = (start: CivilDate, amount: number): number[] | undefined => {
      const reached = scenarios.map((scenario) => dayOfWarmth(scenario, dayNumber(start), amount, indoors));
      const known = reached.filter((day) => day !== undefined);
      return known.length === 0 ? undefined : known.sort((a, b) => a - b);
    };
    const [early, middle, late] = [days(from.earliest, least), days(from.likely, likely), days(from.latest, most)];
    if (!early || !middle || !late) return undefined;
    used = true;
    return {
      earliest: dateOfDay(early[0]!),
      likely: dateOfDay(middle[Math.floor((middle.length - 1) / 2)]!),
      latest: dateOfDay(late.at(-1)!),
    };
  };

  /** Seedlings raised under cover gather the warmth of the house; where that is not known nothing can be reckoned. */
  const underCover = (after: Milestone): { warmth: number; until: number } | undefined | "unknown" => {
    if (after !== "sown" || !planting.sown || planting.sown >= planting.setOut) return undefined;
    if (raisedAtCelsius === undefined) return "unknown";
    return { warmth: degreeDays(raisedAtCelsius, raisedAtCelsius, thresholds!), until: dayNumber(planting.setOut) };
  };

  return {
    dateOf,
    warmthAfter: (milestone, amount) => {
      const range = warmth(milestone, [amount, amount, amount]);
      return range && notBefore(range, null);
    },
    weatherBasis: () => (used ? scenarios[0]?.basis : undefined),
  };
}

/** A prediction that has not come true by today lies ahead. */
function notBefore(range: DateRange, today: CivilDate | null): DateRange {
  if (today === null) return range;
  const ahead = (date: CivilDate): CivilDate => (date < today ? today : date);
  return { earliest: ahead(range.earliest), likely: ahead(range.likely), latest: ahead(range.latest) };
}
