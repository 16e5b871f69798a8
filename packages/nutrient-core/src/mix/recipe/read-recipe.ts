import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { NUMBER_PATTERN, plainText, readNumber } from "../../quantity/number.ts";
import { merged, summed } from "./merged.ts";
import { readAddition } from "./read-addition.ts";
import { type Addition, OWN, type Recipe, type RecipeComponent } from "./recipe.ts";
import { listed, splitOutside } from "./split-list.ts";
import { STARTING_POINTS } from "./starting-points.ts";
import { unreadable } from "./unreadable.ts";

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
