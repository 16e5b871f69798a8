/**
 * How long the command takes from nothing to its answer, as a whole process, against a bare `node -e 0`.
 * The two run in turn, so that a busy machine is busy for both; ratios are taken pair by pair.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const TRUG = fileURLToPath(new URL("../bin/trug.mjs", import.meta.url));
const RUNS = Number(process.argv[2] ?? 31);

const CASES = {
  "dose, plain quantities": ["dose", "20-20-20", "--target", "N 150 ppm", "--water", "9 L"],
  "dose, generic material": ["dose", "potassium-nitrate", "--target", "K 150 ppm", "--water", "9 L"],
  "dose, an expression": ["dose", "20-20-20", "--target", "N 150 ppm", "--water", "2 * 10 L"],
  "blend of three": ["blend", "46-0-0", "18-46-0", "0-0-60", "--ratio", "3-1-2", "--batch", "1 kg"],
  label: ["label", "KNO3"],
  help: ["--help"],
};

const time = (args) => {
  const start = process.hrtime.bigint();
  spawnSync(process.execPath, args, { stdio: "ignore" });
  return Number(process.hrtime.bigint() - start) / 1e6;
};
const sorted = (values) => [...values].sort((a, b) => a - b);
const median = (values) => sorted(values)[Math.floor(values.length / 2)];

const CORE = new URL("../../nutrient-core/dist/", import.meta.url);
const imported = (file) => ["--input-type=module", "-e", `import ${JSON.stringify(new URL(file, CORE).href)}`];
const PROCESSES = {
  ...Object.fromEntries(Object.entries(CASES).map(([name, words]) => [name, [TRUG, ...words]])),
  "library import, unbundled": imported("index.js"),
  "expression reader import": imported("expression.js"),
};

for (const [name, args] of Object.entries(PROCESSES)) {
  const ratios = [];
  const bare = [];
  time(args);
  for (let run = 0; run < RUNS; run++) {
    const base = time(["-e", "0"]);
    bare.push(base);
    ratios.push(time(args) / base);
  }
  const range = sorted(ratios);
  console.log(
    `${name.padEnd(26)} ${median(ratios).toFixed(2)} times a bare node (${range[0].toFixed(2)} to ${range.at(-1).toFixed(2)}); bare ${median(bare).toFixed(0)} ms`,
  );
}
