import { styleText } from "node:util";
import { wrapAnsi as wrap } from "fast-wrap-ansi";
import type { Caution, WorkingLine } from "nutrient-core";
import type { Reply, Style } from "../command.ts";
import { hanging } from "./hanging.ts";
import { shown } from "./number.ts";
import { printable } from "./printable.ts";

/** The answer first, the cautions under it, then the arithmetic when it was asked for. */
export function renderReply(reply: Reply, style: Style, withWorking: boolean): string {
  const lines = reply.lines(style).flatMap((line) => wrapped(printable(line), style.width));
  // Who asks for US units knows which gallon is meant.
  const heeded = (reply.cautionsShown ?? reply.cautions).filter(
    ({ code }) => !(style.habit === "us" && code === "measure-read-as-us"),
  );
  const cautions = heeded.map((caution) => renderCaution(caution, style));
  const working = withWorking ? reply.working.map((line) => renderWorking(line, style)) : [];
  return `${[
    ...lines,
    ...(cautions.length > 0 ? ["", ...cautions] : []),
    ...(working.length > 0 ? ["", "Working:", ...working] : []),
  ].join("\n")}\n`;
}

/** A long line goes on under itself, two spaces in. */
function wrapped(line: string, width: number): string[] {
  if (line.length <= width) return [line];
  const indent = /^ */.exec(line)![0];
  const [first = "", ...rest] = wrap(line.trimStart(), width - indent.length - 2).split("\n");
  return [indent + first, ...rest.map((part) => `${indent}  ${part}`)];
}

const MARK = { danger: "DANGER: ", caution: "Take care: ", note: "Note: " } as const;
const COLOUR = { danger: "red", caution: "yellow", note: "dim" } as const;

function renderCaution({ severity, message }: Caution, style: Style): string {
  const text = hanging(MARK[severity], printable(message), style.width);
  return style.colour ? styleText(COLOUR[severity], text) : text;
}

function renderWorking({ label, expression, value, unit, source }: WorkingLine, style: Style): string {
  // Every digit stands in the JSON; on the screen six are enough to follow.
  const readable = expression.replace(/\d+\.\d{6,}(e[+-]?\d+)?/g, (digits) => shown(Number(digits), 6));
  const from = source ? `  [${source}]` : "";
  const equation = `${readable} = ${shown(value, 6)}${unit ? ` ${unit}` : ""}${from}`;
  return [...wrapped(`  ${printable(label)}:`, style.width), ...wrapped(`    ${equation}`, style.width)].join("\n");
}
