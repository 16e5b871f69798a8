import { type LogEntry, type Outcome, type Problem, readLogEntry, unusable } from "nutrient-core";

/**
 * The record's entries as lines of text: the day, the kind, then facts as `name=value`, each with its unit in its name.
 *
 *     2026-06-01 fed planting="pots" cans=2 can-litres=10 product-grams="leafy-feed:16" nutrient-grams="N:3.2,P:0.7"
 *     2026-06-08 rained-out planting="pots"
 *     2026-06-20 observed planting="pots" milestone=first-flower
 *     2026-07-20 harvested planting="pots" mass-grams=1200
 *     2026-07-21 undone line=4
 */

/** An entry that is not in the log yet: its number is given by where it will stand. */
export type NewEntry = LogEntry extends infer E ? (E extends LogEntry ? Omit<E, "id"> : never) : never;

/** The entry as a line of the log, without its checksum; numbers keep every digit. */
export function entryText(entry: NewEntry): string {
  const facts = factsOf(entry).map(([name, value]) => ` ${name}=${value}`);
  return `${entry.date} ${entry.kind}${facts.join("")}`;
}

function factsOf(entry: NewEntry): readonly (readonly [name: string, value: string | number])[] {
  if (entry.kind === "undone") return [["line", entry.undoes]];
  const planting = entry.planting === undefined ? [] : [["planting", JSON.stringify(entry.planting)] as const];
  switch (entry.kind) {
    case "fed":
      return [
        ...planting,
        ["cans", entry.cans],
        ["can-litres", entry.canLitres],
        ["product-grams", listed(entry.amounts.map(({ product, massGrams }) => [product, massGrams]))],
        ["nutrient-grams", listed(Object.entries(entry.nutrientGrams))],
      ];
    case "rained-out":
      return planting;
    case "observed":
      return [...planting, ["milestone", entry.milestone]];
    case "harvested":
      return [...planting, ["mass-grams", entry.massGrams]];
  }
}

const listed = (amounts: readonly (readonly [name: string, grams: number])[]): string =>
  JSON.stringify(amounts.map(([name, grams]) => `${name}:${grams}`).join(","));

/** How each fact's text becomes a field of the entry. */
const FIELDS: Readonly<Record<string, readonly [field: string, read: (text: string) => unknown]>> = {
  planting: ["planting", unquoted],
  cans: ["cans", Number],
  "can-litres": ["canLitres", Number],
  "product-grams": ["amounts", (text) => unlisted(text).map(([product, massGrams]) => ({ product, massGrams }))],
  "nutrient-grams": ["nutrientGrams", (text) => Object.fromEntries(unlisted(text))],
  milestone: ["milestone", (text) => text],
  "mass-grams": ["massGrams", Number],
  line: ["undoes", (text) => text],
};

const FACT = /\s+([a-z-]+)=("(?:[^"\\]|\\.)*"|\S+)/y;

/**
 * Reads an entry back from its line, or says why it cannot be one.
 *
 * @param id Names the entry for good: the number of its line in the log.
 */
export function readEntry(id: string, text: string): Outcome<LogEntry> {
  const [head = "", date = "", kind = ""] = /^(\S+) ([a-z-]+)/.exec(text) ?? [];
  const fields: Record<string, unknown> = { id, date, kind };
  FACT.lastIndex = head.length;
  let end = head.length;
  for (let match = FACT.exec(text); match; match = FACT.exec(text)) {
    const [, name = "", value = ""] = match;
    const known = Object.hasOwn(FIELDS, name) ? FIELDS[name]! : undefined;
    if (!known || known[0] in fields) return unusable(notAnEntry(id, text));
    fields[known[0]] = known[1](value);
    end = FACT.lastIndex;
  }
  const entry = readLogEntry(fields);
  return entry.ok && end === text.length ? entry : unusable(notAnEntry(id, text));
}

function unquoted(text: string): string {
  if (!text.startsWith('"')) return text;
  try {
    return String(JSON.parse(text));
  } catch {
    return text;
  }
}

function unlisted(text: string): [name: string, grams: number][] {
  const list = unquoted(text);
  if (list === "") return [];
  return list.split(",").map((part) => {
    const at = part.lastIndexOf(":");
    // An empty text would be taken for the number 0.
    return [part.slice(0, at), at < 0 || at === part.length - 1 ? Number.NaN : Number(part.slice(at + 1))];
  });
}

function notAnEntry(id: string, text: string): Problem {
  return {
    code: "log-line-unreadable",
    path: `line ${id}`,
    message: `Line ${id} of the log says nothing that is known here.`,
    expected: "a day, what happened, and its facts",
    received: text.slice(0, 80),
    hint: "lines are added by trug season FILE --record",
  };
}
