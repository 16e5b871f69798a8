/** The only file that names the process: it hands the outside world in, and the exit code out. */
import { homedir } from "node:os";
import process from "node:process";
import { EXIT } from "./exit-codes.ts";
import { runCli } from "./run-cli.ts";

/** The folder the command was called in; one that was deleted meanwhile is no reason to fail. */
function workingFolder(): string {
  try {
    return process.cwd();
  } catch {
    return "/";
  }
}

// A reader that stops early (`trug ... | head -1`) is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") process.stderr.write(`trug: the answer could not be written (${error.code}).\n`);
  process.exit(error.code === "EPIPE" ? 0 : EXIT.bug);
});

process.exitCode = await runCli(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  env: process.env,
  cwd: workingFolder(),
  home: homedir(),
  isTerminal: process.stdout.isTTY === true,
  columns: process.stdout.columns ?? 80,
  now: () => new Date(),
});
