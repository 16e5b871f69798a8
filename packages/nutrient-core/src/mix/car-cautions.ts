import type { CautionKind } from "../outcome/caution.ts";

const number = (value: number): string => String(Number(value.toPrecision(3)));

/** A car was stated, and its trips cannot be counted. */
export const carUntold: CautionKind<{
  readonly reason: "no packs" | "weight unknown" | "too many packs";
  readonly ingredients: readonly string[];
  /** What mass alone demands of the car; 0 where that is not known. */
  readonly atLeastTrips: number;
}> = {
  code: "car-trips-unknown",
  severity: "note",
  source: "common-practice",
  sentence: ({ reason, ingredients, atLeastTrips }) => {
    const why = {
      "no packs": `no pack is bought that a car could carry: give sizes with --pack "${ingredients[0] ?? "compost"} 50 L"`,
      "weight unknown": `the weight of ${ingredients.join(", ")} is not known: write it, such as "50 L weighs 20 kg"`,
      "too many packs": "there are more than 10,000 packs: have them brought",
    }[reason];
    const bound =
      atLeastTrips > 0
        ? ` By weight alone it takes at least ${atLeastTrips} ${atLeastTrips === 1 ? "trip" : "trips"}.`
        : "";
    return `How many trips the car makes cannot be told: ${why}.${bound}`;
  },
};

/** A single pack is more than the car takes. */
export const carTooSmall: CautionKind<{ readonly packs: readonly string[]; readonly takes: string }> = {
  code: "car-too-small",
  severity: "caution",
  source: "common-practice",
  sentence: ({ packs, takes }) =>
    `The car takes ${takes}, less than one pack of ${packs.join("; ")}. Buy smaller packs, or have them brought; never load it beyond what its papers allow.`,
};

/** Some of what is needed is in none of the trips. */
export const carPartly: CautionKind<{ readonly ingredients: readonly string[] }> = {
  code: "car-trips-partial",
  severity: "note",
  source: "common-practice",
  sentence: ({ ingredients }) =>
    `The trips count packs only; not in them: ${ingredients.join(", ")} (no pack known, or brought loose).`,
};

/** What a car takes, in words. */
export function carTakes(kilograms: number | undefined, litres: number | undefined): string {
  return [
    ...(kilograms === undefined ? [] : [`${number(kilograms)} kg`]),
    ...(litres === undefined ? [] : [`${number(litres)} L`]),
  ].join(" and ");
}
