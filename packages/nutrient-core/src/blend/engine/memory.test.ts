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
