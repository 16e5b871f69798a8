import { raise } from "../../outcome/caution.ts";
import { answer, type Outcome, unusable } from "../../outcome/outcome.ts";
import { NUMBER_PATTERN } from "../../quantity/number.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import { unitNamed } from "../../quantity/unit-name.ts";
import { unitLent } from "./fill-cautions.ts";

/** Metres within which a borrowed size is believed. Our own judgement: it only decides between reading and asking. */
export const BELIEVABLE = {
  bed: [0.2, 30],
  pot: [0.03, 2],
  row: [0.1, 5],
  depth: [0.03, 3],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;

const BARE = new RegExp(`^${NUMBER_PATTERN}$`);
const WITH_UNIT = new RegExp(`^${NUMBER_PATTERN}\\s*(\\D.*)$`);

/**
 * Gives sizes without a unit the one of the next size that has one: `4 x 8 ft x 12 in` is 4 ft x 8 ft x 12 in.
 *
 * In `4 x 8 x 12 in` the 4 could be inches or feet. A size that would come out unlikely small or large is a problem,
 * never a guess; what was read is always said. Nothing is lent backwards, and only lengths are lent.
 *
 * @param parts Each size as it is written, in order.
 * @param believable Smallest and largest metres of a borrowed size.
 */
export function withLentUnits(
  parts: readonly string[],
  believable: readonly [number, number],
  text: string,
  read: QuantityReader,
): Outcome<readonly string[]> {
  const whole = [...parts];
  const lent: string[] = [];
  for (let index = parts.length - 2; index >= 0; index -= 1) {
    const unit = WITH_UNIT.exec(whole[index + 1]!)?.[1];
    if (!BARE.test(whole[index]!) || unit === undefined || unitNamed(unit)?.unit.dimension !== "length") continue;
    const size = `${whole[index]} ${unit}`;
    whole[index] = size;
    lent.push(size);
  }
  if (lent.length === 0) return answer(parts);
  for (const size of lent) {
    const metres = ofDimension(read(size), "length", size);
    if (!metres.ok) return metres;
    if (metres.value >= believable[0] && metres.value <= believable[1]) continue;
    return unusable({
      code: "unit-missing",
      path: "",
      message: `In "${text}", ${size} would be unlikely, and its unit is not written.`,
      expected: "a unit after every size",
      received: text,
      hint: 'write each size with its unit, such as "4 ft x 8 ft x 12 in" or "1.2 m x 2.4 m x 30 cm"',
    });
  }
  return answer(whole, [raise(unitLent, { read: whole.join(", ") })]);
}
