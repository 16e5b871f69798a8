/**
 * The second route to a volume: numbers only, no formula of the shape. Gauss-Legendre with five points on each piece
 * is exact for polynomials to the ninth degree, so that it is exact up to binary rounding on every outline here.
 */
const NODES = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
] as const;

function piece(f: (x: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return NODES.reduce(
    (sum, [node, weight]) =>
      sum + weight * half * (node === 0 ? f(middle) : f(middle - half * node) + f(middle + half * node)),
    0,
  );
}

/** The integral of f over [from, to], in pieces that also break where f has a kink. */
export function integrate(f: (x: number) => number, from: number, to: number, kinks: readonly number[] = []): number {
  const breaks = [from, ...kinks.filter((x) => x > from && x < to).sort((a, b) => a - b), to];
  let sum = 0;
  for (let i = 1; i < breaks.length; i += 1) sum += piece(f, breaks[i - 1]!, breaks[i]!);
  return sum;
}

/** Area of a circle found without pi's formula: horizontal slices, the half-angle substitution taking out the root. */
export function circleByAngle(radius: number): number {
  // x = r sin t: the slice 2 r cos t times dx = r cos t dt.
  const steps = 16;
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const [a, b] = [-Math.PI / 2 + (Math.PI * i) / steps, -Math.PI / 2 + (Math.PI * (i + 1)) / steps];
    sum += piece((t) => 2 * radius * Math.cos(t) * radius * Math.cos(t), a, b);
  }
  return sum;
}
