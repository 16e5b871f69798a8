import { type Caution, raise } from "../../outcome/caution.ts";
import { type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import { TRADE_POT_LITRES } from "../shape/trade-pot.ts";
import { gallonPot } from "./fill-cautions.ts";

/** The depth or height comes last, and the sizes before it may change places. */
const SAYS_ITS_SIDES: ReadonlySet<string> = new Set([
  "rectangle",
  "round",
  "round pot",
  "square pot",
  "fabric pot",
  "trough",
]);

/** `5-gallon`, `8-ft`. */
const HYPHEN = /(\d)-(?=[a-z])/gi;

/** The sizes as they are written; where their order leaves no doubt, a word such as "deep" may stand after each. */
export function partsOf(sizes: string, shape: string): string[] {
  if (sizes === "") return [];
  const parts = sizes.replace(HYPHEN, "$1 ").split(/\s*(?:x|by)\s*(?=[\d.])/i);
  if (!SAYS_ITS_SIDES.has(shape) || parts.length === 1) return parts;
  const last = parts.length - 1;
  return parts.map((part, index) =>
    part.replace(index === last ? /\s+(?:deep|high|tall)$/i : /\s+(?:wide|long|across)$/i, ""),
  );
}

/** A length in metres; what has no unit is asked for as one. */
export function lengthOf(part: string, read: QuantityReader): Outcome<number> {
  const length = ofDimension(read(part), "length", part);
  if (length.ok) return length;
  const hint = `write the unit too, such as "${part} m", "${part} cm", "${part} ft" or "${part} in"`;
  return unusable(...length.problems.map((one) => (one.code === "unit-missing" ? { ...one, hint } : one)));
}

/** Bare gallons on a pot: the trade's are smaller. */
export function gallonCautions(size: string): Caution[] {
  const number = /^([\d.]+)\s*gal(?:lon)?s?$/i.exec(size)?.[1];
  if (number === undefined) return [];
  return [raise(gallonPot, { written: size, trade: number, tradeLitres: TRADE_POT_LITRES[number] ?? 0 })];
}
