import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

/** The built command as a process of its own: what only a real start can show. Skipped where nothing is built. */
const TRUG = fileURLToPath(new URL("../bin/trug.mjs", import.meta.url));
const trug = (...words: string[]) => spawnSync(process.execPath, [TRUG, ...words], { encoding: "utf8" });

describe("the built command", () => {
  test("answers on stdout with exit code 0", () => {
    const { status, stdout, stderr } = trug("dose", "20-10-20", "--target", "N 150 ppm", "--water", "2 * 4.5 L");
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect(stdout.split("\n")[0]).toBe("6.75 g of 20-10-20 in 9 L");
  });

  test("says a problem on stderr with exit code 2, and nothing on stdout", () => {
    const { status, stdout, stderr } = trug("dose", "20-10-20", "--target", "N 150 ppm", "--water", "9");
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toContain("--water");
  });

  test("--strict makes an exit code of targets that cannot be met", () => {
    const words = ["blend", "20-20-20", "--ratio", "3-1-2", "--batch", "1 kg"];
    expect(trug(...words).status).toBe(0);
    expect(trug(...words, "--strict").status).toBe(1);
  });

  test("a reader that stops early is no failure", () => {
    const { status, stderr } = spawnSync(
      "sh",
      ["-c", `"${process.execPath}" "${TRUG}" --help | head -n 1; exit \${PIPESTATUS:-0}`],
      { encoding: "utf8" },
    );
    expect(stderr).toBe("");
    expect(status).toBe(0);
  });
});
