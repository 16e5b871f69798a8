import { dayNumber } from "./civil-date.ts";
import type { FedEntry } from "./log.ts";
import type { Planting } from "./season.ts";
import { type PlacedStage, stageAround, stageOn } from "./stages.ts";

/** A feed on its day, before it is worked out what is in it. */
export interface Slot {
  readonly day: number;
  /** Undefined only where a feed is on record and the programme has no stage at all. */
  readonly stage: PlacedStage | undefined;
  readonly status: "given" | "assumed" | "planned";
  /** The day it was due, where that is in the past. */
  readonly dueSince?: number;
  readonly entry?: FedEntry;
}

/**
 * The days on which a planting is fed: those on record, and those to come.
 *
 * The rhythm runs from the last feed that was given; a feed that was missed is due today, and only once. Days that
 * are known to be rained out are passed over. Where nothing at all is on record, the feeds of the past are assumed to
 * have been given as planned: someone who keeps no record still gets a plan.
 *
 * @param today Null for a plan of the whole season ahead.
 */
export function schedule(
  planting: Planting,
  placed: readonly PlacedStage[],
  fed: readonly FedEntry[],
  rainedOut: ReadonlySet<number>,
  today: number | null,
): Slot[] {
  const given = fed
    .map((entry): Slot => {
      const day = dayNumber(entry.date);
      return { day, stage: stageAround(placed, day), status: "given", entry };
    })
    .sort((a, b) => a.day - b.day);
  const slots: Slot[] = [...given];
  const first = placed[0];
  if (!first) return slots;
  const isRecorded = given.length > 0 || rainedOut.size > 0;
  const notBefore = isRecorded && today !== null ? today : Number.NEGATIVE_INFINITY;
  const last = given.at(-1);
  let due = last ? last.day + everyDays(planting, last.stage) : first.begins;
  for (;;) {
    const wanted = due;
    let day = Math.max(due, notBefore);
    while (rainedOut.has(day)) day += 1;
    const stage = stageOn(placed, day);
    if (!stage) {
      const next = placed.find(({ begins }) => begins > day);
      if (!next) return slots;
      due = next.begins;
      continue;
    }
    const status = today !== null && day < today ? "assumed" : "planned";
    slots.push({ day, stage, status, ...(wanted < day && today === day ? { dueSince: wanted } : {}) });
    due = day + everyDays(planting, stage);
  }
}

/** Days from a feed of this stage to the next. */
export function everyDays(planting: Planting, placed: PlacedStage | undefined): number {
  return placed?.stage.everyDays ?? planting.programme.everyDays;
}
