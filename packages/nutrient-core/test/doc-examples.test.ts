import { readFileSync } from "node:fs";
import { transformSync } from "esbuild";
import { expect, test } from "vitest";

/**
 * Every `@example` in the library's docstrings is run: a line `expression  // => expected` is evaluated with all of
 * the library's own functions in scope. An outcome is compared by its value; `0.4364...` means "begins so";
 * an object is compared by the fields that the example shows.
 */
declare global {
  interface ImportMeta {
    /** The test runner's way of importing many files. */
    glob<T>(patterns: readonly string[], options: { readonly eager: true }): Record<string, T>;
  }
}

const modules = import.meta.glob<Record<string, unknown>>(
  ["../src/**/*.ts", "!../src/**/*.test.ts", "!../src/**/*.test-d.ts", "!../src/**/testing/**"],
  {
    eager: true,
  },
);
const scope: Record<string, unknown> = Object.assign({}, ...Object.values(modules));
// The one name an example may use without making it: a pure salt.
scope["kno3"] = unwrapped((scope["readProduct"] as (text: string) => unknown)("KNO3"));

interface Example {
  readonly file: string;
  readonly code: string;
  readonly expected: string;
}

const examples: Example[] = Object.keys(modules).flatMap((path) => {
  const source = readFileSync(new URL(path, import.meta.url), "utf8");
  const file = path.replace("../src/", "");
  return [...source.matchAll(/@example\n((?:\s*\*(?!\/| @).*\n)+)/g)].flatMap(([, block = ""]) => {
    const lines = block.split("\n").map((line) => line.replace(/^\s*\* ?/, ""));
    const found: Example[] = [];
    let before = "";
    for (const line of lines) {
      const [code = "", expected] = line.split("// =>");
      if (expected === undefined) before += `${line}\n`;
      else found.push({ file, code: `${before}return (${code.trim().replace(/;$/, "")});`, expected: expected.trim() });
    }
    if (found.length === 0) found.push({ file, code: block, expected: "" });
    return found;
  });
});

test("there are examples, and each shows its result", () => {
  expect(examples.length).toBeGreaterThan(20);
  expect(examples.filter(({ expected }) => expected === "").map(({ file, code }) => `${file}: ${code.trim()}`)).toEqual(
    [],
  );
});

test.each(examples.filter(({ expected }) => expected !== ""))("$file: $code => $expected", ({ code, expected }) => {
  const result = unwrapped(evaluate(code));
  matches(result, expected);
});

function evaluate(code: string): unknown {
  const names = Object.keys(scope).filter(
    (name) => new RegExp(`\\b${name}\\b`).test(code) && !code.includes(`const ${name} =`),
  );
  const { code: plain } = transformSync(`export default () => { ${code} }`, { loader: "ts" });
  const body = plain.replace(/^[\s\S]*?=> \{/, "").replace(/\};?\s*(export[\s\S]*)?$/, "");
  return new Function(...names, body)(...names.map((name) => scope[name]));
}

function unwrapped(value: unknown): unknown {
  if (value !== null && typeof value === "object" && "ok" in value) {
    if (value.ok !== true) throw new Error(JSON.stringify(value));
    return (value as unknown as { value: unknown }).value;
  }
  return value;
}

function matches(result: unknown, expected: string): void {
  const cut = expected.replace(/(-?\d+(?:\.\d+)?)\.\.\./g, (_, digits: string) => `{ "beginsWith": "${digits}" }`);
  const wanted: unknown = new Function(`return (${cut});`)();
  compare(result, wanted);
}

function compare(result: unknown, wanted: unknown): void {
  if (wanted !== null && typeof wanted === "object" && "beginsWith" in wanted) {
    expect(String(result)).toMatch(new RegExp(`^${String(wanted.beginsWith).replaceAll(".", "\\.")}`));
  } else if (Array.isArray(wanted)) {
    expect(Array.isArray(result) && result.length).toBe(wanted.length);
    for (const [index, entry] of wanted.entries()) compare((result as unknown[])[index], entry);
  } else if (wanted !== null && typeof wanted === "object") {
    for (const [key, entry] of Object.entries(wanted)) compare((result as Record<string, unknown>)[key], entry);
  } else if (typeof wanted === "number" && typeof result === "number" && !Number.isInteger(wanted)) {
    // The last digit of a floating result may differ between engines.
    expect(Math.abs(result - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * 1e-14);
  } else expect(result).toEqual(wanted);
}
