import { type CivilDate, daysBetween } from "./civil-date.ts";
import { times } from "./events.ts";
import type { FedEntry } from "./log.ts";
import type { SeasonEvent } from "./season-plan.ts";

/**
 * Which feeds of the plan does a feed given on this day stand for? Those nearest to the day that are not recorded yet,
 * at most one for each planting, and the earlier one of two as near: plantings due on one day are fed together.
 *
 * @param events Of a plan.
 * @param date The day it was given.
 * @param planting One planting only, where it is named.
 */
export function feedsMeant(events: readonly SeasonEvent[], date: CivilDate, planting?: string): readonly SeasonEvent[] {
  const open = events.filter(
    (event) => event.status !== "given" && (planting === undefined || event.planting === planting),
  );
  const nearest = Math.min(...open.map((event) => daysOff(event, date)));
  const meant = new Map<string, SeasonEvent>();
  for (const event of open) {
    if (daysOff(event, date) === nearest && !meant.has(event.planting)) meant.set(event.planting, event);
  }
  return [...meant.values()];
}

/** A feed that is overdue may have been given when it was due, or at any time since. */
function daysOff({ date, dueSince }: SeasonEvent, given: CivilDate): number {
  const days = (planned: CivilDate): number => Math.abs(daysBetween(planned, given));
  return Math.min(days(date), days(dueSince ?? date));
}

/**
 * The record's entry for a feed given as it was planned, in more or fewer cans where a number is given.
 *
 * @param cans Cans given, above 0; the planned number where left out.
 */
export function givenAsPlanned(event: SeasonEvent, date: CivilDate, cans: number = event.cans): Omit<FedEntry, "id"> {
  const share = event.cans === 0 ? 0 : cans / event.cans;
  return {
    kind: "fed",
    date,
    planting: event.planting,
    cans,
    canLitres: event.canLitres,
    amounts: event.amounts.map(({ product, perCanGrams }) => ({ product, massGrams: perCanGrams * cans })),
    nutrientGrams: times(event.nutrientGrams, share),
  };
}
