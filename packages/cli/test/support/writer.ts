/** A writer in a process of its own, for the kill tests: records line after line, and says so only after each. */
import { writeSync } from "node:fs";
import { appendLines } from "../../src/record/append-lines.ts";

const [path = "", name = "", count = "5000"] = process.argv.slice(2);
for (let i = 0; i < Number(count); i++) {
  // Lengths differ, so that a cut can fall anywhere in a line.
  const entry = `2026-06-01 note ${name}-${i} ${"x".repeat((i * 37) % 200)}`;
  const recorded = await appendLines(path, [entry], path);
  if (!recorded.ok) process.exit(3);
  // Straight to the pipe: an acknowledgement must not wait in this process when it is killed.
  writeSync(1, `${entry}\n`);
}
