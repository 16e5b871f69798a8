import { expect, test } from "vitest";
import { readPlainQuantity } from "../quantity/quantity.ts";
import { bed } from "./bed.ts";
import { readBed } from "./read-bed.ts";

const cautionsOf = (request: object) => {
  const input = readBed(request, { shelf: [], quantity: readPlainQuantity });
  const outcome = input.ok ? bed(input.value) : input;
  if (!outcome.ok) throw new Error(outcome.problems[0]!.message);
  return outcome.cautions;
};
const codes = (request: object) => cautionsOf(request).map(({ code }) => code);

test("5 kg of hydrated lime on 3 m2 is a danger, 100 g none", () => {
  const [first] = cautionsOf({ product: "hydrated-lime", given: "5 kg", area: "3 m2" });
  expect(first).toMatchObject({ code: "lime-heavy", severity: "danger" });
  expect(codes({ product: "hydrated-lime", given: "100 g", area: "3 m2" })).not.toContain("lime-heavy");
});

test("manure is judged by the nitrogen that is usable, meal by most of it", () => {
  expect(codes({ product: "cattle-manure-composted", given: "7 kg", area: "3 m2" })).not.toContain("feed-strength");
  expect(codes({ product: "blood-meal", given: "1 kg", area: "3 m2" })).toContain("feed-strength");
});

test("a label that cannot be is doubted before it is weighed by", () => {
  expect(codes({ product: "50-50-50", target: "N 5 g/m2", area: "3 m2" })).toContain("label-over-100");
  expect(codes({ product: "5-10-10", target: "N 5 g/m2", area: "3 m2" })).not.toContain("label-over-100");
});
