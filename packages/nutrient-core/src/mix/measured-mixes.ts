/** A mix as it was measured: shares by volume, percent of the container's volume. */
export interface MeasuredMix {
  readonly shares: Readonly<Record<string, number>>;
  readonly dryKilogramsPerLitre: number;
  readonly totalPoresPercent: number;
  readonly airPercent: number;
  readonly waterPercent: number;
}

/** The height of the containers they were measured in: 4 inches. */
export const MEASURED_HEIGHT_METRES: number = 4 * 0.0254;

/**
 * Mixes measured in 4-inch containers. Source: arkansas-unit-7-tables, Table 1.
 *
 * The row of 70 peat to 30 rice hulls is left out: printed as 20 % air and 85 % water, it holds more than there is.
 * None of them has compost in it.
 */
export const MEASURED_MIXES: readonly MeasuredMix[] = [
  mix({ peat: 0.8, perlite: 0.2 }, 0.108, 79, 10, 68),
  mix({ peat: 0.7, perlite: 0.3 }, 0.101, 80, 11, 69),
  mix({ peat: 0.8, bark: 0.2 }, 0.09, 83, 13, 70),
  mix({ peat: 0.8, "rice hulls": 0.2 }, 0.098, 83, 12, 72),
  mix({ coir: 0.8, perlite: 0.2 }, 0.09, 81, 8, 73),
  mix({ peat: 0.5, bark: 0.5 }, 0.13, 80, 22, 58),
  mix({ coir: 0.5, bark: 0.5 }, 0.14, 78, 13, 65),
  mix({ peat: 0.5, vermiculite: 0.25, perlite: 0.25 }, 0.11, 86, 24, 62),
  mix({ coir: 0.5, vermiculite: 0.25, perlite: 0.25 }, 0.1, 77, 12, 65),
  mix({ peat: 0.4, vermiculite: 0.3, bark: 0.3 }, 0.16, 82, 28, 54),
  mix({ coir: 0.4, vermiculite: 0.3, bark: 0.3 }, 0.12, 84, 21, 63),
];

function mix(
  shares: MeasuredMix["shares"],
  dryKilogramsPerLitre: number,
  totalPoresPercent: number,
  airPercent: number,
  waterPercent: number,
): MeasuredMix {
  return { shares, dryKilogramsPerLitre, totalPoresPercent, airPercent, waterPercent };
}
