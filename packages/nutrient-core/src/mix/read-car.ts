import { answer, type Outcome, unusable } from "../outcome/outcome.ts";
import type { Problem } from "../outcome/problem.ts";
import type { QuantityReader } from "../quantity/quantity.ts";
import type { Car } from "./mix-input.ts";

/** Reads what a car takes: `400 kg`, `600 L` or both, parted by a comma. */
export function readCar(written: string, quantity: QuantityReader): Outcome<Car> {
  let car: { kilograms?: number; litres?: number } = {};
  for (const part of written.split(/\s*,(?!\d)\s*/)) {
    const read = quantity(part);
    if (!read.ok) return read;
    const twice = { mass: car.kilograms, volume: car.litres }[read.value.dimension as "mass" | "volume"] !== undefined;
    if (twice) return unusable(carTwice(written));
    if (read.value.dimension === "mass") car = { ...car, kilograms: read.value.value / 1000 };
    else if (read.value.dimension === "volume") car = { ...car, litres: read.value.value };
    else {
      return unusable({
        code: "dimension-mismatch",
        path: "",
        message: `"${part}" is neither a mass nor a volume.`,
        expected: "what the car takes, such as 400 kg, 600 L",
        received: written,
        hint: 'write "400 kg, 600 L"',
      });
    }
  }
  return answer(car);
}

function carTwice(written: string): Problem {
  return {
    code: "car-unreadable",
    path: "",
    message: `"${written}" says twice what the car takes.`,
    expected: "one mass, one volume, or one of each",
    received: written,
    hint: 'write "400 kg, 600 L"',
  };
}
