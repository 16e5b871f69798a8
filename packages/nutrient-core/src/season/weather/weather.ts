import type { CivilDate } from "../civil-date.ts";
import type { DailyTemperature } from "../degree-days.ts";

/** Daily temperatures as a file gives them, in order of date, with what is missing. */
export interface WeatherRecord {
  readonly rows: readonly DailyTemperature[];
  /** Days between the first and the last row that have no usable minimum and maximum, as spans. */
  readonly gaps: readonly Gap[];
  /** The station's id, where the file names one. */
  readonly station?: string;
}

/** Missing days, first and last. */
export interface Gap {
  readonly from: CivilDate;
  readonly to: CivilDate;
  readonly days: number;
}
