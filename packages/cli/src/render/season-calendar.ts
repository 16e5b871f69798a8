import ical, { type ICalCalendar, ICalEventStatus, ICalEventTransparency } from "ical-generator";
import { addDays, type CivilDate, dayNumber, type SeasonInput, type SeasonPlan, type UnitHabit } from "nutrient-core";
import { deliveredLine } from "./delivered.ts";
import type { CalendarEntry } from "./season-calendar-earlier.ts";
import { asInstant, dayText } from "./season-day.ts";
import { cansText, canText } from "./season-feed.ts";

/** Besides the plan, what makes one export of a calendar follow another. */
export interface CalendarEdition {
  /** When it is written. */
  readonly stamp: Date;
  /** Grows with each edition: programs keep the entry with the higher number. */
  readonly sequence: number;
  /** Entries of the file that is replaced: those no longer planned are called off, since leaving one out removes nothing. */
  readonly earlier: readonly CalendarEntry[];
}

/** Days are counted from here, so that the numbers stay small. */
const FIRST_EDITION = "2020-01-01" as CivilDate;

/** An edition's number: it grows with the days, and within a day with each recorded line. */
export function editionNumber(today: CivilDate, recordedLines: number): number {
  return Math.max(0, dayNumber(today) - dayNumber(FIRST_EDITION)) + recordedLines;
}

/** The feeds and reminders as a calendar file (RFC 5545): all-day entries whose names stay the same when the plan moves. */
export function seasonCalendar(
  input: SeasonInput,
  plan: SeasonPlan,
  edition: CalendarEdition,
  habit: UnitHabit,
): string {
  const calendar = ical({ name: input.name, prodId: "//trug//season//EN" });
  const suffix = seasonId(input);
  const written = new Set<string>();
  const add = (id: string, from: CivilDate, to: CivilDate, summary: string, description: string): void => {
    const uid = `${encodeURIComponent(id)}.${suffix}`;
    written.add(uid);
    addAllDay(calendar, { uid, from, to, summary }, edition).description(description);
  };
  for (const event of plan.events) {
    const given = event.status === "given" ? "Fed" : "Feed";
    const unsure = event.provisional ? " (may still change)" : "";
    add(
      event.id,
      event.date,
      event.date,
      `${given} ${event.planting}: ${cansText(event.cans)}, ${event.stageName}${unsure}`,
      [canText(event, habit), deliveredLine(event.deliveredPpm, "ppm"), ...event.explanation].join("\n"),
    );
  }
  for (const { id, from, to, planting, text, everyDays } of plan.reminders) {
    const summary = `${planting}: ${text.split(/[:;]|\.$/)[0]!.trim()}`;
    // What goes on for weeks is entered on its first day: a bar over half the season hides everything else.
    if (everyDays) add(id, from, from, summary, `${text} Until ${dayText(to)}.`);
    else add(id, from, to, summary, text);
  }
  for (const entry of edition.earlier) {
    if (written.has(entry.uid) || !entry.uid.endsWith(`.${suffix}`)) continue;
    addAllDay(calendar, entry, edition).status(ICalEventStatus.CANCELLED);
  }
  return calendar.toString();
}

function addAllDay(calendar: ICalCalendar, { uid, from, to, summary }: CalendarEntry, edition: CalendarEdition) {
  return calendar.createEvent({
    id: uid,
    start: asInstant(from),
    // The end of an all-day entry is the day after its last one.
    end: asInstant(addDays(to, 1)),
    timezone: "UTC",
    allDay: true,
    summary,
    stamp: edition.stamp,
    sequence: edition.sequence,
    // A reminder does not make anyone busy.
    transparency: ICalEventTransparency.TRANSPARENT,
  });
}

/** Tells this season's entries from every other's: its name, and the year in which it ends. */
function seasonId({ name, plantings }: SeasonInput): string {
  const years = plantings.map(({ end }) => end.slice(0, 4)).sort();
  return `${encodeURIComponent(name)}.${years.at(-1) ?? ""}@trug`;
}
