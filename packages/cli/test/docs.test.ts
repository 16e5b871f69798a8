import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { runTrug, wordsOf } from "./support/run.ts";

/**
 * Every command line shown in README.md and docs/ is run, and what the page shows under it must be what the command
 * says: a block that begins with `$ npx trug`, followed by its output. DOCS_UPDATE=1 writes the output anew,
 * for a person to read as a diff.
 */
const ROOT = fileURLToPath(new URL("../../..", import.meta.url));
const pages = ["README.md", "DEVELOPERS.md", ...markdownIn("docs")];
function markdownIn(folder: string): string[] {
  const files = readdirSync(ROOT + folder, { recursive: true }) as string[];
  return files.filter((file) => file.endsWith(".md")).map((file) => `${folder}/${file}`);
}

const BLOCK = /```(?:console|sh)\n\$ npx (trug [^\n]*)\n([\s\S]*?)```/g;

const shown = pages.flatMap((page) => {
  const text = readFileSync(ROOT + page, "utf8");
  return [...text.matchAll(BLOCK)].map(([block, line = "", output = ""]) => ({ page, block, line, output }));
});

test("the pages show commands", () => expect(shown.length).toBeGreaterThan(5));

test.each(shown)("$page: $line", async ({ page, block, line, output }) => {
  const [, ...argv] = wordsOf(line);
  const ran = await runTrug(argv, { cwd: ROOT, columns: 80 });
  const said = ran.out + ran.err;
  if (process.env["DOCS_UPDATE"] === "1" && said !== output) {
    const text = readFileSync(ROOT + page, "utf8");
    writeFileSync(ROOT + page, text.replace(block, block.replace(`${line}\n${output}`, `${line}\n${said}`)));
    return;
  }
  expect(said).toBe(output);
});
