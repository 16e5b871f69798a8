import type { Problem } from "../outcome/problem.ts";

/** An id that another product has, or that reads like a grade; `seen` holds the places of the ids before it. */
export function problemOfId(id: string, path: string, seen: ReadonlyMap<string, number>): Problem | undefined {
  const earlier = seen.get(id);
  if (earlier !== undefined) {
    return {
      code: "id-twice",
      path: `${path}.id`,
      message: `Two products are called "${id}".`,
      expected: "an id of its own for each product",
      received: `${id} (also products[${earlier}])`,
      hint: "rename one of the two",
    };
  }
  if (!/^\d+(-\d+)+$/.test(id)) return undefined;
  return {
    code: "id-like-grade",
    path: `${path}.id`,
    message: `"${id}" reads like a grade, so no one could tell which of the two is meant.`,
    expected: "an id with a word in it, such as lawn-feed",
    received: id,
    hint: "give it a name of its own",
  };
}

/** A price that nobody said what it buys. */
export function packMissing(id: string, path: string): Problem {
  return {
    code: "field-missing",
    path: `${path}.pack`,
    message: `${id} has a price but no pack size.`,
    expected: "what the price buys, such as 2 kg",
    received: "nothing",
    hint: "add pack: 2 kg",
  };
}

/** Percent by volume of a product that has no label of its own. */
export function volumeOfNoLabel(id: string, path: string): Problem {
  return {
    code: "options-conflict",
    path: `${path}.by`,
    message: `${id} has no label of its own whose percentages could be by volume.`,
    expected: "by: volume only beside a label",
    received: "volume",
    hint: "leave out by, or write the label of the liquid instead",
  };
}
