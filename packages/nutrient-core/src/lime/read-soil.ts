import { andThen, answer, at, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../quantity/number.ts";
import { readPh } from "./read-ph.ts";
import { mehlichAcidity, type SoilTest, TEST_METHODS, type TestMethod } from "./soil-test.ts";
import { readTexture, type Texture } from "./texture.ts";

/** What is known of a soil beside its pH: how it feels, or what a laboratory found. */
export type Soil =
  | { readonly kind: "texture"; readonly texture: Texture }
  | { readonly kind: "test"; readonly test: SoilTest };

/** The texts about it. */
export interface SoilTexts {
  readonly texture?: string | undefined;
  readonly bufferPh?: string | undefined;
  readonly acidity?: string | undefined;
  readonly method?: string | undefined;
}

/** Reads the soil: its texture, or a laboratory's test with the method that belongs to it. */
export function readSoil({ texture, bufferPh, acidity, method }: SoilTexts): Outcome<Soil> {
  const tested = bufferPh !== undefined || acidity !== undefined || method !== undefined;
  if (texture !== undefined) {
    if (tested)
      return unusable(conflict("texture", texture, "A texture and a soil test are two ways to the same figure."));
    return andThen(at("texture", readTexture(texture)), (known) => answer({ kind: "texture", texture: known }));
  }
  if (!tested) return unusable(SOIL_MISSING);
  if (bufferPh !== undefined && acidity !== undefined)
    return unusable(conflict("acidity", acidity, "The buffer's pH and the acidity are two ways to the same figure."));
  return andThen(readMethod(method), (known) =>
    andThen(readTest(known, bufferPh, acidity), (test) => answer({ kind: "test", test })),
  );
}

function readMethod(written: string | undefined): Outcome<TestMethod> {
  const method = TEST_METHODS.find((name) => name === written?.trim().toLowerCase().replace(/\s+/g, "-"));
  if (method) return answer(method);
  return unusable({
    code: written === undefined ? "option-missing" : "choice-unknown",
    path: "method",
    message: written === undefined ? "The soil test's method is missing." : `"${written}" is not a method known here.`,
    expected: TEST_METHODS.join(", "),
    received: written ?? "nothing",
    hint:
      written === undefined
        ? "the laboratory's report names it; the same figure means twice as much lime in another one's rule"
        : "where the report names another method, go by the amount of lime that it recommends",
  });
}

function readTest(method: TestMethod, bufferPh: string | undefined, acidity: string | undefined): Outcome<SoilTest> {
  if (method === "sikora") {
    if (bufferPh === undefined) return unusable(figureMissing(method, "bufferPh", "--buffer-ph 6.2"));
    return andThen(at("bufferPh", readPh(bufferPh)), (ph) => answer({ method, bufferPh: ph }));
  }
  if (method === "mehlich-table") {
    if (acidity === undefined) return unusable(figureMissing(method, "acidity", '--acidity "3.9 meq/100 g"'));
    return andThen(at("acidity", readAcidity(acidity, "g")), (value) => answer({ method, acidity: value }));
  }
  if (bufferPh !== undefined)
    return andThen(at("bufferPh", readPh(bufferPh)), (ph) =>
      answer({ method, bufferPh: ph, acidity: mehlichAcidity(ph) }),
    );
  if (acidity === undefined) return unusable(figureMissing(method, "bufferPh", "--buffer-ph 6.3"));
  return andThen(at("acidity", readAcidity(acidity, "cm3")), (value) => answer({ method, acidity: value }));
}

const ACIDITY = new RegExp(`^(${NUMBER_PATTERN})\\s*(.*)$`);
const PER_100_GRAMS = /^(meq\/100\s*g|cmol(\(?\+\)?|c)?\/kg)$/i;
const PER_100_CUBIC_CENTIMETRES = /^meq\/100\s*(cm3|cm\^3|cm³|cc|ml)$/i;

/** An acidity with or without its unit: the method says which one its laboratory prints; another one is a problem. */
function readAcidity(text: string, per: "g" | "cm3"): Outcome<number> {
  const [, digits = "", unit = ""] = ACIDITY.exec(plainText(text)) ?? [];
  const number = readNumber(digits);
  const fits = unit === "" || (per === "g" ? PER_100_GRAMS : PER_100_CUBIC_CENTIMETRES).test(unit);
  if (number.ok && fits) return number;
  const printed = per === "g" ? "meq/100 g" : "meq/100 cm3";
  return unusable({
    code: "acidity-unreadable",
    path: "",
    message: `"${text}" is not an acidity in ${printed}.`,
    expected: `a number, in ${printed} for this method`,
    received: text === "" ? "nothing" : text,
    hint:
      per === "g"
        ? 'copy it from the report, as in "3.9 meq/100 g"; what stands there in meq/100 cm3 belongs to mehlich-formula'
        : 'copy it from the report, as in "1.2 meq/100 cm3"; what stands there in meq/100 g belongs to mehlich-table',
  });
}

function figureMissing(method: TestMethod, path: string, example: string): Problem {
  return {
    code: "option-missing",
    path,
    message: `${method} goes by the ${path === "acidity" ? "acidity" : "buffer's pH"}, which is missing.`,
    expected: `what the laboratory's report says, as in ${example}`,
    received: "nothing",
    hint: `add ${example}`,
  };
}

function conflict(path: string, received: string, message: string): Problem {
  return {
    code: "options-conflict",
    path,
    message,
    expected: "one of --texture, --buffer-ph and --acidity",
    received,
    hint: "keep the laboratory's figure if there is one: it knows this soil",
  };
}

const SOIL_MISSING: Problem = {
  code: "option-missing",
  path: "texture",
  message: "The kind of soil is missing: to move the pH, clay takes two to five times as much as sand.",
  expected: "a texture, or a soil test",
  received: "nothing",
  hint: "add --texture loam, or from a laboratory --method sikora --buffer-ph 6.2",
};
