import {
  answer,
  type Caution,
  type CivilDate,
  compareProgrammes,
  type Outcome,
  PROGRAMMES,
  planSeason,
  readCivilDate,
  type SeasonInput,
  unusable,
} from "nutrient-core";
import type { Context, Options, TrugCommand } from "../command.ts";
import { EXIT } from "../exit-codes.ts";
import { loadSeason, type SeasonFileContext } from "../input/season-file.ts";
import { readLog } from "../record/read-log.ts";
import { seasonLines } from "../render/season.ts";
import { comparisonLines } from "../render/season-compare.ts";
import { withPlaceNames } from "../render/season-labels.ts";
import { glanceCautions } from "../render/season-notes.ts";
import { recordAll } from "./season-log.ts";
import { type Written, writeOutputs } from "./season-outputs.ts";
import { changeSeason } from "./season-set.ts";

const collect = (value: string, earlier: readonly string[] = []): readonly string[] => [...earlier, value];

export const seasonCommand: TrugCommand = {
  name: "season",
  configure: (command) =>
    command
      .argument("<file>", "the season file")
      .option("--new", "write an example season file of this name, to begin with")
      .option("--today <date>", "plan as of this day, YYYY-MM-DD (default: today)")
      .option("--all", "show every feed of the season, and the notes in full")
      .option(
        "--record <words>",
        'what happened: "fed", "fed 2 cans in pots 2027-06-01", "first flower", "rained out", "picked 1.2 kg"',
        collect,
      )
      .option("--undo [line]", "take back the last line of the record, or this one")
      .option("--set <field=value>", "change a field of the season file: setOut=2027-05-20", collect)
      .option("--compare", "the season as planned and under each known programme: what it gives and costs")
      .option("--csv <file>", "write the season as a table")
      .option("--calendar <file>", "write it as a calendar (.ics)")
      .option("--sheet <file>", "write it as a sheet to print (.html)"),
  examples: [
    "trug season test-data/courtyard/season.yaml --today 2027-06-10",
    "trug season test-data/courtyard/season.yaml --today 2027-06-10 --all",
    'trug season season.yaml --record "fed 2 cans in pots"',
    'trug season season.yaml --record "first flower 2027-06-21" --sheet season.html',
  ],
  run: async ([file = ""], options, context) => {
    if (options["new"] === true) return (await import("./season-new.ts")).newSeason(file, context.io);
    const today = readToday(options, context);
    if (!today.ok) return today;
    const { readQuantity: quantity } = await import("nutrient-core/expression");
    const files: SeasonFileContext = { io: context.io, shelf: options["shelf"], quantity };
    const changed = await changeSeason(file, (options["set"] ?? []) as readonly string[], files);
    if (!changed.ok) return changed;
    const season = await loadSeason(file, files);
    if (!season.ok) return season;
    const { input, log: place } = season.value;
    const recorded = await recordAll(season.value, options, today.value, quantity);
    if (!recorded.ok) return recorded;
    const log = await readLog(place.path, place.shownAs);
    if (!log.ok) return log;
    const plan = planSeason(input, log.value.entries, today.value);
    if (!plan.ok) return unusable(...plan.problems.map((found) => ({ ...found, path: `${file} ${found.path}` })));
    const cautions: readonly Caution[] = [...plan.cautions, ...log.cautions, ...season.cautions];
    const shown = withPlaceNames(input, plan.value);
    const planned = { input, plan: shown, cautions, today: today.value, recordedLines: log.value.lines };
    const written = await writeOutputs(planned, options, context.io);
    if (!written.ok) return written;
    const compared =
      options["compare"] === true
        ? compareProgrammes(input, PROGRAMMES, log.value.entries, today.value)
        : answer(undefined);
    if (!compared.ok) return compared;
    const comparison = compared.value;
    const heeded = [...cautions, ...compared.cautions];
    const isClosest = plan.value.events.some(({ status, reached }) => status === "planned" && reached === "closest");
    return {
      inputs: { file, log: place.shownAs, today: today.value, ...understood(input) },
      result: {
        ...plan.value,
        recorded: recorded.value.map(({ line }) => line),
        changed: changed.value,
        written: written.value,
        ...(comparison ? { comparison } : {}),
      },
      cautions: heeded,
      ...(options["all"] === true ? {} : { cautionsShown: glanceCautions(heeded) }),
      working: [...season.working, ...plan.working],
      lines: (style) => [
        ...recorded.value.map(({ told }) => told),
        ...changed.value.map(({ path, before, after }) => `Changed ${path} from ${before} to ${after} in ${file}`),
        ...written.value.map(({ kind, file: output }: Written) => `Wrote the ${kind} to ${output}`),
        ...(recorded.value.length + changed.value.length + written.value.length > 0 ? [""] : []),
        ...(comparison
          ? comparisonLines(comparison, input.currency)
          : seasonLines(input, shown, style, options["all"] === true)),
      ],
      exitCode: context.strict && isClosest ? EXIT.notMet : EXIT.answer,
    };
  },
};

/** The day that was named, or the one that it is where the command runs. */
function readToday(options: Options, { io }: Context): Outcome<CivilDate> {
  const named = options["today"];
  if (typeof named === "string") {
    const read = readCivilDate(named);
    return read.ok ? read : unusable(...read.problems.map((problem) => ({ ...problem, path: "today" })));
  }
  const now = io.now();
  const two = (number: number): string => String(number).padStart(2, "0");
  return readCivilDate(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
}

/** What was read, without the weather's hundreds of rows. */
function understood({ weather, ...input }: SeasonInput): object {
  return { ...input, weatherDays: weather.length };
}
