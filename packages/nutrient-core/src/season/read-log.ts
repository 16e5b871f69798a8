import * as z from "zod/mini";
import { NUTRIENTS, type Nutrient } from "../element/nutrient.ts";
import { throughDoor } from "../outcome/door.ts";
import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import { readCivilDate } from "./civil-date.ts";
import { MILESTONES } from "./crop.ts";
import type { LogEntry } from "./log.ts";

const id = z.string().check(z.minLength(1));
const planting = z.optional(z.string());
const grams = z.number().check(z.nonnegative());

const logEntry = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("fed"),
    id,
    date: z.string(),
    planting,
    cans: z.number().check(z.positive()),
    canLitres: z.number().check(z.positive()),
    amounts: z.array(z.strictObject({ product: z.string(), massGrams: grams })),
    nutrientGrams: z.partialRecord(z.enum(NUTRIENTS as readonly [Nutrient, ...Nutrient[]]), grams),
  }),
  z.strictObject({ kind: z.literal("rained-out"), id, date: z.string(), planting }),
  z.strictObject({ kind: z.literal("observed"), id, date: z.string(), planting, milestone: z.enum(MILESTONES) }),
  z.strictObject({ kind: z.literal("harvested"), id, date: z.string(), planting, massGrams: grams }),
  z.strictObject({ kind: z.literal("undone"), id, date: z.string(), undoes: z.string() }),
]);

/**
 * Reads one line of the record as data, or says what is wrong with it.
 *
 * @example
 * readLogEntry({ kind: "rained-out", id: "7", date: "2027-06-09" })  // => { kind: "rained-out", date: "2027-06-09" }
 */
export function readLogEntry(line: unknown): Outcome<LogEntry> {
  const entered = throughDoor(logEntry, line);
  if (!entered.ok) return entered;
  const date = readCivilDate(entered.value.date);
  if (!date.ok) return unusable(...date.problems.map((problem) => ({ ...problem, path: "date" })));
  // The door knows undefined fields from missing ones no better than JSON does.
  return answer(entered.value as LogEntry);
}
