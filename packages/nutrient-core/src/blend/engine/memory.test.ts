import { expect, test } from "vitest";
import { copyFloats, startMemory, takeFloats } from "./memory.ts";

test("pieces are empty, apart from one another, and stay so when the block is used up", () => {
  startMemory();
  const pieces = Array.from({ length: 200 }, (_, k) => takeFloats(100).fill(k));
  const large = takeFloats(100_000).fill(-1);
  expect(large.length).toBe(100_000);
  pieces.forEach((piece, k) => {
    expect(piece.length).toBe(100);
    expect(piece.every((x) => x === k)).toBe(true);
  });
  expect(takeFloats(0).length).toBe(0);
  expect(takeFloats(7).every((x) => x === 0)).toBe(true);
});

test("a new start hands out the same memory again, emptied", () => {
  startMemory();
  const first = takeFloats(8).fill(3);
  startMemory();
  const again = takeFloats(8);
  expect(again.every((x) => x === 0)).toBe(true);
  expect(again.buffer).toBe(first.buffer);
  expect(again.byteOffset).toBe(first.byteOffset);
  // A block that is filled to its last number is not left for another.
  const rest = takeFloats(again.buffer.byteLength / 8 - 8);
  expect(rest.buffer).toBe(again.buffer);
  expect(takeFloats(1).buffer).not.toBe(again.buffer);
});

test("a copy is its own", () => {
  startMemory();
  const from = takeFloats(3).fill(2);
  const copy = copyFloats(from);
  from[0] = 5;
  expect([...copy]).toEqual([2, 2, 2]);
});

test("vectors of the same shape are the same pieces; of another shape they are others, apart from one another", () => {
  const take = (...counts: number[]): Float64Array[] => {
    startMemory();
    return counts.map((count, k) => takeFloats(count).fill(k + 1));
  };
  const first = take(3, 4, 5);
  const again = take(3, 4, 5);
  again.forEach((piece, k) => {
    expect(piece).toBe(first[k]);
  });
  // As long as before but elsewhere, and in the same place but of another length.
  for (const counts of [
    [2, 4, 5],
    [2, 5, 5],
    [7, 5],
    [3, 4, 6],
  ]) {
    const pieces = take(...counts);
    pieces.forEach((piece, k) => {
      expect([...piece]).toEqual(new Array<number>(counts[k]!).fill(k + 1));
    });
  }
  // A block that is used up takes its pieces with it.
  const before = take(3, 4, 5);
  takeFloats(before[0]!.buffer.byteLength / 8);
  const after = take(3, 4, 5);
  expect(after[0]).not.toBe(before[0]);
  after.forEach((piece, k) => {
    expect([...piece]).toEqual(new Array<number>(before[k]!.length).fill(k + 1));
  });
});
