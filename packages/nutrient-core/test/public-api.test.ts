import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("..", import.meta.url));

test("the built library imports by its public names, and holds what the sources export", async () => {
  const built: Record<string, unknown> = await import(/* @vite-ignore */ `${ROOT}dist/index.js`);
  const sources: Record<string, unknown> = await import("../src/index.ts");
  expect(Object.keys(built).sort()).toEqual(Object.keys(sources).sort());
  const { readQuantity } = (await import(
    /* @vite-ignore */ `${ROOT}dist/expression.js`
  )) as typeof import("../src/expression.ts");
  const read = readQuantity("4 ft x 8 ft");
  expect(read.ok && read.value.value).toBe(2.97289728);
});

test("the library bundles for a browser: no Node module is asked for", async () => {
  const bundle = await build({
    stdin: { contents: 'export * from "./src/index.ts"; export * from "./src/expression.ts";', resolveDir: ROOT },
    bundle: true,
    write: false,
    platform: "browser",
    format: "esm",
    logLevel: "silent",
  });
  expect(bundle.errors).toEqual([]);
  // mathjs asks for nothing either; a bare "node:" import would have been an error on this platform.
  expect(bundle.outputFiles[0]?.text).not.toMatch(/from\s*"(node:|fs|path)"/);
});

test("the library looks at no clock, no chance, no process and no network", () => {
  const forbidden =
    /\b(Date\.now|new Date\(\)|Math\.random|process\.|globalThis\.process|fetch\(|localStorage|performance\.now)\b/;
  const names = (readdirSync(`${ROOT}src`, { recursive: true }) as string[]).filter(
    (name) => name.endsWith(".ts") && !/\.test(-d)?\.ts$|testing\//.test(name),
  );
  expect(names.length).toBeGreaterThan(30);
  const offenders = names.filter((path) =>
    forbidden.test(readFileSync(`${ROOT}src/${path}`, "utf8").replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "")),
  );
  expect(offenders).toEqual([]);
});
