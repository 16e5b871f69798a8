import { answer, at, gatherList, type Outcome, unusable } from "../outcome/outcome.ts";
import { term, type WorkingLine } from "../outcome/working.ts";
import { plainText } from "../quantity/number.ts";
import { ofDimension, type QuantityReader } from "../quantity/quantity.ts";

/** An area to feed, and how many plants or metres of row it is, where that was said. */
export interface FedArea {
  readonly squareMetres: number;
  readonly plants?: number;
  readonly rowMetres?: number;
}

/**
 * Reads an area: an area with its unit, two sides, or the shape that a grower paces out.
 *
 * @param text `3 m2`, `1.2 m x 2.4 m`, `2 beds 4 ft x 8 ft`, `circle 60 cm` (its diameter), `row 10 m x 30 cm`
 *   (length by the width that is fed), or `12 plants 40 cm x 50 cm` (the spacing in the row by between rows).
 * @returns Square metres; the working shows how.
 * @example
 * readArea("circle 2 m", readPlainQuantity)  // => { squareMetres: 3.14159... }
 */
export function readArea(text: string, quantity: QuantityReader): Outcome<FedArea> {
  const written = plainText(text);
  const counted = /^(\d{1,4})\s*(beds?|rows?|circles?|plants?)\s+(.+)$/i.exec(written);
  const single = /^(bed|row|circle|round)\s+(.+)$/i.exec(written);
  const count = counted ? Number(counted[1]) : 1;
  const word = (counted?.[2] ?? single?.[1] ?? "").toLowerCase().replace(/s$/, "");
  const measure = counted?.[3] ?? single?.[2] ?? written;
  if (counted && count === 0) return unusable(problem(text, "the count is zero"));
  if (word === "circle" || word === "round") return circle(measure, count, quantity);
  if (word === "row" || word === "plant") return sides(text, measure, count, word, quantity);
  const area = ofDimension(quantity(measure), "area", measure);
  if (!area.ok) return area;
  const squareMetres = count * area.value;
  return answer({ squareMetres }, area.cautions, [
    line("area", count === 1 ? `${term(area.value)} m^2` : `${count} * ${term(area.value)} m^2`, squareMetres),
  ]);
}

function circle(measure: string, count: number, quantity: QuantityReader): Outcome<FedArea> {
  const diameter = ofDimension(quantity(measure), "length", measure);
  if (!diameter.ok) return diameter;
  const squareMetres = (count * Math.PI * diameter.value ** 2) / 4;
  return answer({ squareMetres }, diameter.cautions, [
    line("area of the circle", `${count} * pi * (${term(diameter.value)} m)^2 / 4`, squareMetres),
  ]);
}

function sides(text: string, measure: string, count: number, word: string, quantity: QuantityReader): Outcome<FedArea> {
  const pieces = measure.split(/\s*(?:\bx\b|\*|\bby\b)\s*/i);
  if (pieces.length !== 2) {
    return unusable(
      problem(text, word === "row" ? "a row needs its length and the width that is fed" : "plants need two spacings"),
    );
  }
  const lengths = gatherList(pieces.map((piece) => at("", ofDimension(quantity(piece), "length", piece))));
  if (!lengths.ok) return lengths;
  const [first, second] = lengths.value as [number, number];
  const squareMetres = count * first * second;
  const working = [
    line(
      word === "row" ? "area of the row" : "area of the plants",
      `${count} * ${term(first)} m * ${term(second)} m`,
      squareMetres,
    ),
  ];
  const extra = word === "row" ? { rowMetres: count * first } : { plants: count };
  return answer({ squareMetres, ...extra }, lengths.cautions, working);
}

function line(label: string, expression: string, value: number): WorkingLine {
  return { label, expression, value, unit: "m^2", source: null };
}

function problem(text: string, reason: string) {
  return {
    code: "area-unreadable",
    path: "",
    message: `"${text}" is not an area: ${reason}.`,
    expected: "an area, two sides, a circle, a row, or plants with their spacing",
    received: text,
    hint: 'write for example "3 m2", "4 ft x 8 ft", "circle 60 cm", "row 10 m x 30 cm" or "12 plants 40 cm x 50 cm"',
  };
}
