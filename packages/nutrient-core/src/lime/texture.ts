import { answer, type Outcome, unusable } from "../outcome/outcome.ts";

/** Soils by the feel of their grains, the lightest first: what a pH costs to move rises along this list. */
export const TEXTURES = ["sand", "sandy-loam", "loam", "clay-loam", "clay"] as const;
export type Texture = (typeof TEXTURES)[number];

/** The other classes of the soil triangle, by the neighbour whose rates they take (common practice, no source). */
const ALSO: Readonly<Record<string, Texture>> = {
  sandy: "sand",
  "loamy-sand": "sand",
  loamy: "loam",
  silt: "loam",
  "silt-loam": "loam",
  "sandy-clay-loam": "clay-loam",
  "silty-clay-loam": "clay-loam",
  "sandy-clay": "clay",
  "silty-clay": "clay",
  "heavy-clay": "clay",
};

/** Where a texture stands in the list, from 0. */
export const rankOf = (texture: Texture): number => TEXTURES.indexOf(texture);

/** A texture as a sentence says it. */
export const textureWords = (texture: Texture): string => texture.replace("-", " ");

/**
 * Reads a soil's texture.
 *
 * @param text `sandy-loam`, `Sandy loam` or `sandy loam soil`; also loamy sand (as sand) and silt loam (as loam).
 * @example
 * readTexture("Silt loam")  // => "loam"
 */
export function readTexture(text: string): Outcome<Texture> {
  const written = text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, "-")
    .replace(/-soil$/, "");
  const known = TEXTURES.find((texture) => texture === written) ?? (Object.hasOwn(ALSO, written) && ALSO[written]);
  if (known) return answer(known);
  return unusable({
    code: "choice-unknown",
    path: "",
    message: `"${text}" is not a texture that is known here.`,
    expected: TEXTURES.join(", "),
    received: text === "" ? "nothing" : text,
    hint: "rub a moist pinch: sand is gritty and falls apart, clay rolls into a thread that bends, loam lies between",
  });
}
