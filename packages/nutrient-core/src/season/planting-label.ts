import type { Planting } from "./season.ts";

/** More names than this are counted rather than said. */
const NAMED = 4;

/**
 * What a planting is called where people read it: all the places that are fed together, since its own name, by which
 * the record knows it, is that of the first place only.
 *
 * @returns Up to four places by name; of more the first three, and how many others there are.
 * @example
 * plantingLabel({ name: "pots", places: [{ name: "pots" }, { name: "bed" }] })  // => "pots + bed"
 */
export function plantingLabel({ name, places }: LabelledPlanting): string {
  if (places.length <= 1) return name;
  return inShort(
    places.map((place) => place.name),
    " + ",
  );
}

/** Of a planting only what it is called by. */
interface LabelledPlanting extends Pick<Planting, "name"> {
  readonly places: readonly Pick<Planting["places"][number], "name">[];
}

/** Names parted by a sign; of very many the first ones, and how many more there are. */
export function inShort(names: readonly string[], sign: string): string {
  if (names.length <= NAMED) return names.join(sign);
  return `${names.slice(0, NAMED - 1).join(sign)} and ${names.length - NAMED + 1} more`;
}
