import type { ScaleTime } from "d3-scale";

/** Spans longer than this many days are marked by months, shorter ones by days. */
const MONTHS_FROM_DAYS = 75;

interface Tick {
  readonly date: Date;
  readonly label: string;
}

/**
 * Where a time axis is marked, and with what words: no more marks than asked for. (The scale takes the number as a
 * hint, and would mark ten weeks by their months' names.)
 */
export function dateTicks(scale: ScaleTime<number, number>, atMost: number): readonly Tick[] {
  const [from, to] = scale.domain() as [Date, Date];
  const isLong = (to.getTime() - from.getTime()) / 86_400_000 > MONTHS_FROM_DAYS;
  const format = scale.tickFormat(atMost, isLong ? "%b" : "%-d %b");
  let dates = scale.ticks(atMost);
  for (let count = atMost; dates.length > atMost && count > 0; count--) dates = scale.ticks(count);
  return dates.map((date) => ({ date, label: format(date) }));
}
