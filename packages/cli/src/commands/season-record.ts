import {
  answer,
  type CivilDate,
  effectiveEntries,
  fedOtherwise,
  feedsMeant,
  givenAsPlanned,
  type LogEntry,
  type Outcome,
  type Problem,
  type QuantityReader,
  readDose,
  type SeasonEvent,
  type SeasonInput,
  type SeasonPlan,
  unusable,
} from "nutrient-core";
import type { NewEntry } from "../record/entry-text.ts";
import { readRecordWords, type Said } from "../record/record-words.ts";

/** What stands when something is recorded: the season, its plan, and what is on record already. */
export interface Standing {
  readonly input: SeasonInput;
  readonly plan: SeasonPlan;
  readonly entries: readonly LogEntry[];
  readonly today: CivilDate;
  readonly quantity: QuantityReader;
}

/** The entries for what the grower says has happened, or why it cannot be recorded. */
export function entriesFor(words: string, standing: Standing): Outcome<readonly NewEntry[]> {
  const said = readRecordWords(words, standing.today);
  if (!said.ok) return underRecord(said);
  const { planting } = said.value;
  const refused = planting === undefined ? undefined : plantingProblem(planting, words, standing.input);
  if (refused) return unusable(refused);
  return meant(said.value, words, standing);
}

/** Why a name cannot be recorded under: there is no such planting, or it is one place of several that are fed together. */
function plantingProblem(name: string, words: string, { plantings }: SeasonInput): Problem | undefined {
  const names = plantings.map((planting) => planting.name);
  if (names.includes(name)) return undefined;
  const together = plantings.find(({ places }) => places.some((place) => place.name === name));
  if (!together) {
    const hint = `say for example: in ${names[0]}`;
    return problem(
      "planting-unknown",
      `The season has no planting "${name}".`,
      `one of ${names.join(", ")}`,
      words,
      hint,
    );
  }
  const places = together.places.map((place) => place.name).join(", ");
  return problem(
    "place-fed-with-others",
    `"${name}" is fed together with others, and is recorded with them.`,
    `in ${together.name}, which stands for ${places}`,
    words,
    `say in ${together.name} for all of them; a place with dates or a harvest of its own in the season file is planned apart`,
  );
}

function meant(said: Said, words: string, standing: Standing): Outcome<readonly NewEntry[]> {
  const { what, date, planting } = said;
  const where = { date, ...(planting === undefined ? {} : { planting }) };
  switch (what.kind) {
    case "rained-out":
      return answer([{ kind: "rained-out", ...where }]);
    case "observed":
      return answer([{ kind: "observed", milestone: what.milestone, ...where }]);
    case "harvested": {
      const read = underRecord(standing.quantity(what.amount));
      if (!read.ok) return read;
      if (read.value.dimension !== "mass")
        return unusable(
          problem(
            "dimension-mismatch",
            `"${what.amount}" is not a weight.`,
            "a weight such as 1.2 kg",
            words,
            'say for example --record "picked 1.2 kg"',
          ),
        );
      return answer([{ kind: "harvested", massGrams: read.value.value, ...where }]);
    }
    case "fed":
      return what.each === undefined
        ? fedAsThePlanSays(said, what, words, standing)
        : fedDifferently(said, what, what.each, words, standing);
  }
}

type Fed = Extract<Said["what"], { kind: "fed" }>;

function fedAsThePlanSays(
  { date, planting }: Said,
  { again, cans }: Fed,
  words: string,
  standing: Standing,
): Outcome<readonly NewEntry[]> {
  const feeds = feedsMeant(standing.plan.events, date, planting);
  if (feeds.length === 0) {
    return unusable(
      problem(
        "nothing-planned",
        "No feed is planned that this could have been.",
        "a planned feed",
        words,
        'say what was in each can: --record "fed 2 cans each 8 g leafy-feed"',
      ),
    );
  }
  const recorded = again
    ? undefined
    : feedOnRecord(
        standing.entries,
        date,
        feeds.map((feed) => feed.planting),
      );
  if (recorded) return unusable(twice(recorded, words));
  return answer(feeds.map((feed: SeasonEvent) => givenAsPlanned(feed, date, cans)));
}

function fedDifferently(
  { date, planting }: Said,
  { again, cans }: Fed,
  each: NonNullable<Fed["each"]>,
  words: string,
  { input, plan, entries, quantity }: Standing,
): Outcome<readonly NewEntry[]> {
  const names = planting === undefined ? input.plantings.map(({ name }) => name) : [planting];
  const [only] = names;
  if (names.length > 1 || only === undefined) {
    return unusable(
      problem(
        "planting-missing",
        "Which planting got this is not said.",
        `one of ${names.join(", ")}`,
        words,
        `say where at the end: in ${only}`,
      ),
    );
  }
  const number = cans ?? feedsMeant(plan.events, date, only)[0]?.cans;
  if (number === undefined)
    return unusable(
      problem(
        "cans-missing",
        "How many cans were given is not said.",
        "a number of cans",
        words,
        'say for example "fed 2 cans each 8 g leafy-feed"',
      ),
    );
  const recorded = again ? undefined : feedOnRecord(entries, date, [only]);
  if (recorded) return unusable(twice(recorded, words));
  const amounts: { product: string; massGrams: number }[] = [];
  for (const { amount, product } of each) {
    // Read as a dose, so that shelf names, spoons and densities mean here what they mean there.
    const request = { product, given: `${number} * (${amount})`, water: `${input.canLitres} L` };
    const read = underRecord(readDose(request, { shelf: input.shelf, quantity }));
    if (!read.ok) return read;
    const { purpose } = read.value;
    if (purpose.kind !== "given") throw new Error("a given amount was read as a target");
    amounts.push({ product: read.value.product.id, massGrams: purpose.massGrams });
  }
  const entry = underRecord(fedOtherwise(input, { date, planting: only, cans: number, amounts }));
  return entry.ok ? answer([entry.value]) : entry;
}

/** A hand with wet gloves presses twice; a feed counted twice would starve the plants of the next one. */
function feedOnRecord(
  entries: readonly LogEntry[],
  date: CivilDate,
  plantings: readonly string[],
): LogEntry | undefined {
  return effectiveEntries(entries).find(
    (entry) =>
      entry.kind === "fed" &&
      entry.date === date &&
      (entry.planting === undefined || plantings.includes(entry.planting)),
  );
}

function twice({ id, date }: LogEntry, words: string): Problem {
  return problem(
    "already-recorded",
    `A feed of ${date} is on record already, in line ${id} of the log.`,
    "a feed that is not on record yet",
    words,
    'if it was a second one, say "fed again"; if the first was wrong, take it back with --undo',
  );
}

/**
 * The entry that takes a line of the record back.
 *
 * @param line The log's line; the last one that holds where it is left out.
 */
export function undoing(line: string | undefined, entries: readonly LogEntry[], today: CivilDate): Outcome<NewEntry> {
  const holding = effectiveEntries(entries);
  if (line === undefined) {
    const last = holding.at(-1);
    if (last) return answer({ kind: "undone", date: today, undoes: last.id });
    return unusable(
      undoProblem("nothing-to-undo", "Nothing is on record that could be taken back.", "a recorded line", "nothing"),
    );
  }
  const found = entries.find(({ id }) => id === line);
  const lines = holding.map(({ id }) => id).join(", ") || "none";
  if (!found)
    return unusable(
      undoProblem("line-unknown", `Line ${line} of the log is no entry.`, `one of the lines ${lines}`, line),
    );
  const holds = found.kind === "undone" || holding.some(({ id }) => id === line);
  if (!holds)
    return unusable(
      undoProblem("line-undone", `Line ${line} of the log is taken back already.`, `one of the lines ${lines}`, line),
    );
  return answer({ kind: "undone", date: today, undoes: line });
}

function undoProblem(code: string, message: string, expected: string, received: string): Problem {
  return {
    code,
    path: "undo",
    message,
    expected,
    received,
    hint: "the log is a text file: its lines are counted from 1",
  };
}

function problem(code: string, message: string, expected: string, received: string, hint: string): Problem {
  return { code, path: "record", message, expected, received, hint };
}

/** What is wrong with the words of a record stands under its option. */
function underRecord<T>(outcome: Outcome<T>): Outcome<T> {
  return outcome.ok
    ? outcome
    : unusable(...outcome.problems.map((found) => ({ ...found, path: `record ${found.path}`.trimEnd() })));
}
