import { all, create } from "mathjs";
import { expect, test } from "vitest";
import { COMMANDS } from "../src/commands/index.ts";
import { runTrug, wordsOf } from "./support/run.ts";

/** Every line of working is evaluated by mathjs's unit-aware evaluator, an independent route, and must equal its value. */
const math = create(all!, {});
const ROOT = new URL("../../..", import.meta.url).pathname;
const commands = await Promise.all(Object.values(COMMANDS).map(({ load }) => load()));

const MORE = [
  'trug dose fish-emulsion --given "2 tbsp" --water "2 US gal" --already "N 10 ppm"',
  'trug dose 20-20-20 --target "P2O5 100 ppm" --water "2 * 10 L" --already "P 5 ppm"',
  'trug dose 15.5-0-0 --target "N 7 mmol/L" --water "9 L" --stock 1:100 --tank "5 L"',
  'trug dose "3-1-5 + 2 CaO" --by volume --density "1.2 kg/L" --target "K 80 ppm" --water "1 imperial gallon"',
  'trug bed 5-10-10 --target "N 2 lb/1000 sqft" --area "circle 6 ft" --already "N 1 g/m2"',
  'trug bed blood-meal --given "500 g" --area "row 10 m x 30 cm"',
  'trug bed 5-10-10 --target "P2O5 5 g/m2" --area "12 plants 40 cm x 50 cm" --density "1 kg/L"',
  'trug blend 10-0-0 0-10-0 0-0-10 --grade 2-3-4 --batch "5 lb"',
  'trug blend calcium-nitrate potassium-nitrate --target "N 100 ppm, K 100 ppm, Ca 50 ppm" --water "20 L" --already "Ca 20 ppm"',
  'trug lime dolomitic-lime --area "circle 6 ft" --from 5.2 --to 6.3 --texture clay --depth "8 in"',
  'trug lime CaCO3 --area "1 acre" --from 5.2 --to 6.3 --method mehlich-table --acidity "4.2 meq/100 g"',
  'trug lime agricultural-lime --area "3 m2" --from 5.2 --to 6.3 --method mehlich-formula --buffer-ph 6.21 --fineness "through 60 mesh 80, 20-60 mesh 15"',
  'trug lime sulfur --area "row 10 m x 30 cm" --from 7.3 --to 6.1 --texture clay-loam',
];

const lines = [...commands.flatMap(({ examples }) => examples), ...MORE].filter(
  (line) =>
    (!/shelf\.yaml|season\.yaml|FILE/.test(line) || line.includes("test-data/")) && !line.startsWith("trug check"),
);

test.each(lines)("%s", async (line) => {
  const ran = await runTrug([...wordsOf(line).slice(1), "--json"], { cwd: ROOT });
  expect(ran.err).toBe("");
  const { working, result } = JSON.parse(ran.out) as {
    working: readonly { expression: string; value: number; unit: string; label: string }[];
    result: object;
  };
  expect(Object.keys(result).length).toBeGreaterThan(0);
  for (const { expression, value, unit, label } of working) {
    const evaluated: unknown = math.evaluate(expression);
    const number = unit === "" ? Number(evaluated) : (evaluated as { toNumber(unit: string): number }).toNumber(unit);
    // Full precision inside: only the order of the operations may differ.
    expect(Math.abs(number - value), `${label}: ${expression} = ${number}, not ${value}`).toBeLessThanOrEqual(
      1e-9 * Math.max(Math.abs(value), 1e-9),
    );
  }
  if (!/^trug (mix|season|label$)/.test(line)) expect(working.length).toBeGreaterThan(0);
});
