import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Basis } from "./basis.ts";
import type { Delivered } from "./supply.ts";
import { readTarget, type Target } from "./target.ts";

const PER: Readonly<Record<Basis, { readonly words: string; readonly example: string }>> = {
  litre: { words: "per litre of water", example: "ppm, mg/L or mmol/L" },
  squareMetre: { words: "per area", example: "g/m2, kg/ha or lb/1000 sqft" },
  cubicMetre: { words: "per volume of mix", example: "g/m3 or lb/cu yd" },
};

/** Reads a target and holds it to one basis; `place` says what it is for: "a can", "a bed". */
export function readRateTarget(text: string, basis: Basis, place: string): Outcome<Target> {
  const target = readTarget(text);
  if (!target.ok) return target;
  if (target.value.basis !== basis) {
    return unusable({
      code: "target-basis-mismatch",
      path: "",
      message: `"${text}" is ${PER[target.value.basis].words}, but ${place} needs a target ${PER[basis].words}.`,
      expected: `a rate ${PER[basis].words}: ${PER[basis].example}`,
      received: text,
      hint: `write the target in ${PER[basis].example}`,
    });
  }
  const positive = target.value.wanted.find(({ rate }) => !(rate > 0));
  if (positive && target.value.wanted.length === 1) {
    return unusable({
      code: "not-positive",
      path: "",
      message: `"${text}" asks for nothing.`,
      expected: "a rate of more than zero",
      received: text,
      hint: "write how much is wanted, such as N 150 ppm",
    });
  }
  return target;
}

/** Reads what is already there (in the water, in the bed), as rates on the same basis. */
export function readAlready(text: string, basis: Basis): Outcome<Delivered> {
  const read = readTarget(text);
  if (!read.ok) return read;
  if (read.value.basis !== basis) {
    return unusable({
      code: "target-basis-mismatch",
      path: "",
      message: `"${text}" is ${PER[read.value.basis].words}, but what is already there must be ${PER[basis].words}.`,
      expected: `rates ${PER[basis].words}: ${PER[basis].example}`,
      received: text,
      hint: `write the amounts in ${PER[basis].example}`,
    });
  }
  const amounts = Object.fromEntries(read.value.wanted.map(({ nutrient, rate }) => [nutrient, rate]));
  return answer(amounts, read.cautions, read.working);
}
