import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { runTrug } from "./support/run.ts";

const folder = mkdtempSync(join(tmpdir(), "drawing-"));
const FILLS = [
  "--fill",
  "bed 1.2 m x 2.4 m x 30 cm mound 8 cm",
  "--fill",
  "18 pots 40 cm x 24 cm x 30 cm drainage 3 cm",
];

async function drawing(
  recipe: string,
  fills: readonly string[] = FILLS,
  more: readonly string[] = [],
): Promise<string> {
  const ran = await runTrug(["mix", "--recipe", recipe, ...fills, "--drawing", "mix.svg", ...more], { cwd: folder });
  expect(ran).toMatchObject({ code: 0, err: "" });
  return readFileSync(join(folder, "mix.svg"), "utf8");
}

/** The corners of every drawn outline. */
function outlines(svg: string): (readonly [number, number])[][] {
  return [...svg.matchAll(/<path d="M([\d.,L-]+)Z?"/g)].map(([, points = ""]) =>
    points.split("L").map((pair) => pair.split(",").map(Number) as [number, number]),
  );
}
const extent = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

describe("the drawing", () => {
  test("is to scale: across and up, for the bed and the pot alike", async () => {
    const [bed, walls, pot] = outlines(await drawing("compost 1, perlite 1"));
    const scale = extent(bed!.map(([x]) => x)) / 1.2;
    // Points are rounded to hundredths of a pixel.
    const near = (pixels: number, metres: number): void =>
      expect(Math.abs(pixels - metres * scale)).toBeLessThanOrEqual(0.03);
    near(extent(bed!.map(([, y]) => y)), 0.38);
    near(extent(walls!.map(([, y]) => y)), 0.3);
    near(extent(pot!.map(([x]) => x)), 0.4);
    near(extent(pot!.map(([, y]) => y)), 0.27);
  });

  test("labels every ingredient with its share and volume, and every measure in the grower's units", async () => {
    const svg = await drawing("compost 1, perlite 3", FILLS, ["--units", "us", "--loss", "0", "--settling", "0"]);
    expect(svg).toContain("compost: 25 %");
    expect(svg).toContain("perlite: 75 %");
    expect(svg).toContain("3.94 ft across");
    expect(svg).not.toMatch(/>[\d.]+ c?m</);
  });

  test("shows no text unescaped", async () => {
    const svg = await drawing('"a<b>&c" 1, perlite 1');
    expect(svg).toContain("a&lt;b&gt;&amp;c");
    expect(svg).not.toContain("<b>");
  });

  test("pots of which only the litres are known leave the mix alone", async () => {
    const svg = await drawing("compost 1", ["--fill", "12 pots 20 L"]);
    expect(outlines(svg)).toEqual([]);
    expect(svg).toContain("compost: 100 %");
  });

  test("a folder that is not there is a problem, and nothing is answered", async () => {
    const ran = await runTrug(["mix", "--recipe", "compost 1", ...FILLS, "--drawing", "no/such/mix.svg"], {
      cwd: folder,
    });
    expect(ran.code).toBe(2);
    expect(ran.out).toBe("");
    expect(ran.err).toContain("folder");
  });
});
