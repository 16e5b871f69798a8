import type { Command, CommanderError } from "commander";
import type { Problem } from "nutrient-core";
import type { TrugCommand } from "./command.ts";

/** Switches that may also stand before the command's name. */
const EARLY = new Set(["--json", "--working", "--strict"]);

/** `trug --json dose ...` is `trug dose --json ...`. */
export function commandFirst(argv: readonly string[]): string[] {
  const at = argv.findIndex((word) => !EARLY.has(word));
  return at > 0 ? [...argv.slice(at, at + 1), ...argv.slice(0, at), ...argv.slice(at + 1)] : [...argv];
}

/** The problem of an option that was given twice though it has one value: neither of the two is guessed. */
export function givenTwice(program: Command, words: readonly string[]): Problem | undefined {
  // Options that gather their values have a parser of their own.
  const single = program.options.filter((option) => option.required && !option.variadic && !option.parseArg);
  const twice = single.find(
    ({ long }) => words.filter((word) => word === long || word.startsWith(`${long}=`)).length > 1,
  );
  if (!twice) return undefined;
  return {
    code: "option-twice",
    path: twice.long ?? "",
    message: `${twice.long} was given more than once.`,
    expected: `${twice.long} once`,
    received: "two values",
    hint: "leave one of the two out",
  };
}

/** What is wrong with the command's words themselves, as the option parser found it. */
export function wordsProblem(error: CommanderError, complaint: string, command: TrugCommand): Problem {
  const [first = "", suggestion] = (complaint || error.message)
    .replace(/^error: /, "")
    .trim()
    .split("\n");
  const [, named = ""] = /'([^']+)'/.exec(first) ?? [];
  const code = error.code.replace(/^commander\./, "").replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  const isMissing = code === "missing-argument" || code === "option-missing-argument";
  const [, surplus] = /got (\d+)/.exec(first) ?? [];
  return {
    code,
    path: named.split(" ")[0] ?? "",
    message: `${first.charAt(0).toUpperCase()}${first.slice(1).replace(/\.$/, "")}.`,
    expected: `the words of trug ${command.name}`,
    received: isMissing || (named === "" && surplus === undefined) ? "nothing" : surplus ? `${surplus} words` : named,
    hint: suggestion?.replace(/[()]/g, "").trim() || `for example: ${command.examples[0]}`,
  };
}
