import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";

/** Dates are civil: the same season anywhere, in zones a day apart and with half-hour summer times. */
const folder = mkdtempSync(join(tmpdir(), "trug-zones-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const main = join(folder, "main.mjs");

beforeAll(async () => {
  for (const name of ["courtyard", "weather"])
    cpSync(join(import.meta.dirname, "../../../test-data", name), join(folder, name), { recursive: true });
  rmSync(join(folder, "courtyard/season.log"), { force: true });
  await build({
    entryPoints: [join(import.meta.dirname, "../src/main.ts")],
    outfile: main,
    bundle: true,
    format: "esm",
    platform: "node",
    conditions: ["trug-source"],
    logLevel: "error",
    banner: {
      js: 'import { createRequire as $require } from "node:module"; const require = $require(import.meta.url);',
    },
  });
}, 60_000);

function seasonIn(zone: string): string {
  const files = ["--csv", "a.csv", "--calendar", "a.ics", "--sheet", "a.html"];
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [main, "season", "courtyard/season.yaml", "--today", "2027-06-12", "--all", ...files],
    { cwd: folder, env: { ...process.env, TZ: zone }, encoding: "utf8" },
  );
  expect([stderr, status]).toEqual(["", 0]);
  // The stamp is the moment of writing, in universal time.
  const calendar = readFileSync(join(folder, "a.ics"), "utf8").replace(/^DTSTAMP:\d{8}T\d{6}Z$/gm, "DTSTAMP:now");
  return [
    stdout,
    readFileSync(join(folder, "a.csv"), "utf8"),
    calendar,
    readFileSync(join(folder, "a.html"), "utf8"),
  ].join("\n");
}

test("the same season in every time zone", () => {
  const here = seasonIn("UTC");
  expect(here).toContain("Saturday 12 June 2027");
  for (const zone of ["Pacific/Kiritimati", "America/Los_Angeles", "Australia/Lord_Howe"])
    expect(seasonIn(zone)).toBe(here);
}, 60_000);
