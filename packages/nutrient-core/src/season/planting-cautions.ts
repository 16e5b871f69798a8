import { type Caution, raise } from "../outcome/caution.ts";
import { manureNearHarvest, ruleOfThumb } from "./caution-kinds/feed.ts";
import { milestoneImplied, milestoneNotRecorded, weatherGoesOn, weatherNotUsed } from "./caution-kinds/milestones.ts";
import { ofPlanting, ofPlantings } from "./caution-kinds/planting.ts";
import { nothingRecorded } from "./caution-kinds/record.ts";
import { type CivilDate, daysBetween } from "./civil-date.ts";
import type { MilestoneCalendar } from "./milestones.ts";
import type { Programme } from "./programme.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonEvent } from "./season-plan.ts";

/** What a planting's cautions are made from. */
export interface PlantingCase {
  readonly planting: Planting;
  readonly calendar: MilestoneCalendar;
  readonly events: readonly SeasonEvent[];
}

/** What to heed in the plantings; what is the same for several of them is said once. */
export function plantingCautions(
  cases: readonly PlantingCase[],
  input: SeasonInput,
  today: CivilDate | null,
): Caution[] {
  const lastRecorded = input.weather.at(-1)?.date;
  return [
    ...cases.flatMap(({ planting }) => thumb(planting)),
    ...milestones(cases, today),
    ...together(cases, ({ events }) => events.filter(({ status }) => status === "assumed").length).map(
      ([feeds, plantings]) => raise(nothingRecorded, { ...ofPlantings(plantings), feeds }),
    ),
    ...(lastRecorded === undefined ? [] : weather(cases, lastRecorded)),
    ...cases.flatMap((one) => manure(one, input)),
  ];
}

/** The plantings for which the same holds, by what holds; those for which nothing does (undefined or 0) are left out. */
function together<T extends string | number>(
  cases: readonly PlantingCase[],
  what: (one: PlantingCase) => T | undefined,
): [what: T, plantings: Planting[]][] {
  const groups = new Map<T, Planting[]>();
  for (const one of cases) {
    const found = what(one);
    if (!found) continue;
    const group = groups.get(found);
    if (group) group.push(one.planting);
    else groups.set(found, [one.planting]);
  }
  return [...groups];
}

function thumb({ programme }: Planting): Caution[] {
  if (!followsRuleOfThumb(programme)) return [];
  return [
    raise(ruleOfThumb, {
      programme: programme.name,
      sourcesAgainst: ["ndsu-high-phosphorus", "phosphorus-need-hortscience", "tamu-excess-phosphorus", "xu-2001"],
      sourcesFor: ["illinois-container-feeding", "purdue-geranium-phosphorus"],
    }),
  ];
}

/** What should have been seen by now and is not on record. */
function milestones(cases: readonly PlantingCase[], today: CivilDate | null): Caution[] {
  if (today === null) return [];
  return (["first-flower", "first-harvest"] as const).flatMap((name) => {
    const milestone = name.replace("-", " ");
    const overdue = together(cases, ({ calendar }) => {
      const date = calendar.dateOf(name);
      if (date?.basis === "implied" || date?.expected === undefined) return undefined;
      return date.expected.latest < today ? date.expected.latest : undefined;
    });
    const implied = together(cases, ({ calendar }) => {
      const date = calendar.dateOf(name);
      return date?.impliedBy && `${date.likely} ${date.impliedBy}`;
    });
    return [
      ...overdue.map(([latest, plantings]) =>
        raise(milestoneNotRecorded, { ...ofPlantings(plantings), milestone, latest }),
      ),
      ...implied.map(([key, plantings]) => {
        const [date = "", later = ""] = key.split(" ");
        return raise(milestoneImplied, {
          ...ofPlantings(plantings),
          milestone,
          later: later.replaceAll("-", " "),
          date: date as CivilDate,
        });
      }),
    ];
  });
}

/** How far the weather carries the prediction of the first flower. */
function weather(cases: readonly PlantingCase[], lastRecorded: CivilDate): Caution[] {
  const waiting = ({ calendar }: PlantingCase): CivilDate | undefined =>
    calendar.dateOf("first-flower")?.expected?.latest;
  const goesOn = together(cases, (one) =>
    one.calendar.weatherBasis() === "recent-days" && (waiting(one) ?? "") > lastRecorded ? "yes" : undefined,
  );
  const unused = together(cases, ({ calendar }) =>
    calendar.dateOf("first-flower")?.basis === "days" ? calendar.warmthMissing() : undefined,
  );
  return [
    ...goesOn.map(([, plantings]) => raise(weatherGoesOn, { ...ofPlantings(plantings), lastRecorded })),
    ...unused.map(([missing, plantings]) => raise(weatherNotUsed, { ...ofPlantings(plantings), missing })),
  ];
}

/** For crops that touch the soil; staked ones have 90, which the sentence says. */
const MANURE_DAYS = 120;

function manure({ planting, calendar, events }: PlantingCase, input: SeasonInput): Caution[] {
  const harvest = calendar.dateOf("first-harvest")?.earliest ?? planting.setOut;
  const carriers = new Map(
    input.shelf.filter(({ hazards }) => hazards.includes("pathogens")).map(({ id, name }) => [id, name]),
  );
  if (carriers.size === 0) return [];
  const near = events.flatMap(({ date, amounts }) => {
    const products = amounts.flatMap(({ product }) => carriers.get(product) ?? []);
    const days = daysBetween(date, harvest);
    return products.length > 0 && days < MANURE_DAYS ? [{ date, products, days: Math.max(0, days) }] : [];
  });
  const [first] = near;
  return first ? [raise(manureNearHarvest, { ...ofPlanting(planting), ...first, harvest })] : [];
}

/** Whether a later stage cuts nitrogen and raises phosphorus against the stage before it. */
export function followsRuleOfThumb({ stages }: Programme): boolean {
  return stages.some((stage, index) => {
    const before = stages[index - 1];
    if (!before || before.target.basis !== stage.target.basis) return false;
    const rate = (of: typeof stage, nutrient: "N" | "P"): number =>
      of.target.wanted.find((wanted) => wanted.nutrient === nutrient)?.rate ?? 0;
    return rate(stage, "N") < rate(before, "N") && rate(stage, "P") > rate(before, "P");
  });
}
