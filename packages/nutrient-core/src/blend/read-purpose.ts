import { answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { readNumber } from "../quantity/number.ts";
import { ofDimension } from "../quantity/quantity.ts";
import type { Extent } from "../supply/basis.ts";
import type { Triple } from "../supply/ratio.ts";
import { readArea } from "../supply/read-area.ts";
import type { Stock } from "../supply/read-stock.ts";
import type { ReadingContext } from "../supply/reading-context.ts";
import type { BlendPurpose } from "./blend-input.ts";
import type { BlendRequest } from "./read-blend.ts";
import { readWants } from "./read-wants.ts";

/** What says nothing about each purpose: to take no notice of it would be to guess what was meant. */
const IDLE = {
  ratio: ["water", "area", "volume", "already", "stock", "tank"],
  grade: ["water", "area", "volume", "already", "stock", "tank"],
  target: ["batch"],
} as const;

/** Reads what a blend is for: exactly one of a ratio, a grade and a target, with its batch, water, area or volume. */
export function readBlendPurpose(
  texts: BlendRequest,
  context: ReadingContext,
  stock: Stock | undefined,
): Outcome<BlendPurpose> {
  const kinds = (["ratio", "grade", "target"] as const).filter((kind) => texts[kind] !== undefined);
  const [kind] = kinds;
  if (kinds.length !== 1 || kind === undefined) {
    return unusable({
      code: kinds.length === 0 ? "option-missing" : "options-conflict",
      path: kinds[1] ?? "target",
      message: kinds.length === 0 ? "What the blend is for is not said." : "A blend has one purpose at a time.",
      expected: "one of a ratio, a grade or a target",
      received: kinds.length === 0 ? "none" : kinds.join(" and "),
      hint: 'use --ratio 3-1-2 --batch "1 kg", or --target "N 150 ppm, K 200 ppm" --water "9 L"',
    });
  }
  const idle = IDLE[kind].find((name) => texts[name] !== undefined);
  if (idle) return unusable(notFor(idle, kind, texts[idle]!));
  if (kind !== "target") {
    const batch = texts.batch;
    const parts = gather<{ triple: Triple; batchGrams: number }>({
      triple: at(kind, readTriple(texts[kind]!)),
      batchGrams:
        batch === undefined
          ? unusable(missing("batch", "how much to make, such as 1 kg", '--batch "1 kg"'))
          : at("batch", ofDimension(context.quantity(batch), "mass", batch)),
    });
    if (!parts.ok) return parts;
    const { triple, batchGrams } = parts.value;
    if (kind === "ratio") return answer({ kind, ratio: triple, batchGrams }, parts.cautions, parts.working);
    return triple[0] + triple[1] + triple[2] <= 100
      ? answer({ kind, grade: triple, batchGrams }, parts.cautions, parts.working)
      : unusable(overWhole(texts.grade!));
  }
  const extent = readExtent(texts, context, stock);
  if (!extent.ok) return extent;
  const place = { litre: "a can", squareMetre: "a bed", cubicMetre: "a mix" }[extent.value.basis];
  const target = at("target", readWants(texts.target!, extent.value.basis, place));
  if (!target.ok) return target;
  return answer(
    { kind, wanted: target.value, extent: extent.value },
    [...extent.cautions, ...target.cautions],
    [...extent.working, ...target.working],
  );
}

function readExtent(texts: BlendRequest, { quantity }: ReadingContext, stock: Stock | undefined): Outcome<Extent> {
  const given = (["water", "area", "volume"] as const).filter((name) => texts[name] !== undefined);
  const [name] = given;
  // A tank of stock says itself how much feed it makes.
  if (given.length === 0 && stock) return answer({ basis: "litre", amount: stock.tankLitres * stock.ratio });
  if (given.length !== 1 || name === undefined) {
    return unusable(
      missing(
        given[1] ?? "water",
        "exactly one of water, area and volume",
        '--water "9 L", --area "3 m2" or --volume "2 cu ft"',
      ),
    );
  }
  const written = texts[name]!;
  if (name === "area") {
    const area = at(name, readArea(written, quantity));
    return area.ok
      ? answer({ basis: "squareMetre", amount: area.value.squareMetres }, area.cautions, area.working)
      : area;
  }
  const volume = at(name, ofDimension(quantity(written), "volume", written));
  if (!volume.ok) return volume;
  const extent: Extent =
    name === "water" ? { basis: "litre", amount: volume.value } : { basis: "cubicMetre", amount: volume.value / 1000 };
  return answer(extent, volume.cautions, volume.working);
}

/**
 * Reads a ratio or grade: three numbers for N, P2O5 and K2O, parted by hyphens or colons.
 *
 * @example
 * readTriple("3-1-2")  // => [3, 1, 2]
 */
export function readTriple(written: string): Outcome<Triple> {
  const parts = written
    .trim()
    .split(/\s*[-:–]\s*/)
    .map(readNumber);
  const numbers = parts.flatMap((part) => (part.ok ? [part.value] : []));
  if (parts.length !== 3 || numbers.length !== 3) {
    return unusable({
      code: "ratio-unreadable",
      path: "",
      message: `"${written}" is not three numbers.`,
      expected: "N, P2O5 and K2O, such as 3-1-2",
      received: written,
      hint: "write three numbers with hyphens between them; 0 where none is wanted",
    });
  }
  return answer([numbers[0]!, numbers[1]!, numbers[2]!]);
}

function notFor(name: string, kind: string, received: string) {
  const remedy =
    kind === "target" ? "say how much water, area or volume of mix it is for" : "write a target in ppm or g/m2 instead";
  return {
    code: "options-conflict",
    path: name,
    message: `A ${kind} takes no ${name}.`,
    expected: kind === "target" ? "water, area or volume" : "a batch, such as 1 kg",
    received,
    hint: `leave out --${name}, or ${remedy}`,
  };
}

function missing(path: string, expected: string, hint: string) {
  return {
    code: "option-missing",
    path,
    message: `${expected.charAt(0).toUpperCase()}${expected.slice(1)} is needed.`,
    expected,
    received: "nothing",
    hint: `add ${hint}`,
  };
}

function overWhole(written: string) {
  return {
    code: "label-over-whole",
    path: "grade",
    message: `A grade of ${written} is more than the whole batch.`,
    expected: "three percentages that add to at most 100",
    received: written,
    hint: "check the numbers, or use --ratio when only their proportion matters",
  };
}
