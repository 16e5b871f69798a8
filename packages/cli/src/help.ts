import { wrapAnsi as wrap } from "fast-wrap-ansi";
import { COMMANDS } from "./commands/index.ts";
import { hanging } from "./render/hanging.ts";

export const VERSION = "0.1.0";

/** What `trug` alone says: the job, the commands as questions, and two whole examples. */
export function generalHelp(columns: number): string {
  const width = Math.max(40, Math.min(columns, 80));
  const commands = Object.entries(COMMANDS).map(([name, { summary }]) =>
    hanging(`  ${name.padEnd(7)}`, summary, width),
  );
  return [
    wrap("trug: from what a grower knows to what the shed needs.", width),
    "",
    "Usage: trug <command> ... [--json] [--working] [--units us]",
    "",
    ...commands,
    "",
    "Examples:",
    '  trug dose 20-10-20 --target "N 150 ppm" --water "9 L"',
    '  trug mix --recipe "compost 1, perlite 1, coir 1" --fill "12 pots 20 L"',
    "",
    wrap("trug <command> --help shows each one's options and examples.", width),
    "",
  ].join("\n");
}
