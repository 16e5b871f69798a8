import type { ScaleTime } from "d3-scale";

/** Spans longer than this many days are marked by months, shorter ones by days. */
const MONTHS_FROM_DAYS = 75;

/** Where a time axis is marked, and with what words. */
export function dateTicks(
  scale: ScaleTime<number, number>,
  about: number,
): readonly { readonly date: Date; readonly label: string }[] {
  const [from, to] = scale.domain() as [Date, Date];
  const months = (to.getTime() - from.getTime()) / 86_400_000 > MONTHS_FROM_DAYS;
  const format = scale.tickFormat(about, months ? "%b" : "%-d %b");
  return scale.ticks(about).map((date) => ({ date, label: format(date) }));
}
