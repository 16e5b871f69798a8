import type { ScaleTime } from "d3-scale";

/** Spans longer than this many days are marked by months, shorter ones by days. */
const MONTHS_FROM_DAYS = 75;

interface Tick {
  readonly date: Date;
  readonly label: string;
}

/** Where a time axis is marked, and with what words: as many marks as asked for or fewer, so that no two say the same. */
export function dateTicks(scale: ScaleTime<number, number>, about: number): readonly Tick[] {
  const [from, to] = scale.domain() as [Date, Date];
  const months = (to.getTime() - from.getTime()) / 86_400_000 > MONTHS_FROM_DAYS;
  const format = scale.tickFormat(about, months ? "%b" : "%-d %b");
  for (let count = about; count > 1; count--) {
    const ticks = scale.ticks(count).map((date) => ({ date, label: format(date) }));
    const repeats = ticks.some(({ label }, index) => index > 0 && label === ticks[index - 1]!.label);
    if (!repeats && ticks.length <= about) return ticks;
  }
  return scale.ticks(1).map((date) => ({ date, label: format(date) }));
}
