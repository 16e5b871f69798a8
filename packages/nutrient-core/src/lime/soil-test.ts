/**
 * The rules that turn a laboratory's test into an amount of lime. Each belongs to its laboratory: another one's rule
 * asks twice as much for the same figure.
 */
export const TEST_METHODS = ["sikora", "mehlich-formula", "mehlich-table"] as const;
export type TestMethod = (typeof TEST_METHODS)[number];

/** A soil test: the pH of soil in a buffer, or the acidity that the laboratory worked out from it. */
export type SoilTest =
  | { readonly method: "sikora"; readonly bufferPh: number }
  | {
      readonly method: "mehlich-formula";
      /** Where the buffer's pH was given rather than the acidity. */
      readonly bufferPh?: number;
      /** Milliequivalents in 100 cubic centimetres of soil. */
      readonly acidity: number;
    }
  | {
      readonly method: "mehlich-table";
      /** Milliequivalents in 100 grams of soil. */
      readonly acidity: number;
    };

/** The pH of the Mehlich buffer before any soil, and the soil pH at which no acidity is left (ncda-lime-formula). */
export const MEHLICH_BUFFER_PH = 6.6;
/** Down to here the buffer falls in a straight line with the acid (maine-mehlich-buffer). */
export const MEHLICH_LINEAR_FROM_PH = 3;
/** Milliequivalents in 100 cubic centimetres for one unit of the buffer's pH (ncda-lime-formula). */
export const MEHLICH_ACIDITY_PER_UNIT = 4;

/**
 * The acidity of a soil by the pH of the Mehlich buffer with it.
 *
 * @param bufferPh 3.0 to 6.6.
 * @returns Milliequivalents in 100 cubic centimetres of soil. Source: ncda-lime-formula.
 * @example
 * mehlichAcidity(6.3)  // => 1.2
 */
export function mehlichAcidity(bufferPh: number): number {
  return (MEHLICH_BUFFER_PH - bufferPh) * MEHLICH_ACIDITY_PER_UNIT;
}
