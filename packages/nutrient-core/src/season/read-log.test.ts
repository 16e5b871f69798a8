import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { effectiveEntries, entriesByPlanting, type LogEntry } from "./log.ts";
import { readLogEntry } from "./read-log.ts";
import { day } from "./testing/demo.ts";
import { EXAMPLE_LOG } from "./testing/example-plan.ts";

describe("a line of the record", () => {
  test.each(EXAMPLE_LOG.map((entry) => [entry.kind, entry] as const))("%s: there and back through JSON", (_, entry) => {
    const read = readLogEntry(JSON.parse(JSON.stringify(entry)));
    expect(read).toMatchObject({ ok: true, value: entry });
  });

  test.each([
    [{ kind: "fed", id: "1", date: "2027-06-01", cans: 0, canLitres: 10, amounts: [], nutrientGrams: {} }, "cans"],
    [
      {
        kind: "fed",
        id: "1",
        date: "2027-06-01",
        cans: 1,
        canLitres: 10,
        amounts: [{ product: "a", massGrams: -1 }],
        nutrientGrams: {},
      },
      "amounts[0].massGrams",
    ],
    [{ kind: "fed", id: "1", date: "2027-06-01", cans: 1, canLitres: 10, amounts: [] }, "nutrientGrams"],
    [{ kind: "rained-out", id: "1", date: "2027-02-29" }, "date"],
    [{ kind: "rained-out", id: "", date: "2027-06-01" }, "id"],
    [{ kind: "observed", id: "1", date: "2027-06-01", milestone: "moon" }, "milestone"],
    [{ kind: "harvested", id: "1", date: "2027-06-01", massGrams: Number.NaN }, "massGrams"],
    [{ kind: "undone", id: "1", date: "2027-06-01" }, "undoes"],
    [{ kind: "danced", id: "1", date: "2027-06-01" }, "kind"],
    [{ kind: "rained-out", id: "1", date: "2027-06-01", mood: "good" }, "mood"],
    ["fed", ""],
  ])("%j is told at %s", (line, path) => {
    const read = readLogEntry(line);
    expect(read.ok).toBe(false);
    expect(!read.ok && read.problems.map((problem) => problem.path)).toContain(path);
  });
});

test("a line that names no planting belongs to all, in its place", () => {
  const entry = (id: string, planting?: string) => ({ id, ...(planting === undefined ? {} : { planting }) });
  const lines = entriesByPlanting([entry("1", "a"), entry("2"), entry("3", "b"), entry("4", "moon")], ["a", "b"]);
  expect([...lines].map(([name, own]) => [name, own.map(({ id }) => id)])).toEqual([
    ["a", ["1", "2"]],
    ["b", ["2", "3"]],
  ]);
});

describe("undoing", () => {
  const entry = (id: string): LogEntry => ({ kind: "rained-out", id, date: day("2027-06-01") });
  const undo = (id: string, undoes: string): LogEntry => ({ kind: "undone", id, date: day("2027-06-02"), undoes });
  const ids = (log: readonly LogEntry[]): string[] => effectiveEntries(log).map(({ id }) => id);

  test("takes a line back; undoing the undo brings it back; an unknown line changes nothing", () => {
    expect(ids([entry("a"), entry("b"), undo("c", "a")])).toEqual(["b"]);
    expect(ids([entry("a"), undo("b", "a"), undo("c", "b")])).toEqual(["a"]);
    expect(ids([entry("a"), undo("b", "a"), undo("c", "b"), undo("d", "c")])).toEqual([]);
    expect(ids([entry("a"), undo("b", "moon")])).toEqual(["a"]);
  });

  test("property: a chain of so many undos leaves the line when it is even", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 }), (length) => {
        const chain = Array.from({ length }, (_, index) => undo(`u${index}`, index === 0 ? "a" : `u${index - 1}`));
        expect(ids([entry("a"), ...chain])).toEqual(length % 2 === 0 ? ["a"] : []);
      }),
    );
  });
});
