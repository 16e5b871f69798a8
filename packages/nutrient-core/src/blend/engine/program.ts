/**
 * A convex program in scaled units. Made small:  1/2 |F z - aim|^2  +  1/2 (distance of soft rows from their ranges)^2
 * +  linear'z;  kept: the range of every z and of every hard row. Any part may be empty.
 *
 * A soft row is a row with give: its dial is the point y of the range that is aimed at, and the residual G z - y is what
 * the price of y answers to. A hard row has no give, its dial is G z itself. So the board's own cell is 1 for a soft row
 * and 0 for a hard one, and nothing else differs.
 */
export interface Program {
  /** Number of amounts z. */
  readonly columns: number;
  /** F, row-major, one row per entry of `aim`. */
  readonly fit: Float64Array;
  readonly aim: Float64Array;
  readonly linear: Float64Array;
  /** G, row-major. */
  readonly rows: Float64Array;
  /** Per row: 1 for a soft row, 0 for a hard one. */
  readonly give: Float64Array;
  /** Ranges: of the amounts first, then of the rows. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** How many times its doubt a cell must be to count; see `Dials`. */
  readonly sure: number;
  /** A feasible point to start from. */
  readonly start: Float64Array;
}
