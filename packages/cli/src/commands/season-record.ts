import {
  answer,
  type CivilDate,
  type LogEntry,
  type Outcome,
  type Problem,
  type QuantityReader,
  type SeasonInput,
  type SeasonPlan,
  unusable,
} from "nutrient-core";
import type { NewEntry } from "../record/entry-text.ts";
import { readRecordWords, type Said } from "../record/record-words.ts";
import { fedAsThePlanSays, fedDifferently } from "./season-record-fed.ts";
import { recordProblem, underRecord } from "./season-record-problem.ts";

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
    return recordProblem(
      "planting-unknown",
      `The season has no planting "${name}".`,
      `one of ${names.join(", ")}`,
      words,
      hint,
    );
  }
  const places = together.places.map((place) => place.name).join(", ");
  return recordProblem(
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
          recordProblem(
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
