import { expect, test } from "vitest";
import { shown, shownRange } from "./number.ts";

test("a number is cut to its digits, a whole one never", () => {
  expect(shown(0)).toBe("0");
  expect(shown(9.4635)).toBe("9.46");
  expect(shown(0.0123456)).toBe("0.0123");
  expect(shown(1234.5)).toBe("1235");
  expect(shown(2.5001, 2)).toBe("2.5");
});

test("a range is rounded outwards", () => {
  expect(shownRange(0.246, 0.541, 2)).toBe("0.24 to 0.55");
  expect(shownRange(0.25, 0.54, 2)).toBe("0.25 to 0.54");
  expect(shownRange(0, 9.12, 2)).toBe("0 to 9.2");
  expect(shownRange(1234.5, 116.2, 2)).toBe("1234 to 117");
});
