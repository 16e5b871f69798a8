import {
  type CivilDate,
  METRIC_SPOONS,
  type SeasonAmount,
  type SeasonEvent,
  spoonsFor,
  type UnitHabit,
  US_SPOONS,
} from "nutrient-core";
import { mass, water, weighed } from "./number.ts";
import { NAMED } from "./season-labels.ts";
import { shortSpoons } from "./spoons.ts";

/** "2 cans" */
export function cansText(cans: number): string {
  return `${cans} ${cans === 1 ? "can" : "cans"}`;
}

/** What goes into one can of one product: "8 g", and in spoons where its density is known. */
export interface CanDose {
  readonly name: string;
  readonly weight: string;
  readonly spoons?: string;
}

/** One can's doses as people measure them. */
export function canDoses(amounts: readonly SeasonAmount[], habit: UnitHabit): readonly CanDose[] {
  return amounts.map(({ name, perCanGrams, perCanMillilitres }) => {
    const set = habit === "us" ? US_SPOONS : METRIC_SPOONS;
    const spoons = perCanMillilitres === undefined ? undefined : spoonsFor(perCanMillilitres, set);
    return { name, weight: weighed(perCanGrams, habit), ...(spoons ? { spoons: shortSpoons(spoons) } : {}) };
  });
}

/** Feeds of one day with the same in each can, whatever planting they are for: mixed in one go. */
export interface FeedTogether {
  readonly date: CivilDate;
  readonly events: readonly [SeasonEvent, ...SeasonEvent[]];
  readonly provisional: boolean;
}

/** Names what goes into a can: feeds with the same name are mixed alike. */
export function canContent({ canLitres, amounts }: SeasonEvent): string {
  return JSON.stringify([canLitres, amounts.map(({ product, perCanGrams }) => [product, perCanGrams])]);
}

/** Feeds by day, those mixed alike and equally done together; the order of the first of each is kept. */
export function feedsTogether(events: readonly SeasonEvent[]): readonly FeedTogether[] {
  const groups = new Map<string, [SeasonEvent, ...SeasonEvent[]]>();
  for (const event of events) {
    const key = `${event.date} ${event.dueSince} ${event.status} ${canContent(event)}`;
    const group = groups.get(key);
    if (group) group.push(event);
    else groups.set(key, [event]);
  }
  return [...groups.values()].map((group) => ({
    date: group[0].date,
    events: group,
    provisional: group.some(({ provisional }) => provisional),
  }));
}

/** "2 cans for pots, 4 cans for beds" */
export function forWhom({ events }: FeedTogether): string {
  return events.map(({ cans, planting }) => `${cansText(cans)} for ${planting}`).join(", ");
}

/** The same at a glance: of very many plantings the first ones, and the cans of all. */
function forWhomInShort(feed: FeedTogether): string {
  const { events } = feed;
  if (events.length <= NAMED) return forWhom(feed);
  const all = events.reduce((cans, event) => cans + event.cans, 0);
  const first = forWhom({ ...feed, events: [events[0], ...events.slice(1, NAMED - 1)] });
  return `${first} and so on for ${events.length - NAMED + 1} more, ${cansText(all)} together`;
}

/**
 * "2 cans for pots, 4 cans for beds, each 10 L with 8 g leafy feed (1 1/2 tsp) + 2 g potassium nitrate"
 *
 * @param whole Names every planting.
 */
export function feedText(feed: FeedTogether, habit: UnitHabit, whole: boolean): string {
  const [first] = feed.events;
  const whom = whole ? forWhom(feed) : forWhomInShort(feed);
  return `${whom}, each ${water(first.canLitres, habit)} with ${dosesText(first, habit)}`;
}

/** "8 g leafy feed (1 1/2 tsp) + 2 g potassium nitrate in each can of 10 L" */
export function canText(event: SeasonEvent, habit: UnitHabit): string {
  return `${dosesText(event, habit)} in each can of ${water(event.canLitres, habit)}`;
}

function dosesText({ amounts }: SeasonEvent, habit: UnitHabit): string {
  const doses = canDoses(amounts, habit).map(
    ({ name, weight, spoons }) => `${weight} ${name}${spoons ? ` (${spoons})` : ""}`,
  );
  return doses.length === 0 ? "water alone" : doses.join(" + ");
}

/** A mass, or "none". */
export function massOrNone(grams: number, habit: UnitHabit): string {
  return grams === 0 ? "none" : mass(grams, habit);
}
