/**
 * Imports go down only. Each floor may use the ones listed before it; rooms never use each other.
 * The order is the one of DEVELOPERS.md.
 */
const CORE = "packages/nutrient-core/src";
const FLOORS = ["outcome", "quantity", "element", "product", "supply", "solution"];
const ROOMS = ["label", "dose", "blend", "bed", "lime", "water", "mix"];

const above = (index) => [...FLOORS.slice(index + 1), ...ROOMS, "season"].join("|");

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...FLOORS.map((floor, index) => ({
      name: `${floor}-imports-down`,
      comment: "A floor may only use the floors below it.",
      severity: "error",
      from: { path: `^${CORE}/${floor}/`, pathNot: "\\.test(-d)?\\.ts$" },
      to: { path: `^${CORE}/(${above(index)})/` },
    })),
    ...ROOMS.map((room) => ({
      name: `${room}-keeps-to-itself`,
      comment: "Rooms never import each other: what two share moves down a floor.",
      severity: "error",
      from: { path: `^${CORE}/${room}/`, pathNot: "\\.test(-d)?\\.ts$" },
      to: { path: `^${CORE}/(${[...ROOMS.filter((other) => other !== room), "season"].join("|")})/` },
    })),
    {
      name: "no-circles",
      severity: "error",
      from: { pathNot: "\\.test\\.ts$" },
      // Two files of one room may know each other's types.
      to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
    },
    {
      name: "core-is-pure",
      comment: "The library touches no Node API, no file and no network.",
      severity: "error",
      from: { path: `^${CORE}/`, pathNot: "\\.test\\.ts$|/testing/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "core-keeps-mathjs-behind-its-second-door",
      severity: "error",
      from: { path: `^${CORE}/`, pathNot: `^${CORE}/quantity/expression\\.ts$|\\.test\\.ts$|/testing/` },
      to: { path: "mathjs" },
    },
    {
      name: "command-uses-the-front-door",
      comment: "The command imports the library by its public names only.",
      severity: "error",
      from: { path: "^packages/cli/src/" },
      to: { path: `^${CORE}/`, pathNot: `^${CORE}/(index|expression)\\.ts$` },
    },
    {
      name: "one-file-names-the-process",
      severity: "error",
      from: { path: "^packages/cli/src/", pathNot: "^packages/cli/src/main\\.ts$" },
      to: { path: "^(node:)?process$" },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: require("node:path").join(__dirname, "../packages/cli/tsconfig.json") },
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["trug-source", "import", "node", "default", "types"],
      extensions: [".ts", ".js"],
    },
  },
};
