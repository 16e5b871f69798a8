import { readdirSync, readFileSync } from "node:fs";
import { z } from "zod";

/**
 * The form of a published case, and what is needed to compare one with the command's JSON.
 *
 * Nothing here comes from the library: the unit factors are written down again from the legal definitions, so that
 * a slip in the library's own table cannot hide in the comparison. test-data/README.md explains the form to a person.
 */

const checkFields = {
  /** Where in the JSON document: `result.amounts.0.massGrams`, or a sum of such, read by {@link readValue}. */
  read: z.string().min(1),
  /** The unit in which the source prints the value. */
  unit: z.string(),
  /** In the printed unit. */
  tolerance: z.number().positive(),
  /** Where the tolerance comes from; for a trap also how the right value is reached. */
  why: z.string().min(10),
};

const agreementSchema = z.strictObject({ ...checkFields, printed: z.number() });
const trapSchema = z
  .strictObject({ ...checkFields, right: z.number(), notPrinted: z.number() })
  .refine((trap) => Math.abs(trap.right - trap.notPrinted) > trap.tolerance, "the tolerance lets the error through");

const caseSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9][a-z0-9.-]*$/),
    source: z.string(),
    locator: z.string().min(1),
    printed: z.string().min(1),
    kind: z.enum(["match", "rounding", "trap"]),
    status: z.enum(["seen", "memory", "derived"]),
    note: z.string().optional(),
    /** Ids of the collected cases that this one carries out (reference-ids.json). */
    covers: z.array(z.string()),
    /** The arguments of the command; `--json` is added. */
    run: z.array(z.string()).min(2),
    checks: z.array(z.union([agreementSchema, trapSchema])).min(1),
  })
  .refine(
    ({ kind, checks }) => (kind === "trap") === checks.some((check) => "notPrinted" in check),
    "a trap, and only a trap, says what must not be reproduced",
  );

const sourceSchema = z.looseObject({
  title: z.string().min(1),
  publisher: z.string().min(1),
  year: z.union([z.number(), z.string(), z.null()]).optional(),
  url: z.string().startsWith("http").optional(),
  authority: z.enum(["A", "B", "C"]),
  status: z.enum(["seen", "memory"]),
});

export type PublishedCheck = z.infer<typeof agreementSchema> | z.infer<typeof trapSchema>;
export type PublishedCase = z.infer<typeof caseSchema>;

const TEST_DATA = new URL("../../../../test-data/", import.meta.url);
const NOT_CASES = new Set(["not-run.json", "reference-ids.json"]);

function load<T>(name: string, schema: z.ZodType<T>): T {
  const parsed = schema.safeParse(JSON.parse(readFileSync(new URL(name, TEST_DATA), "utf8")));
  if (!parsed.success) throw new Error(`test-data/${name}: ${z.prettifyError(parsed.error)}`);
  return parsed.data;
}

/** Every published case, by topic (the file's name). */
export function loadPublished(): ReadonlyMap<string, readonly PublishedCase[]> {
  const files = readdirSync(new URL("published/", TEST_DATA)).filter((name) => !NOT_CASES.has(name));
  return new Map(
    files.sort().map((name) => [name.replace(/\.json$/, ""), load(`published/${name}`, z.array(caseSchema))]),
  );
}

/** The cases that are not run, each with its reason. */
export function loadNotRun(): readonly { id: string; file: string; reason: string }[] {
  const schema = z.strictObject({ id: z.string(), file: z.string(), reason: z.string().min(20) });
  return load("published/not-run.json", z.array(schema));
}

/** Every id of every collection from which the cases were transcribed, by collection. */
export function loadReferenceIds(): Readonly<Record<string, readonly string[]>> {
  return load("published/reference-ids.json", z.record(z.string(), z.array(z.string())));
}

/** The sources, by id. */
export function loadSources(): Readonly<Record<string, z.infer<typeof sourceSchema>>> {
  return load("sources.json", z.record(z.string().regex(/^[a-z0-9-]+$/), sourceSchema));
}

// International yard and pound 1959; US gallon 231 cubic inches; US bushel 2150.42 cubic inches; UK Act of 1985.
const POUND = 453.59237;
const OUNCE = POUND / 16;
const SQUARE_FOOT = 0.09290304;
const SQUARE_YARD = 0.83612736;
const ACRE = 4046.8564224;
const CUBIC_INCH = 0.016387064;
const CUBIC_YARD = 764.554857984;
const US_GALLON = 3.785411784;
const US_BUSHEL = 35.23907016688;

/** How much of the command's own unit (gram, litre, square metre, g/m2, g/m3, ppm, mS/cm, kPa) one printed unit is. */
const FACTORS: Readonly<Record<string, number>> = {
  "1": 1,
  "%": 1,
  ppm: 1,
  "mS/cm": 1,
  kPa: 1,
  "g/L from ppm": 1000,
  g: 1,
  kg: 1000,
  oz: OUNCE,
  lb: POUND,
  L: 1,
  mL: 0.001,
  cm3: 0.001,
  m3: 1000,
  "cu in": CUBIC_INCH,
  "cu ft": CUBIC_INCH * 1728,
  "cu yd": CUBIC_YARD,
  "US gal": US_GALLON,
  "US qt": US_GALLON / 4,
  "dry qt": US_BUSHEL / 32,
  "US bushel": US_BUSHEL,
  m2: 1,
  ha: 10_000,
  "sq ft": SQUARE_FOOT,
  acre: ACRE,
  "g/m2": 1,
  "kg/ha": 0.1,
  "g/100 sq ft": 1 / (100 * SQUARE_FOOT),
  "oz/100 sq ft": OUNCE / (100 * SQUARE_FOOT),
  "oz/1000 sq ft": OUNCE / (1000 * SQUARE_FOOT),
  "oz/sq yd": OUNCE / SQUARE_YARD,
  "lb/100 sq ft": POUND / (100 * SQUARE_FOOT),
  "lb/1000 sq ft": POUND / (1000 * SQUARE_FOOT),
  "lb/acre": POUND / ACRE,
  "US ton/acre": (2000 * POUND) / ACRE,
  "g/m3": 1,
  "kg/m3": 1000,
  "lb/cu yd": (POUND / CUBIC_YARD) * 1000,
};

/** A value of the command's own unit, in the printed unit. */
export function inPrintedUnit(value: number, unit: string): number {
  const factor = FACTORS[unit];
  if (factor === undefined) throw new Error(`no factor is written down for the unit "${unit}"`);
  return value / factor;
}

/**
 * Reads a value out of the command's JSON. Paths and numbers may be joined by ` + `, ` - `, ` * ` and ` / `, which
 * are carried out from left to right; `pi` is the number (some sources round it, and say so).
 */
export function readValue(expression: string, document: unknown): number {
  const [first = "", ...rest] = expression.split(" ");
  let value = operand(first, document);
  for (let i = 0; i < rest.length; i += 2) {
    const next = operand(rest[i + 1] ?? "", document);
    if (rest[i] === "+") value += next;
    else if (rest[i] === "-") value -= next;
    else if (rest[i] === "*") value *= next;
    else if (rest[i] === "/") value /= next;
    else throw new Error(`"${expression}": "${rest[i]}" is none of + - * /`);
  }
  return value;
}

function operand(word: string, document: unknown): number {
  if (word === "pi") return Math.PI;
  if (/^\d/.test(word)) return Number(word);
  let value: unknown = document;
  for (const key of word.split(".")) value = (value as Record<string, unknown> | undefined)?.[key];
  if (typeof value !== "number") throw new Error(`the command's answer has no number at "${word}"`);
  return value;
}

export interface Verdict {
  readonly passed: boolean;
  /** The distance from the expected value as a share of the tolerance: 1 is the limit. */
  readonly shareOfTolerance: number;
  readonly text: string;
}

// Half a printed place is a closed bound (1.25 prints as 1.3), and its own binary rounding must not decide.
const BINARY_ROUNDING = 1e-9;

/** Compares one check with the command's answer. */
export function judge(check: PublishedCheck, document: unknown): Verdict {
  const ours = inPrintedUnit(readValue(check.read, document), check.unit);
  const isTrap = "notPrinted" in check;
  const expected = isTrap ? check.right : check.printed;
  const share = Math.abs(ours - expected) / check.tolerance;
  const reproducesError = isTrap && !(Math.abs(ours - check.notPrinted) > check.tolerance);
  const text = `${check.read}: ${ours} ${check.unit}, expected ${expected} within ${check.tolerance} (${check.why})`;
  return { passed: share <= 1 + BINARY_ROUNDING && !reproducesError, shareOfTolerance: share, text };
}
