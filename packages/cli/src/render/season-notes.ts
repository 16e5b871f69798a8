import type { Caution } from "nutrient-core";

/** Notes whose first sentence is enough at a glance. What keeps people, animals and water from harm is not among them. */
const SHORTENED: ReadonlySet<string> = new Set([
  "rule-of-thumb",
  "nothing-recorded",
  "target-not-reached",
  "weather-gaps",
  "weather-not-used",
  "weather-carried-on",
  "temperature-read-as-celsius",
  "mix-reckoned",
  "programme-not-compared",
]);

/** Said already beside the limits. */
const SAID_ABOVE: ReadonlySet<string> = new Set(["ceiling-near"]);

/** The season's cautions at a glance: dangers and what to take care of in full, long notes by their first sentence. */
export function glanceCautions(cautions: readonly Caution[]): readonly Caution[] {
  const shown = cautions.filter(({ code }) => !SAID_ABOVE.has(code)).map(shortened);
  if (shown.length === cautions.length && shown.every((caution, index) => caution === cautions[index])) return cautions;
  return [...shown, IN_FULL];
}

const IN_FULL: Caution = {
  code: "notes-in-full",
  severity: "note",
  facts: {},
  message: "These notes in full, and each feed: --all.",
  source: "common-practice",
};

/** A sentence ends with a full stop before a space and a capital letter. */
function shortened(caution: Caution): Caution {
  if (!SHORTENED.has(caution.code)) return caution;
  const [first] = /^.*?\.(?= \p{Lu})/su.exec(caution.message) ?? [];
  return first === undefined ? caution : { ...caution, message: first };
}
