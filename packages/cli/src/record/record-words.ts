import {
  answer,
  type CivilDate,
  type Milestone,
  type Outcome,
  type Problem,
  readCivilDate,
  unusable,
} from "nutrient-core";

/** What a grower says has happened, before it is known what it means for the plan. */
export interface Said {
  readonly date: CivilDate;
  readonly planting?: string;
  readonly what:
    | {
        readonly kind: "fed";
        /** A second feed of the same day is meant. */
        readonly again: boolean;
        readonly cans?: number;
        /** Texts of what went into each can, where it was not the planned feed. */
        readonly each?: readonly { readonly amount: string; readonly product: string }[];
      }
    | { readonly kind: "rained-out" }
    | { readonly kind: "observed"; readonly milestone: Milestone }
    | { readonly kind: "harvested"; readonly amount: string };
}

/** What can be seen, in the words a grower uses for it. */
const SEEN: Readonly<Record<string, Milestone>> = {
  sown: "sown",
  "set out": "set-out",
  "first flower": "first-flower",
  "first fruit": "first-fruit-set",
  "first fruit set": "first-fruit-set",
  "first harvest": "first-harvest",
  end: "end",
};

const FORMS = "fed, rained out, first flower, first fruit, first harvest, sown, set out or picked 1.2 kg";

/**
 * Reads what is to be recorded: what happened, then where and when if they are not everywhere and today.
 *
 *     fed · fed 3 cans in pots 2026-06-01 · fed 2 cans each 8 g leafy-feed + 2 g saltpetre
 *     rained out · first flower in pots 2026-06-20 · picked 1.2 kg
 *
 * @param today The day that is meant where none is said.
 */
export function readRecordWords(words: string, today: CivilDate): Outcome<Said> {
  const dated = takeDate(words.trim().replace(/\s+/g, " "), today);
  if (!dated.ok) return dated;
  const { date, rest } = dated.value;
  const [, what = "", planting] = /^(.*?)(?: in (.+))?$/i.exec(rest) ?? [];
  const read = readWhat(what.trim(), words);
  if (!read.ok) return read;
  return answer({ date, what: read.value, ...(planting === undefined ? {} : { planting }) });
}

function takeDate(words: string, today: CivilDate): Outcome<{ date: CivilDate; rest: string }> {
  const found = words.match(/(?<=^|\s)\d{4}-\d{1,2}-\d{1,2}(?=\s|$)/g) ?? [];
  if (found.length > 1) return unusable(problem("record-unreadable", words, "one day", "record each day on its own"));
  const [text] = found;
  if (text === undefined) return answer({ date: today, rest: words });
  const date = readCivilDate(text);
  if (!date.ok) return date;
  if (date.value > today) {
    const hint = "record it when it has happened, or say which day today is with --today";
    return unusable(problem("date-ahead", words, `a day up to ${today}`, hint));
  }
  return answer({ date: date.value, rest: words.replace(text, " ").replace(/\s+/g, " ").replace(/ on $/, " ").trim() });
}

function readWhat(what: string, words: string): Outcome<Said["what"]> {
  const lower = what.toLowerCase();
  const seen = lower.replace(/^(?:seen|saw|observed) (?:the )?/, "").replaceAll("-", " ");
  if (Object.hasOwn(SEEN, seen)) return answer({ kind: "observed", milestone: SEEN[seen]! });
  if (/^rained[ -]out$/.test(lower)) return answer({ kind: "rained-out" });
  const [, amount] = /^(?:picked|harvested) (.+)$/i.exec(what) ?? [];
  if (amount !== undefined) return answer({ kind: "harvested", amount });
  if (/^fed\b/.test(lower)) return readFed(what, words);
  return unusable(
    problem("record-unreadable", words, FORMS, 'say for example --record "fed" or --record "first flower"'),
  );
}

const FED = /^fed(?<again> again)?(?: (?<cans>\d+(?:\.\d+)?) cans?)?(?:,? each (?:with )?(?<each>.+))?$/i;

function readFed(what: string, words: string): Outcome<Said["what"]> {
  const groups = FED.exec(what)?.groups;
  const cans = groups?.["cans"] === undefined ? undefined : Number(groups["cans"]);
  const parts = groups?.["each"]
    ?.split(/\s*\+\s*/)
    .map((part) => /^(?<amount>\d.*?) (?:of )?(?<product>\S+)$/.exec(part)?.groups);
  if (!groups || cans === 0 || parts?.includes(undefined)) {
    const hint = 'say --record "fed 2 cans", or what was in each can: "fed 2 cans each 8 g leafy-feed + 2 g saltpetre"';
    return unusable(problem("record-unreadable", words, "fed, how many cans, and what was in each", hint));
  }
  return answer({
    kind: "fed",
    again: groups["again"] !== undefined,
    ...(cans === undefined ? {} : { cans }),
    ...(parts ? { each: parts.map((part) => ({ amount: part!["amount"]!, product: part!["product"]! })) } : {}),
  });
}

function problem(code: string, words: string, expected: string, hint: string): Problem {
  return {
    code,
    path: "",
    message: `"${words}" cannot be recorded as it is.`,
    expected,
    received: words || "nothing",
    hint,
  };
}
