import type { Problem } from "nutrient-core";
import type { Reply } from "../command.ts";

/** The contract's document: what was understood, the result, the cautions and the working. */
export function renderJson(command: string, reply: Reply): string {
  const { inputs, result, cautions, working } = reply;
  return `${JSON.stringify({ command, inputs, result, cautions, working }, null, 2)}\n`;
}

/** The first problem as the contract has it, and all of them beside it. */
export function renderProblemsJson(problems: readonly Problem[]): string {
  const [first, ...others] = problems;
  return `${JSON.stringify({ error: { ...first, ...(others.length > 0 ? { others } : {}) } }, null, 2)}\n`;
}
