import type { Mound } from "./mound.ts";

/** A point of a section, in metres: across from the middle, up from what the container stands on. */
export type SectionPoint = readonly [acrossMetres: number, upMetres: number];

/** A bed, pot or ridge cut across, for a drawing to scale. Uneven depths are drawn at their mean. */
export interface Section {
  /** The mix, around its edge. */
  readonly mix: readonly SectionPoint[];
  /** The walls and floor, open above; empty for a ridge. */
  readonly container: readonly SectionPoint[];
  /** What lies under the mix: drainage or wood; empty for none. */
  readonly layer: readonly SectionPoint[];
  /** Of the level surface, without a mound. */
  readonly levelMetres: number;
  /** Of the highest point. */
  readonly crestMetres: number;
}

/** So many straight pieces draw a rounded back. */
const PIECES = 24;

/** The upper edge of a mound, from the right to the left, at `level`. */
function back({ heightMetres, profile, crownShare }: Mound, halfWidth: number, level: number): SectionPoint[] {
  const top = level + heightMetres;
  if (profile === "triangle") return [[0, top]];
  if (profile === "trapezoid") {
    return [
      [halfWidth * crownShare, top],
      [-halfWidth * crownShare, top],
    ];
  }
  return Array.from({ length: PIECES - 1 }, (_, index): SectionPoint => {
    const x = 1 - (2 * (index + 1)) / PIECES;
    return [halfWidth * x, level + heightMetres * (1 - x * x)];
  });
}

/**
 * The section of a container with sloping or upright walls.
 *
 * @param topWidth At the rim, metres.
 * @param bottomWidth At its floor, metres.
 * @param height Floor to rim, metres.
 * @param from Where the mix begins above the floor.
 * @param to Where it ends, without its mound.
 */
export function containerSection(
  topWidth: number,
  bottomWidth: number,
  height: number,
  from: number,
  to: number,
  mound?: Mound,
): Section {
  const half = (up: number): number => (bottomWidth + ((topWidth - bottomWidth) * up) / height) / 2;
  const [low, high] = [half(from), half(to)];
  return {
    mix: [[-low, from], [low, from], [high, to], ...(mound ? back(mound, high, to) : []), [-high, to]],
    container: [
      [-topWidth / 2, height],
      [-bottomWidth / 2, 0],
      [bottomWidth / 2, 0],
      [topWidth / 2, height],
    ],
    layer:
      from > 0
        ? [
            [-bottomWidth / 2, 0],
            [bottomWidth / 2, 0],
            [low, from],
            [-low, from],
          ]
        : [],
    levelMetres: to,
    crestMetres: to + (mound?.heightMetres ?? 0),
  };
}

/** The section of a free-standing ridge. */
export function ridgeSection(baseWidth: number, mound: Mound): Section {
  const half = baseWidth / 2;
  return {
    mix: [[-half, 0], [half, 0], ...back(mound, half, 0)],
    container: [],
    layer: [],
    levelMetres: 0,
    crestMetres: mound.heightMetres,
  };
}
