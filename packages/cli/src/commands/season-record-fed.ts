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
  readDose,
  unusable,
} from "nutrient-core";
import type { NewEntry } from "../record/entry-text.ts";
import type { Said } from "../record/record-words.ts";
import type { Standing } from "./season-record.ts";
import { recordProblem, underRecord } from "./season-record-problem.ts";

/** What is said of a feed. */
export type Fed = Extract<Said["what"], { kind: "fed" }>;

/** A feed as it was planned, in every planting that it can be meant for. */
export function fedAsThePlanSays(
  { date, planting }: Said,
  { again, cans }: Fed,
  words: string,
  standing: Standing,
): Outcome<readonly NewEntry[]> {
  const feeds = feedsMeant(standing.plan.events, date, planting);
  if (feeds.length === 0) {
    return unusable(
      recordProblem(
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
  return answer(feeds.map((feed) => givenAsPlanned(feed, date, cans)));
}

/** A feed that was not the planned one, in one planting. */
export function fedDifferently(
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
      recordProblem(
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
      recordProblem(
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
  return recordProblem(
    "already-recorded",
    `A feed of ${date} is on record already, in line ${id} of the log.`,
    "a feed that is not on record yet",
    words,
    'if it was a second one, say "fed again"; if the first was wrong, take it back with --undo',
  );
}
