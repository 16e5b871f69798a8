import * as z from "zod/mini";
import { answer, type Outcome, unusable } from "./outcome.ts";
import type { Problem } from "./problem.ts";

/**
 * Lets an unknown input in, or says what is wrong with it: the one place where a schema's issues become problems.
 *
 * @param schema What is expected; its issues' messages are not shown, only their facts.
 * @param input Anything at all.
 */
export function throughDoor<T>(schema: z.ZodMiniType<T>, input: unknown): Outcome<T> {
  const result = z.safeParse(schema, input);
  if (result.success) return answer(result.data);
  return unusable(...result.error.issues.flatMap((issue) => asProblems(issue, input)));
}

/** A path as people write one: `products[2].label`. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? String(key) : `${text}.${String(key)}`;
  }, "");
}

/** A problem an issue; of unknown fields one each, so that each is found in its own line. */
function asProblems(issue: z.core.$ZodIssue, input: unknown): Problem[] {
  if (issue.code !== "unrecognized_keys") return [asProblem(issue, input)];
  const path = pathText(issue.path);
  return issue.keys.map((key) => ({
    code: "field-unknown",
    path: [path, key].filter(Boolean).join("."),
    message: `"${key}" is not known in ${path === "" ? "the input" : path}.`,
    expected: "only the fields of this kind of entry",
    received: key,
    hint: "check the spelling, or leave it out",
  }));
}

function asProblem(issue: z.core.$ZodIssue, input: unknown): Problem {
  const path = pathText(issue.path);
  const came = valueAt(input, issue.path);
  const received = describe(came);
  const name = path === "" ? "the input" : path;
  switch (issue.code) {
    case "invalid_type": {
      const expected = String((issue as { expected: string }).expected);
      if (came === undefined) {
        return {
          code: "field-missing",
          path,
          message: `${name} is missing.`,
          expected: typeWords(expected),
          received: "nothing",
          hint: `add ${name}`,
        };
      }
      const problem = typeProblem(path, name, typeWords(expected), received);
      // In a file a number stands where a quantity was meant far oftener than where a name was.
      if (expected !== "string" || typeof came !== "number") return problem;
      return {
        ...problem,
        hint: `give a quantity its unit, such as "${received} L"; put a name that is a number in quotes`,
      };
    }
    case "invalid_value": {
      const values = (issue as { values: readonly unknown[] }).values;
      return typeProblem(path, name, values.length === 1 ? String(values[0]) : `one of ${values.join(", ")}`, received);
    }
    case "too_small":
    case "too_big": {
      const { minimum, maximum, origin } = issue as { minimum?: number; maximum?: number; origin?: string };
      const what = origin === "string" ? "letters" : origin === "array" ? "entries" : "";
      const bound = minimum === undefined ? `at most ${maximum}` : `at least ${minimum}`;
      return typeProblem(path, name, `${bound} ${what}`.trim(), received);
    }
    default:
      return typeProblem(path, name, issue.message ?? "another form", received);
  }
}

function typeProblem(path: string, name: string, expected: string, received: string): Problem {
  return {
    code: "field-unusable",
    path,
    message: `${name} cannot be used as it is.`,
    expected,
    received,
    hint: `give ${expected}`,
  };
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  array: "a list",
  object: "a group of fields",
  boolean: "yes or no",
  record: "a group of fields",
};

const typeWords = (type: string): string => TYPE_WORDS[type] ?? type;

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === "object" ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );
}

function describe(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "an empty value";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of fields";
  const text = String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
