import type { CivilDate, Reminder, SeasonEvent, SeasonPlan, UnitHabit } from "nutrient-core";
import { dayText, spanText } from "./season-day.ts";
import { type FeedTogether, feedsTogether, feedText } from "./season-feed.ts";
import { namesInShort } from "./season-labels.ts";

/** Something to do, on a day or within some days. */
export interface Thing {
  readonly from: CivilDate;
  readonly to: CivilDate;
  /** When, in words: all of its days. */
  readonly when: string;
  /** How long it may be put off, in words. */
  readonly until: string;
  readonly plantings: string;
  readonly what: string;
  /** A feed's first event. */
  readonly feed?: SeasonEvent;
}

/** What a grower wants to see first: what is on today, and the next things after it. */
export interface Agenda {
  readonly today: readonly Thing[];
  readonly next: readonly Thing[];
}

/** So many days are seen at a glance, with all that begins on them. */
const NEXT = 3;

/**
 * Today's things and those of the next three days on which something begins. Without a day, the season's first three.
 * What is the same for several plantings is one thing; a reminder whose days have begun is on today, until its last day.
 */
export function agenda(plan: SeasonPlan, habit: UnitHabit): Agenda {
  const { today } = plan;
  const feeds = feedsTogether(plan.events.filter(({ status }) => status === "planned"));
  const things = [
    ...feeds.map((feed) => feedThing(feed, habit)),
    ...remindersTogether(plan.reminders).map((reminder) => reminderThing(reminder, today)),
  ].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  const coming = things.filter(({ from }) => today === null || from > today);
  const days = [...new Set(coming.map(({ from }) => from))].slice(0, NEXT);
  return {
    today: today === null ? [] : things.filter(({ from, to }) => from <= today && today <= to),
    next: coming.filter(({ from }) => days.includes(from)),
  };
}

function feedThing(feed: FeedTogether, habit: UnitHabit): Thing {
  const { date, events } = feed;
  const since = events[0].dueSince === undefined ? "" : ` (due since ${dayText(events[0].dueSince, "plain")})`;
  const unsure = feed.provisional ? " (may still change)" : "";
  const plantings = events.map(({ planting }) => planting).join(", ");
  return {
    from: date,
    to: date,
    when: dayText(date),
    until: "",
    plantings,
    what: feedText(feed, habit, false) + since + unsure,
    feed: events[0],
  };
}

/** The same job on the same days in several plantings. */
export interface ReminderTogether extends Omit<Reminder, "planting"> {
  readonly plantings: readonly string[];
}

/** Reminders by their first day, those that are alike as one. */
export function remindersTogether(reminders: readonly Reminder[]): readonly ReminderTogether[] {
  const groups = new Map<string, Reminder[]>();
  for (const reminder of reminders) {
    const key = JSON.stringify([reminder.from, reminder.to, reminder.text, reminder.everyDays]);
    groups.set(key, [...(groups.get(key) ?? []), reminder]);
  }
  return [...groups.values()]
    .map((alike) => ({ ...alike[0]!, plantings: [...new Set(alike.map(({ planting }) => planting))] }))
    .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
}

function reminderThing({ from, to, plantings, text }: ReminderTogether, today: CivilDate | null): Thing {
  const until = to === today ? "last day" : `until ${dayText(to, "plain")}`;
  const when = today !== null && from <= today ? until : spanText(from, to);
  // The first clause says what to do; the whole text stands in the list of jobs.
  return { from, to, when, until, plantings: namesInShort(plantings), what: text.split(/[:;]|\.$/)[0]!.trim() };
}
