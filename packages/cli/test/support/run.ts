import { runCli } from "../../src/run-cli.ts";

/** What a run of the command wrote, and its exit code. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command in this process, with an outside world of our own: no shelf of the user's, no colour. */
export async function runTrug(
  argv: readonly string[],
  world: {
    readonly cwd?: string;
    readonly env?: Record<string, string>;
    readonly columns?: number;
    readonly now?: Date;
  } = {},
): Promise<Ran> {
  let out = "";
  let err = "";
  const code = await runCli(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    env: world.env ?? {},
    cwd: world.cwd ?? process.cwd(),
    home: "/nonexistent",
    isTerminal: false,
    columns: world.columns ?? 80,
    now: () => world.now ?? new Date("2027-06-10T12:00:00Z"),
  });
  return { code, out, err };
}

/** The words of a command line as a shell would part them: double and single quotes hold words together. */
export function wordsOf(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(
    ([, double, single, plain]) => double ?? single ?? plain ?? "",
  );
}
