import { expect, test } from "vitest";
import { COMMANDS } from "../src/commands/index.ts";
import { runTrug, wordsOf } from "./support/run.ts";

const ROOT = new URL("../../..", import.meta.url).pathname;
const commands = await Promise.all(Object.values(COMMANDS).map(({ load }) => load()));

test.each(commands.map((command) => [command.name, command] as const))(
  "trug %s --help shows at least two examples, and each of them runs",
  async (name, command) => {
    const help = await runTrug([name, "--help"]);
    expect(help.code).toBe(0);
    expect(help.err).toBe("");
    expect(command.examples.length).toBeGreaterThanOrEqual(2);
    for (const example of command.examples) {
      expect(help.out).toContain(example);
      if (/shelf\.yaml|season\.yaml|FILE/.test(example) && !example.includes("test-data/")) continue;
      const ran = await runTrug(wordsOf(example).slice(1), { cwd: ROOT });
      expect(ran.err, example).toBe("");
      expect(ran.code, example).toBe(0);
    }
  },
);

test("help names every command, and fits a narrow terminal", async () => {
  const { out, code } = await runTrug([], { columns: 50 });
  expect(code).toBe(0);
  for (const name of Object.keys(COMMANDS)) expect(out).toContain(`  ${name}`);
  const prose = out.split("\n").filter((line) => !line.startsWith("  trug") && !line.startsWith("Usage"));
  expect(Math.max(...prose.map(({ length }) => length))).toBeLessThanOrEqual(50);
});

test("--json prints one document with the contract's five fields and nothing else", async () => {
  const ran = await runTrug(["dose", "KNO3", "--target", "K 100 ppm", "--water", "9 L", "--json"]);
  expect(ran.err).toBe("");
  const document = JSON.parse(ran.out);
  expect(Object.keys(document)).toEqual(["command", "inputs", "result", "cautions", "working"]);
  for (const caution of document.cautions) {
    expect(Object.keys(caution)).toEqual(expect.arrayContaining(["code", "severity", "message", "source"]));
    expect(["note", "caution", "danger"]).toContain(caution.severity);
  }
  for (const line of document.working)
    expect(Object.keys(line)).toEqual(["label", "expression", "value", "unit", "source"]);
});

test("switches may stand before the command", async () => {
  const before = await runTrug(["--json", "dose", "KNO3", "--target", "K 100 ppm", "--water", "9 L"]);
  const behind = await runTrug(["dose", "KNO3", "--target", "K 100 ppm", "--water", "9 L", "--json"]);
  expect(before).toEqual(behind);
});

test("no colour unless a terminal asks for it", async () => {
  const ran = await runTrug(["dose", "ammonium-nitrate", "--target", "N 100 ppm", "--water", "9 L"]);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the control character is what is looked for
  expect(ran.out).not.toMatch(/\u001b/);
});
