import { term, type WorkingLine } from "../outcome/working.ts";
import type { Product } from "../product/product.ts";
import { asTriple, type Triple } from "../supply/ratio.ts";
import type { BlendInput } from "./blend-input.ts";

const NAMES = ["N", "P2O5", "K2O"] as const;

/**
 * The classical square for two products, as working: the strengths on the left, the wanted one in the middle, the
 * differences across give the parts.
 *
 *     strength a        c - b parts of the first
 *              \      /
 *              wanted c
 *              /      \
 *     strength b        a - c parts of the second
 *
 * It applies where two products make a batch without filler and the wanted lies between them. For a grade the
 * strengths are percent of the batch; for a ratio they are parts of the plant food (N + P2O5 + K2O), and the parts of
 * plant food become parts of product by dividing by what each product holds of it.
 *
 * @param massGrams The blend's own amounts, for which this is a second way.
 * @returns Lines whose values are those amounts; empty where the square does not apply.
 */
export function squareMethod(input: BlendInput, massGrams: readonly number[], batchGrams: number): WorkingLine[] {
  const { products, purpose } = input;
  if (purpose.kind === "target" || massGrams.length !== 2 || massGrams.some((mass) => !(mass > 0))) return [];
  if (massGrams[0]! + massGrams[1]! < batchGrams * (1 - 1e-9)) return [];
  const triples = products.map((product) => asTriple(product.composition)) as [Triple, Triple];
  const wanted = purpose.kind === "grade" ? purpose.grade : purpose.ratio;
  const holds = purpose.kind === "grade" ? ([1, 1] as const) : ([sum(triples[0]), sum(triples[1])] as const);
  const whole = purpose.kind === "grade" ? 100 : sum(wanted);
  const [first, second] = triples.map((triple, i) => triple.map((part) => part / holds[i]!)) as [number[], number[]];
  const gaps = NAMES.map((_, i) => Math.abs(first![i]! - second![i]!));
  const i = gaps.indexOf(Math.max(...gaps));
  const a = first![i]!;
  const b = second![i]!;
  const c = wanted[i]! / whole;
  if (!(c >= Math.min(a, b) && c <= Math.max(a, b)) || a === b) return [];
  const parts = [Math.abs(c - b), Math.abs(a - c)] as const;
  return products.map((product, j) => {
    const across = j === 0 ? `abs(${term(c)} - ${term(b)})` : `abs(${term(a)} - ${term(c)})`;
    const other = j === 0 ? `abs(${term(a)} - ${term(c)})` : `abs(${term(c)} - ${term(b)})`;
    const own = parts[j]! / holds[j]!;
    const all = parts[0] / holds[0] + parts[1] / holds[1];
    return {
      label: `${product.name} by the square, from ${NAMES[i]} ${per(purpose.kind)}`,
      expression: `${term(batchGrams)} g * (${across} / ${term(holds[j]!)}) / (${across} / ${term(holds[j]!)} + ${other} / ${term(holds[1 - j]!)})`,
      value: (batchGrams * own) / all,
      unit: "g",
      source: null,
    };
  });
}

const per = (kind: "grade" | "ratio"): string => (kind === "grade" ? "in the product" : "in the plant food");
const sum = (triple: Triple): number => triple[0] + triple[1] + triple[2];

/** What two products can reach: every mixture of them lies between the ratio of the one and that of the other. */
export interface ReachableSegment {
  /** N:P2O5:K2O of the first and of the second product, as parts of their plant food (they add to 1). */
  readonly from: Triple;
  readonly to: Triple;
}

/** The reachable ratios of two products; undefined for more, or where one holds no N, P2O5 or K2O. */
export function reachableSegment(products: readonly Product[]): ReachableSegment | undefined {
  if (products.length !== 2) return undefined;
  const parts = products.map(({ composition }) => {
    const triple = asTriple(composition);
    const all = sum(triple);
    return all > 0 ? (triple.map((part) => part / all) as unknown as Triple) : undefined;
  });
  const [from, to] = parts;
  return from && to ? { from, to } : undefined;
}
