import type { CivilDate } from "./civil-date.ts";

/** A day's lowest and highest air temperature, °C. */
export interface DailyTemperature {
  readonly date: CivilDate;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
}
