/**
 * How long the exact search for an order takes beside yalps, a mixed-integer solver, on the same random orders.
 * Times are of this machine and this moment; what counts is the ratio, and whether there is an answer at all.
 *
 *   node packages/nutrient-core/bench/orders.mjs [orders]
 */
import { build } from "esbuild";
import { solve } from "yalps";

const ORDERS = Number(process.argv[2] ?? 300);
/** What a whole number of seconds would be in a search without an end. */
const PATIENCE = 2000;

const source = (path) => JSON.stringify(new URL(`../src/mix/${path}`, import.meta.url).pathname);
const { outputFiles } = await build({
  stdin: {
    contents: `export * from ${source("order/solve-order.ts")}; export * from ${source("testing/random-orders.ts")};`,
    resolveDir: new URL("..", import.meta.url).pathname,
  },
  bundle: true,
  write: false,
  format: "esm",
  logLevel: "error",
});
const { solveOrder, randomNeeds, seeded } = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`
);

/** The order as a model for yalps: a count for each price tier, a switch where a least count or a charge hangs on it. */
function asModel(needs, objective) {
  const variables = {};
  const constraints = {};
  const integers = [];
  const binaries = new Set();
  needs.forEach(({ litres, offers }, i) => {
    constraints[`need${i}`] = { min: litres - 1e-4 };
    offers.forEach((offer, j) => {
      const tiers = [{ fromCount: offer.minimumCount ?? 1, price: offer.price }, ...(offer.priceBreaks ?? [])];
      const most = Math.max(Math.ceil(litres / offer.litres), ...tiers.map(({ fromCount }) => fromCount));
      tiers.forEach(({ fromCount, price }, k) => {
        const [x, y] = [`x${i}.${j}.${k}`, `y${i}.${j}.${k}`];
        integers.push(x);
        variables[x] = { [`need${i}`]: offer.litres, cost: price, litres: offer.litres };
        if (!offer.isBulk) return;
        const lorry = `z${offer.delivery.name}`;
        binaries.add(y).add(lorry);
        Object.assign(variables[x], { [`low${x}`]: 1, [`high${x}`]: 1 });
        variables[y] = { [`low${x}`]: -fromCount, [`high${x}`]: -most, [`one${i}.${j}`]: 1, [`lorry${y}`]: -1 };
        variables[lorry] = { ...variables[lorry], cost: offer.delivery.charge, [`lorry${y}`]: 1 };
        Object.assign(constraints, {
          [`low${x}`]: { min: 0 },
          [`high${x}`]: { max: 0 },
          [`one${i}.${j}`]: { max: 1 },
          [`lorry${y}`]: { min: 0 },
        });
      });
    });
  });
  return { direction: "minimize", objective, constraints, variables, integers, binaries: [...binaries] };
}

const quantile = (times, share) =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(share * times.length))];

const sacksOnly = (need) => ({ ...need, offers: need.offers.filter(({ isBulk }) => !isBulk) });
const nearly = (need) => {
  const perLitre = need.offers[0].price / need.offers[0].litres;
  const alike = (offer, index) => ({
    ...offer,
    price: Math.round(offer.litres * perLitre * (1 + (index % 3) * 5e-4) * 100) / 100,
  });
  return { ...need, offers: sacksOnly(need).offers.map(alike) };
};
const KINDS = {
  "whole orders": { aim: "least-cost", objective: "cost", of: (needs) => needs },
  "one ingredient": { aim: "least-cost", objective: "cost", of: (needs) => needs.slice(0, 1) },
  "nearly equal prices": { aim: "least-cost", objective: "cost", of: (needs) => needs.slice(0, 1).map(nearly) },
  "least left over": { aim: "least-left-over", objective: "litres", of: (needs) => needs.slice(0, 1).map(sacksOnly) },
};

for (const [name, { aim, objective, of }] of Object.entries(KINDS)) {
  const random = seeded(20_260);
  const ours = [];
  const theirs = [];
  let unanswered = 0;
  // Where they may search without an end, fewer orders are enough to see it.
  const orders = name === "whole orders" || name === "one ingredient" ? ORDERS : Math.ceil(ORDERS / 10);
  for (let index = 0; index < orders; index += 1) {
    const needs = of(randomNeeds(random));
    let start = performance.now();
    const order = solveOrder(needs, aim);
    ours.push(performance.now() - start);
    start = performance.now();
    const other = solve(asModel(needs, objective), { timeout: PATIENCE, maxIterations: 1e6 });
    theirs.push(performance.now() - start);
    if (other.status !== "optimal") unanswered += 1;
    else if (aim === "least-cost" && Math.abs(other.result - order.value.cost) > 0.005)
      console.log(`${name} ${index}: ${order.value.cost} here, ${other.result} there`);
  }
  const [a, b, c, d] = [quantile(ours, 0.5), quantile(ours, 0.99), quantile(theirs, 0.5), quantile(theirs, 0.99)];
  console.log(
    `${name.padEnd(20)} ${orders} orders: ours ${a.toFixed(3)} / ${b.toFixed(1)} ms (median / 99 %), ` +
      `yalps ${c.toFixed(3)} / ${d.toFixed(1)} ms, ratio of medians ${(c / a).toFixed(2)}, without an answer there: ${unanswered}`,
  );
}
