import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { plainText } from "../../quantity/number.ts";
import { readCivilDate } from "../civil-date.ts";
import { type Expectation, MILESTONES, type Milestone } from "../crop.ts";
import type { Condition } from "../programme.ts";

const NUMBER = String.raw`\d+(?:\.\d+)?`;
const AFTER = /^(.+?)\s*([+-])\s*(\d+)\s*(days?|weeks?)$/;
const WARMTH = new RegExp(`^(${NUMBER})\\s*degree[ -]?days?\\s+after\\s+(.+)$`);
const DAYS = /^(\d+)\s*(days?|weeks?)\s+(after|before)\s+(.+)$/;
const RANGE = new RegExp(
  `^(${NUMBER})(?:\\s*(?:to|-|\\.\\.)\\s*(${NUMBER}))?\\s*(degree[ -]?days?|days?|weeks?)\\s+after\\s+(.+)$`,
);

/**
 * A milestone by its name, hyphens and spaces alike.
 *
 * @example
 * milestoneNamed("first flower")  // => "first-flower"
 */
export function milestoneNamed(text: string): Milestone | undefined {
  const name = text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, "-")
    .replace(/^setout$/, "set-out");
  return MILESTONES.find((milestone) => milestone === name);
}

/**
 * Reads when a stage begins or ends: `2027-06-01`, `set out + 14 days`, `end - 2 weeks`,
 * `400 degree days after set out`, or a milestone that is to be seen, such as `first flower`.
 *
 * @example
 * readCondition("set out + 2 weeks")  // => { kind: "days-after", milestone: "set-out", days: 14 }
 */
export function readCondition(text: string): Outcome<Condition> {
  const written = plainText(text).toLowerCase().replace(/\s+/g, " ");
  if (/^\d{4}-/.test(written)) {
    const date = readCivilDate(written);
    return date.ok ? answer({ kind: "date", date: date.value }) : date;
  }
  const seen = milestoneNamed(written);
  if (seen !== undefined) {
    // What the file gives is no matter of seeing.
    return answer(
      seen === "sown" || seen === "set-out" || seen === "end"
        ? { kind: "days-after", milestone: seen, days: 0 }
        : { kind: "observed", milestone: seen },
    );
  }
  const warm = WARMTH.exec(written);
  const later = AFTER.exec(written);
  const counted = DAYS.exec(written);
  const milestone = milestoneNamed((warm?.[2] ?? later?.[1] ?? counted?.[4] ?? "").trim());
  if (milestone === undefined) return unusable(conditionProblem(text));
  if (warm) return answer({ kind: "degree-days-after", milestone, degreeDays: Number(warm[1]) });
  const [amount, unit, sign] = later ? [later[3], later[4], later[2]] : [counted![1], counted![2], counted![3]];
  const days = Number(amount) * (unit!.startsWith("week") ? 7 : 1);
  return answer({ kind: "days-after", milestone, days: sign === "-" || sign === "before" ? -days : days });
}

/**
 * Reads when a milestone is to be expected: `20 to 45 days after set out`, `500 to 700 degree days after sown`.
 * The likely amount is the middle of the two.
 */
export function readExpectation(text: string): Outcome<Expectation> {
  const match = RANGE.exec(plainText(text).toLowerCase().replace(/\s+/g, " "));
  const after = match ? milestoneNamed(match[4]!) : undefined;
  const times = match?.[3]?.startsWith("week") ? 7 : 1;
  const least = Number(match?.[1]) * times;
  const most = match?.[2] === undefined ? least : Number(match[2]) * times;
  if (!match || after === undefined || most < least) return unusable(expectationProblem(text));
  const unit = match[3]!.startsWith("degree") ? "degree-days" : "days";
  return answer({ after, unit, amounts: [least, (least + most) / 2, most], source: null });
}

function conditionProblem(text: string) {
  return {
    code: "condition-unreadable",
    path: "",
    message: `"${text}" does not say when.`,
    expected: `a date, or one of ${MILESTONES.map((name) => name.replaceAll("-", " ")).join(", ")} with days or degree days`,
    received: text === "" ? "nothing" : text,
    hint: 'write for example "2027-06-01", "set out + 14 days", "400 degree days after set out" or "first flower"',
  };
}

function expectationProblem(text: string) {
  return {
    code: "expectation-unreadable",
    path: "",
    message: `"${text}" does not say when to expect it.`,
    expected: "a range of days or degree days after a milestone",
    received: text === "" ? "nothing" : text,
    hint: 'write for example "20 to 45 days after set out" or "500 to 700 degree days after sown"',
  };
}
