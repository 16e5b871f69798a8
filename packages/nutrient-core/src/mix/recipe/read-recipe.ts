import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Problem } from "../../outcome/problem.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../../quantity/number.ts";
import { rateUnitNamed } from "../../supply/rate-unit.ts";
import { type Addition, OWN, type Recipe, type RecipeComponent } from "./recipe.ts";
import { STARTING_POINTS } from "./starting-points.ts";

const EXAMPLE =
  '"compost 1, perlite 1, coir 1", "compost 40%, perlite 30%, coir 30%" or "own soil 2, compost 1 + lime 3 kg/m3"';

/**
 * Reads a recipe: ingredients by parts or percent of volume, and after a `+` what is mixed in by mass per volume.
 *
 * A comma, a semicolon or a line break parts the ingredients, and what is mixed in.
 * A group in brackets is a mix inside the mix, with a part of its own: `(leaf mould 1, garden compost 2) 1, perlite 1`.
 * An ingredient that begins with "own" is at hand and is not ordered. The id of a published starting point may stand
 * for a whole recipe or for an ingredient (`light-thirds 2, own soil 1`).
 *
 * @returns Shares by volume of loose material that sum to 1, an ingredient named twice added up; additions in g/m3.
 * @example
 * readRecipe("compost 1, perlite 1, coir 2").value.components[2].share  // => 0.5
 */
export function readRecipe(text: string): Outcome<Recipe> {
  // A line break parts a list as a semicolon does; empty pieces, such as one before a "+", drop out.
  const written = plainText(text)
    .replace(/\s*[\r\n]+\s*/g, "; ")
    .replace(/\s+/g, " ");
  const known = STARTING_POINTS.find(({ id }) => id === written.toLowerCase());
  if (known) {
    const read = readRecipe(known.recipe);
    return read.ok ? answer({ ...read.value, source: known.source }) : read;
  }
  const [ingredients = "", ...added] = splitOutside(written, "+");
  const parts = readParts(ingredients, text);
  const additions = added.flatMap(listed).map((one) => readAddition(one, text));
  const problems = [parts, ...additions].flatMap((one) => (one.ok ? [] : one.problems));
  if (!parts.ok || problems.length > 0) return unusable(...problems);
  return answer({
    components: merged(parts.value.components),
    additions: summed([...parts.value.additions, ...additions.flatMap((one) => (one.ok ? [one.value] : []))]),
    source: null,
  });
}

interface Parts {
  readonly components: readonly RecipeComponent[];
  readonly additions: readonly Addition[];
}

interface Part {
  readonly amount: number;
  readonly isPercent: boolean;
  readonly inside: Parts;
}

/** What a list names, parted by commas or semicolons; a list of nothing is one empty piece, for its reader to refuse. */
function listed(list: string): string[] {
  const pieces = splitOutside(list, ",;").filter((piece) => piece !== "");
  return pieces.length === 0 ? [""] : pieces;
}

/** Reads a list of ingredients; their shares sum to 1. */
function readParts(list: string, text: string): Outcome<Parts> {
  const pieces = listed(list);
  if (pieces[0] === "") return unusable(unreadable(text, "it names no ingredient"));
  const read = pieces.map((piece) => readPart(piece, text));
  const problems = read.flatMap((part) => (part.ok ? [] : part.problems));
  if (problems.length > 0) return unusable(...problems);
  const parts = read.flatMap((part) => (part.ok ? [part.value] : []));
  if (parts.some(({ isPercent }) => isPercent !== parts[0]!.isPercent)) {
    return unusable(unreadable(text, "it mixes parts and percent"));
  }
  const total = parts.reduce((sum, { amount }) => sum + amount, 0);
  // Shares printed as 33, 33 and 34, or as 33.3 three times, are meant to make a whole.
  if (parts[0]!.isPercent && Math.abs(total - 100) > 0.5) {
    return unusable({
      code: "recipe-not-whole",
      path: "",
      message: `The shares in "${text}" make ${Number(total.toPrecision(6))} %.`,
      expected: "shares that make 100 %",
      received: text,
      hint: "mend the shares, or write parts without a percent sign",
    });
  }
  return answer({
    components: parts.flatMap(({ amount, inside }) =>
      inside.components.map((component) => ({ ...component, share: (component.share * amount) / total })),
    ),
    additions: parts.flatMap(({ amount, inside }) =>
      inside.additions.map((one) => ({ ...one, gramsPerCubicMetre: (one.gramsPerCubicMetre * amount) / total })),
    ),
  });
}

/** Parts compare ingredients; beyond these one of them is not there, and a sum loses its digits. */
const [LEAST_PART, MOST_PART] = [1e-6, 1e6];

const AMOUNT_LAST = new RegExp(`^(.*?\\S)[ :]*?\\s(${NUMBER_PATTERN})\\s*(%|parts?)?$`, "i");
const AMOUNT_FIRST = new RegExp(`^(${NUMBER_PATTERN})\\s*(%|parts?)?\\s+(?:of )?(\\S.*)$`, "i");

function readPart(piece: string, text: string): Outcome<Part> {
  // "5-10-10" and "#2 grit" begin with a digit but are names: the amount at the end is looked for first.
  const last = AMOUNT_LAST.exec(piece);
  const first = last ? null : AMOUNT_FIRST.exec(piece);
  if (!last && !first) return unusable(unreadable(text, `"${piece}" has no amount`));
  const [name, digits, unit] = last ? [last[1]!, last[2]!, last[3]] : [first![3]!, first![1]!, first![2]];
  const amount = readNumber(digits);
  if (!amount.ok) return amount;
  if (!(amount.value > 0)) {
    return unusable({
      code: "not-positive",
      path: "",
      message: `"${piece}" is not more than zero.`,
      expected: "a part of more than zero",
      received: text,
      hint: "leave the ingredient out, or give it a part",
    });
  }
  if (amount.value < LEAST_PART || amount.value > MOST_PART) {
    return unusable({
      code: "part-out-of-range",
      path: "",
      message: `"${piece}" is not a part that can be measured out.`,
      expected: `a part from ${LEAST_PART} to ${MOST_PART}`,
      received: text,
      hint: 'parts only compare ingredients with each other: write "compost 2, perlite 1"',
    });
  }
  const inside = readIngredient(name.replace(/:$/, "").trim(), text);
  if (!inside.ok) return inside;
  return answer({ amount: amount.value, isPercent: unit === "%", inside: inside.value });
}

/** An amount in the middle, and more words after it: `compost 1 perlite`, `compost 1 / perlite`, `compost 40% perlite`. */
const TWO_IN_ONE = /\s[\d.,]+(?:\s*(?:%|parts?\b))?(?:\s+(?:[a-z(]|\W\s*[a-z(])|\s*[:|/&=]\s*[a-z(])/i;
const NO_NAME = /[|={}[\]\\]/;

function readIngredient(name: string, text: string): Outcome<Parts> {
  const group = /^\((.*)\)$/.exec(name);
  if (group) return readParts(group[1]!, text);
  if (/[()]/.test(name)) return unusable(unreadable(text, "a bracket is not closed"));
  const known = STARTING_POINTS.find(({ id }) => id === name.toLowerCase());
  if (known) return readRecipe(known.recipe);
  if (TWO_IN_ONE.test(name)) {
    return unusable(unreadable(text, `"${name}" looks like two ingredients that no comma parts`));
  }
  const sign = NO_NAME.exec(name)?.[0];
  if (sign !== undefined) return unusable(unreadable(text, `"${sign}" cannot stand in an ingredient's name`));
  if (!/[a-z]/i.test(name)) return unusable(unreadable(text, `"${name}" is no ingredient`));
  if (name.length > 60) return unusable(unreadable(text, "an ingredient's name is longer than 60 letters"));
  return answer({ components: [{ name: name.toLowerCase(), share: 1, isOwn: OWN.test(name) }], additions: [] });
}

/** A tonne in a cubic metre is more than most mixes weigh. */
const MOST_GRAMS_PER_CUBIC_METRE = 1e6;

const ADDITION = new RegExp(`^(\\S.*?)[: ]\\s*(${NUMBER_PATTERN})\\s*([a-z].*)$`, "i");

function readAddition(piece: string, text: string): Outcome<Addition> {
  // Grades such as 5-10-10 hold numbers, so every place where an amount could begin is tried, from the left.
  for (let from = piece.indexOf(" "); from >= 0; from = piece.indexOf(" ", from + 1)) {
    const match = ADDITION.exec(`x${piece.slice(from)}`);
    const unit = match && rateUnitNamed(match[3]!);
    if (!match || unit?.basis !== "cubicMetre" || match[1] !== "x") continue;
    const rate = readNumber(match[2]!);
    if (!rate.ok) return rate;
    const gramsPerCubicMetre = rate.value * unit.factor;
    if (!(rate.value > 0) || gramsPerCubicMetre > MOST_GRAMS_PER_CUBIC_METRE) break;
    return answer({ name: piece.slice(0, from).trim().toLowerCase(), gramsPerCubicMetre });
  }
  return unusable({
    code: "addition-unreadable",
    path: "",
    message: `"${piece}" is not something mixed in by mass.`,
    expected:
      "a name and a rate per cubic metre or cubic yard, such as lime 3 kg/m3, less than a tonne in a cubic metre",
    received: text,
    hint: 'write for example "+ lime 3 kg/m3" or "+ lime 5 lb/cu yd"',
  });
}

/** Parts a list at any of the signs, outside brackets only; a comma inside a number (1,5) is no sign. */
function splitOutside(text: string, signs: ",;" | "+"): string[] {
  const pieces: string[] = [];
  let depth = 0;
  let piece = "";
  for (const [index, letter] of [...text].entries()) {
    if (letter === "(") depth += 1;
    if (letter === ")") depth -= 1;
    const inNumber = letter === "," && /\d/.test(text[index - 1] ?? "") && /\d/.test(text[index + 1] ?? "");
    if (signs.includes(letter) && depth === 0 && !inNumber) {
      pieces.push(piece.trim());
      piece = "";
    } else piece += letter;
  }
  return [...pieces, piece.trim()];
}

/** What is mixed in twice, in two groups say, is weighed once. */
function summed(additions: readonly Addition[]): Addition[] {
  const byName = new Map<string, number>();
  for (const { name, gramsPerCubicMetre } of additions) {
    byName.set(name, (byName.get(name) ?? 0) + gramsPerCubicMetre);
  }
  return [...byName].map(([name, gramsPerCubicMetre]) => ({ name, gramsPerCubicMetre }));
}

function merged(components: readonly RecipeComponent[]): RecipeComponent[] {
  const byName = new Map<string, RecipeComponent>();
  for (const component of components) {
    const before = byName.get(component.name);
    byName.set(component.name, before ? { ...before, share: before.share + component.share } : component);
  }
  return [...byName.values()];
}

function unreadable(text: string, reason: string): Problem {
  return {
    code: "recipe-unreadable",
    path: "",
    message: `"${text}" is not a recipe: ${reason}.`,
    expected:
      "ingredients, each with its part or percent, parted by commas or semicolons; or the id of a starting point",
    received: text,
    hint: `write for example ${EXAMPLE}; starting points: ${STARTING_POINTS.map(({ id }) => id).join(", ")}`,
  };
}
