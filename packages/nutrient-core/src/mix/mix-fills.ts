import { term, type WorkingLine } from "../outcome/working.ts";
import type { Fill } from "./fill/fill.ts";
import type { FilledSpace } from "./mix-result.ts";
import type { Measure } from "./shape/measure.ts";

export interface FilledSpaces {
  readonly volumeLitres: number;
  readonly fills: readonly FilledSpace[];
  /** Area and plants of all, where every fill's are known. */
  readonly totals: { readonly areaSquareMetres?: number; readonly plants?: number };
  readonly working: readonly WorkingLine[];
}

/** The spaces together, with their working: each shape's own arithmetic times its count, then the sum. */
export function fillSpaces(fills: readonly Fill[]): FilledSpaces {
  const working: WorkingLine[] = [];
  const all = (fill: Fill, what: string, measure: Measure, unit: string): number => {
    const value = fill.count * measure.value;
    working.push({
      label: `${what} of ${fill.count} x ${fill.label}`,
      expression: fill.count === 1 ? measure.expression : `${fill.count} * (${measure.expression})`,
      value,
      unit,
      source: null,
    });
    return value;
  };
  const spaces = fills.map(
    (fill): FilledSpace => ({
      written: fill.written,
      label: fill.label,
      count: fill.count,
      volumeLitres: all(fill, "volume", fill.volume, "L"),
      ...(fill.area ? { areaSquareMetres: all(fill, "area", fill.area, "m^2") } : {}),
      ...(fill.plants ? { plants: all(fill, "plants", fill.plants, "") } : {}),
    }),
  );
  const volumeLitres = spaces.reduce((sum, space) => sum + space.volumeLitres, 0);
  if (spaces.length > 1) {
    working.push({
      label: "space to fill",
      expression: spaces.map((space) => `${term(space.volumeLitres)} L`).join(" + "),
      value: volumeLitres,
      unit: "L",
      source: null,
    });
  }
  const total = (values: readonly (number | undefined)[]): number | undefined =>
    values.every((value) => value !== undefined) ? values.reduce<number>((sum, value) => sum + value, 0) : undefined;
  const areaSquareMetres = total(spaces.map((space) => space.areaSquareMetres));
  const plants = total(spaces.map((space) => space.plants));
  return {
    volumeLitres,
    fills: spaces,
    totals: {
      ...(areaSquareMetres === undefined ? {} : { areaSquareMetres }),
      ...(plants === undefined ? {} : { plants }),
    },
    working,
  };
}
