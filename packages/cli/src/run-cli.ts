import { Command, CommanderError } from "commander";
import { isPlainQuantity, type Problem, type QuantityReader, readPlainQuantity } from "nutrient-core";
import type { Context, Options, Style, TrugCommand } from "./command.ts";
import { COMMANDS } from "./commands/index.ts";
import { EXIT } from "./exit-codes.ts";
import { generalHelp, VERSION } from "./help.ts";
import type { Io } from "./io.ts";
import { renderJson, renderProblemsJson } from "./render/json.ts";
import { renderProblems } from "./render/problems.ts";
import { renderReply } from "./render/reply.ts";
import { commandFirst, givenTwice, wordsProblem } from "./words.ts";

/**
 * Runs the command on its words. Writes only through `io`, and returns the exit code.
 *
 * @param argv The words after the command's name.
 */
export async function runCli(argv: readonly string[], io: Io): Promise<number> {
  const asJson = argv.includes("--json");
  try {
    return await dispatch(commandFirst(argv), io, asJson);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return fail(
      [
        {
          code: "bug",
          path: "",
          message: `Something went wrong inside trug: ${reason}.`,
          expected: "an answer or a clear problem",
          received: argv.join(" "),
          hint: "please report these words and this message",
        },
      ],
      io,
      asJson,
      EXIT.bug,
    );
  }
}

async function dispatch(argv: readonly string[], io: Io, asJson: boolean): Promise<number> {
  const [name, ...words] = argv;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    const about = words[0] !== undefined && Object.hasOwn(COMMANDS, words[0]) ? words[0] : undefined;
    if (about) return dispatch([about, "--help"], io, asJson);
    io.out(generalHelp(io.columns));
    return EXIT.answer;
  }
  if (name === "--version" || name === "-V") {
    io.out(`${VERSION}\n`);
    return EXIT.answer;
  }
  if (!Object.hasOwn(COMMANDS, name)) return fail([unknownCommand(name)], io, asJson, EXIT.unusable);
  const command = await COMMANDS[name]!.load();
  return runCommand(command, words, io, asJson);
}

async function runCommand(command: TrugCommand, words: readonly string[], io: Io, asJson: boolean): Promise<number> {
  let chosen: { args: readonly string[]; options: Options } | undefined;
  let help = "";
  let complaint = "";
  const program = withCommonOptions(command.configure(new Command(`trug ${command.name}`)))
    .exitOverride()
    .configureOutput({
      writeOut: (text) => (help += text),
      writeErr: (text) => (complaint += text),
      getOutHelpWidth: () => Math.min(io.columns, 100),
    })
    .description(COMMANDS[command.name]!.summary)
    .addHelpText("after", `\nExamples:\n${command.examples.map((example) => `  ${example}`).join("\n")}\n`)
    .action((...passed: unknown[]) => {
      const own = passed.at(-1) as Command;
      chosen = { args: own.args, options: own.opts() };
    });
  try {
    await program.parseAsync([...words], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (error.exitCode === 0) {
      io.out(help);
      return EXIT.answer;
    }
    return fail([wordsProblem(error, complaint, command)], io, asJson, EXIT.unusable);
  }
  const twice = givenTwice(program, words);
  if (twice) return fail([twice], io, asJson, EXIT.unusable);
  if (!chosen) throw new Error("the command was not called");
  const { args, options } = chosen;
  const habit = options["units"] === undefined ? habitOf(io) : options["units"];
  if (habit !== "metric" && habit !== "us") return fail([unitsProblem(String(habit))], io, asJson, EXIT.unusable);
  const context: Context = {
    io,
    strict: options["strict"] === true,
    habit,
    quantityReader,
    shelf: async (quantity) =>
      (await import("./input/shelf-file.ts")).loadShelf(options["shelf"], io, quantity ?? readPlainQuantity),
  };
  const reply = await command.run(args, options, context);
  if ("problems" in reply) return fail(underOptions(reply.problems, program), io, asJson, EXIT.unusable);
  const style: Style = {
    habit,
    width: Math.max(40, Math.min(io.columns, 100)),
    colour: io.isTerminal && !io.env["NO_COLOR"],
  };
  io.out(asJson ? renderJson(command.name, reply) : renderReply(reply, style, options["working"] === true));
  return reply.exitCode ?? EXIT.answer;
}

function withCommonOptions(command: Command): Command {
  return command
    .option("--shelf <file>", "the products you keep (default: shelf.yaml here, else in your config folder)")
    .option("--units <metric|us>", "units of the answer (default: metric)")
    .option("--working", "show the arithmetic")
    .option("--json", "one JSON document, for programs")
    .option("--strict", "exit with 1 when targets cannot all be met");
}

/** The expression reader brings an arithmetic parser with it: it is loaded only for texts that need one. */
async function quantityReader(texts: readonly unknown[]): Promise<QuantityReader> {
  const written = texts.flat().filter((text): text is string => typeof text === "string");
  if (written.every(isPlainQuantity)) return readPlainQuantity;
  return (await import("nutrient-core/expression")).readQuantity;
}

function habitOf(io: Io): string {
  return io.env["TRUG_UNITS"] ?? "metric";
}

/** A problem's path begins with the option it came by, as the grower typed it. */
function underOptions(problems: readonly Problem[], program: Command): Problem[] {
  const names = new Set(program.options.map((option) => option.attributeName()));
  return problems.map((problem) => {
    const [, head = "", rest = ""] = /^(\w*)(.*)$/s.exec(problem.path) ?? [];
    const flag = program.options.find((option) => option.attributeName() === head)?.long;
    return names.has(head) && flag ? { ...problem, path: `${flag}${rest}` } : problem;
  });
}

function fail(problems: readonly Problem[], io: Io, asJson: boolean, code: number): number {
  io.err(asJson ? renderProblemsJson(problems) : renderProblems(problems, Math.max(40, Math.min(io.columns, 100))));
  return code;
}

function unknownCommand(name: string): Problem {
  return {
    code: "command-unknown",
    path: name,
    message: `"${name}" is not one of trug's commands.`,
    expected: Object.keys(COMMANDS).join(", "),
    received: name,
    hint: "trug --help shows what each one answers",
  };
}

function unitsProblem(written: string): Problem {
  return {
    code: "choice-unknown",
    path: "--units",
    message: `"${written}" is not a habit of units.`,
    expected: "metric or us",
    received: written,
    hint: "write --units metric or --units us",
  };
}
