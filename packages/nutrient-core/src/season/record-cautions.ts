import { type Caution, raise } from "../outcome/caution.ts";
import { productNotOnShelf, recordedAhead, recordedBeforePlanting } from "./caution-kinds/record.ts";
import { addDays, type CivilDate, dateInWords } from "./civil-date.ts";
import type { LogEntry, UndoneEntry } from "./log.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonPlan } from "./season-plan.ts";

/** Products on record that have left the shelf. */
export function productsUnknown({ totals }: SeasonPlan, { shelf }: SeasonInput): Caution[] {
  const known = new Set(shelf.map(({ id }) => id));
  const strangers = totals.products.map(({ product }) => product).filter((id) => !known.has(id));
  return strangers.length === 0 ? [] : [raise(productNotOnShelf, { products: strangers })];
}

/** Lines of the record that lie ahead: most often a mistyped year. */
export function aheadOfToday(
  entries: readonly { readonly id: string; readonly date: CivilDate }[],
  today: CivilDate | null,
): Caution[] {
  if (today === null) return [];
  const lines = entries.filter(({ date }) => date > today).map(({ id, date }) => `${id} (${dateInWords(date)})`);
  return lines.length === 0 ? [] : [raise(recordedAhead, { lines, today })];
}

/** Bought plants are this old at most when they are set out (common practice, no source). */
const OLDEST_DAYS = 120;

/** Lines of a day on which a planting was not even sown: a mistyped year, which would move everything after it. */
export function beforePlanting(
  lines: ReadonlyMap<string, readonly Exclude<LogEntry, UndoneEntry>[]>,
  plantings: readonly Planting[],
): Caution[] {
  const early = plantings.flatMap(({ name, sown, setOut }) => {
    const own = lines.get(name)!;
    // What was really done goes before what the file says.
    const begun = own.filter((entry) => entry.kind === "observed" && ["sown", "set-out"].includes(entry.milestone));
    const [first = ""] = [...begun.map(({ date }) => date), sown ?? addDays(setOut, -OLDEST_DAYS)].sort();
    return own.filter(({ date }) => date < first);
  });
  const named = [...new Set(early.map(({ id, date }) => `${id} (${dateInWords(date)})`))];
  return named.length === 0 ? [] : [raise(recordedBeforePlanting, { lines: named })];
}
