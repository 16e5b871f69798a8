/**
 * How planning grows with the number of beds: 10, 100 and 1,000 beds of 30 feeds each, in one process.
 * Times are of this machine and this moment; what counts is the ratio to the beds.
 *
 *   node --expose-gc packages/nutrient-core/bench/season.mjs
 */
import { build } from "esbuild";

const source = (path) => JSON.stringify(new URL(`../src/season/${path}`, import.meta.url).pathname);
const { outputFiles } = await build({
  stdin: {
    contents: ["plan.ts", "testing/demo.ts", "civil-date.ts", "fed.ts", "programmes/two-phase.ts"]
      .map((path) => `export * from ${source(path)};`)
      .join("\n"),
    resolveDir: new URL("..", import.meta.url).pathname,
  },
  bundle: true,
  write: false,
  format: "esm",
  logLevel: "error",
});
const { planSeason, givenAsPlanned, season, planting, addDays, dateOfDay, dayNumber, TWO_PHASE, fedWith } =
  await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`);

const FEEDS = 30;
const EVERY_DAYS = 4;
const weather = Array.from({ length: 3 * 365 }, (_, index) => {
  const minimumCelsius = 8 + 7 * Math.sin(((index - 110) / 365) * 2 * Math.PI);
  return { date: dateOfDay(dayNumber("2025-01-01") + index), minimumCelsius, maximumCelsius: minimumCelsius + 10 };
});
const programme = {
  ...fedWith(TWO_PHASE, { leaf: ["leafy-feed"], fruit: ["bloom-feed", "saltpetre"] }),
  everyDays: EVERY_DAYS,
};

/** Beds that are set out on days of their own. `own`: and whose mix is their own, so that no two feeds are alike. */
function bedsOf(count, own) {
  return Array.from({ length: count }, (_, index) => {
    const setOut = addDays("2027-05-01", index % 40);
    return planting({
      name: `bed ${index}`,
      programme,
      sown: addDays(setOut, -60),
      setOut,
      // The first feed comes after 14 days, the last at least 14 days before the end.
      end: addDays(setOut, 14 + (FEEDS - 1) * EVERY_DAYS + 14),
      ...(own ? { fromMix: { gramsPerPlant: { N: 0.2 + index / 5000 }, overDays: 100 } } : {}),
    });
  });
}

function measured(count, own) {
  const input = season({ plantings: bedsOf(count, own), weather, raisedAtCelsius: 19 });
  const times = [];
  let feeds = 0;
  let megabytes = 0;
  for (let round = 0; round < 5; round += 1) {
    globalThis.gc?.();
    const before = process.memoryUsage().heapUsed;
    const start = performance.now();
    const plan = planSeason(input);
    times.push(performance.now() - start);
    megabytes = (process.memoryUsage().heapUsed - before) / 1e6;
    if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
    feeds = plan.value.events.length;
  }
  times.sort((a, b) => a - b);
  return { beds: count, feeds, milliseconds: times[2], megabytes };
}

/** The same with a full record: every feed was given as planned. */
function withRecord(count) {
  const input = season({ plantings: bedsOf(count, false), weather, raisedAtCelsius: 19 });
  const log = planSeason(input).value.events.map((event, index) => ({
    ...givenAsPlanned(event, event.date),
    id: String(index),
  }));
  const times = Array.from({ length: 5 }, () => {
    globalThis.gc?.();
    const start = performance.now();
    if (!planSeason(input, log).ok) throw new Error("no plan");
    return performance.now() - start;
  });
  return Math.min(...times);
}

for (const own of [false, true]) {
  measured(10, own);
  const rows = [10, 100, 1000].map((count) => measured(count, own));
  console.log(own ? "\nbeds with a mix of their own each:" : "beds that share their programme:");
  console.table(
    rows.map(({ beds, feeds, milliseconds, megabytes }) => ({
      beds,
      feeds,
      milliseconds: Number(milliseconds.toFixed(1)),
      megabytes: Number(megabytes.toFixed(1)),
      "time per bed, against 10 beds": Number((milliseconds / beds / (rows[0].milliseconds / 10)).toFixed(2)),
    })),
  );
}

withRecord(10);
console.log("\nbeds whose every feed is on record:");
console.table([10, 100, 1000].map((count) => ({ beds: count, milliseconds: Number(withRecord(count).toFixed(1)) })));
