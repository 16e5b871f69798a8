import { addDays, type CivilDate, readCivilDate } from "nutrient-core";

/** What an entry needs to be called off. */
export interface CalendarEntry {
  readonly uid: string;
  readonly from: CivilDate;
  /** Its last day. */
  readonly to: CivilDate;
  readonly summary: string;
}

/** The all-day entries of a calendar file that was written here before; of any other file, those that look alike, or none. */
export function entriesOf(calendar: string): readonly CalendarEntry[] {
  const lines = calendar.replace(/\r?\n[ \t]/g, "").split(/\r?\n/);
  const entries: CalendarEntry[] = [];
  let fields: Record<string, string> = {};
  for (const line of lines) {
    if (line === "BEGIN:VEVENT") fields = {};
    const [, name = "", value = ""] = /^([A-Z]+)(?:;[^:]*)?:(.*)$/.exec(line) ?? [];
    fields[name] ??= value;
    if (line !== "END:VEVENT") continue;
    const [uid, from, end] = [fields["UID"], dayOf(fields["DTSTART"]), dayOf(fields["DTEND"])];
    if (uid === undefined || from === undefined || end === undefined) continue;
    entries.push({ uid, from, to: addDays(end, -1), summary: unescaped(fields["SUMMARY"] ?? "") });
  }
  return entries;
}

function dayOf(text: string | undefined): CivilDate | undefined {
  const read = readCivilDate((text ?? "").replace(/^(\d{4})(\d{2})(\d{2})$/, "$1-$2-$3"));
  return read.ok ? read.value : undefined;
}

const unescaped = (text: string): string => text.replace(/\\([\\;,nN])/g, (_, sign) => (/n/i.test(sign) ? " " : sign));
