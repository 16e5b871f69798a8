import type { CautionKind } from "../../outcome/caution.ts";
import { type CivilDate, dateInWords } from "../civil-date.ts";
import { named, type OfPlanting, type OfPlantings } from "./planting.ts";

export const nothingRecorded: CautionKind<OfPlantings & { readonly feeds: number }> = {
  code: "nothing-recorded",
  severity: "note",
  source: "common-practice",
  sentence: ({ called, feeds }) =>
    `${named(called)}: no feed is on record, so ${feeds === 1 ? "the one" : `the ${feeds}`} before today ${feeds === 1 ? "is" : "are"} assumed to have been given as planned. Record what was given, and the rest is worked out from that.`,
};

export const productNotOnShelf: CautionKind<{ readonly products: readonly string[] }> = {
  code: "recorded-product-unknown",
  severity: "note",
  source: "common-practice",
  sentence: ({ products }) =>
    `The record names ${products.join(", ")}, which is not on the shelf. What was given still counts; its cost and packs are not known.`,
};

export const recordedAhead: CautionKind<{ readonly lines: readonly string[]; readonly today: CivilDate }> = {
  code: "recorded-ahead",
  severity: "note",
  source: "common-practice",
  sentence: ({ lines, today }) =>
    `The record holds ${lines.length === 1 ? "a line" : `${lines.length} lines`} of a day after today (${dateInWords(today)}): ${lines.join(", ")}. Check the year, and undo what was mistyped.`,
};

export const recordedBeforePlanting: CautionKind<{ readonly lines: readonly string[] }> = {
  code: "recorded-before-planting",
  severity: "caution",
  source: "common-practice",
  sentence: ({ lines }) =>
    `The record holds ${lines.length === 1 ? "a line" : `${lines.length} lines`} of a day before the plants can have been there: ${lines.join(", ")}. It counts as it stands. Check the year, and undo what was mistyped.`,
};

/** A recorded feed that no plan would give; `compared` says what it is held against, in numbers. */
export const recordedFeedLarge: CautionKind<
  OfPlanting & {
    readonly line: string;
    readonly date: CivilDate;
    readonly compared: readonly string[];
    readonly times: number;
    readonly otherLines: readonly string[];
  }
> = {
  code: "recorded-feed-large",
  severity: "caution",
  source: "common-practice",
  sentence: ({ called, line, date, compared, otherLines }) => {
    const others = otherLines.length === 0 ? "" : ` As far off: ${otherLines.join(", ")}.`;
    return `${called}: line ${line} of the record (${dateInWords(date)}) says ${compared.join("; and ")}.${others} It counts as it stands. If it was mistyped, undo that line and record the feed again.`;
  },
};
