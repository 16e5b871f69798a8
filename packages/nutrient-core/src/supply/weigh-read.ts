import { answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../quantity/quantity.ts";
import { METRIC_SPOONS, type SpoonSet, US_SPOONS } from "./spoons.ts";
import type { Measures } from "./weigh-measures.ts";

/** What there is to measure with, as texts. */
export interface MeasureTexts {
  readonly scale?: string | undefined;
  readonly spoons?: string | undefined;
  readonly syringe?: string | undefined;
  readonly scoop?: string | undefined;
}

/**
 * Reads what there is to measure with.
 *
 * @param texts The scale's step (`1 g`), the set of spoons (`metric` or `us`), the syringe's step (`0.5 mL`), the
 *   scoop's volume (`25 mL`).
 * @returns The measures, or undefined when none was named.
 * @example
 * readMeasures({ scale: "1 g" }, readPlainQuantity)  // => { scaleStepGrams: 1 }
 */
export function readMeasures(texts: MeasureTexts, quantity: QuantityReader): Outcome<Measures | undefined> {
  const { scale, spoons, syringe, scoop } = texts;
  if ([scale, spoons, syringe, scoop].every((text) => text === undefined)) return answer(undefined);
  const parts = gather<{
    step: number | undefined;
    spoons: SpoonSet | undefined;
    syringe: number | undefined;
    scoop: number | undefined;
  }>({
    step: scale === undefined ? answer(undefined) : at("scale", ofDimension(quantity(scale), "mass", scale)),
    spoons: spoons === undefined ? answer(undefined) : readSpoons(spoons),
    syringe:
      syringe === undefined ? answer(undefined) : at("syringe", ofDimension(quantity(syringe), "volume", syringe)),
    scoop: scoop === undefined ? answer(undefined) : at("scoop", ofDimension(quantity(scoop), "volume", scoop)),
  });
  if (!parts.ok) return parts;
  const read = parts.value;
  return answer(
    {
      ...(read.step === undefined ? {} : { scaleStepGrams: read.step }),
      ...(read.spoons === undefined ? {} : { spoons: read.spoons }),
      // Litres to millilitres.
      ...(read.syringe === undefined ? {} : { syringeStepMillilitres: read.syringe * 1000 }),
      ...(read.scoop === undefined ? {} : { scoopMillilitres: read.scoop * 1000 }),
    },
    parts.cautions,
  );
}

function readSpoons(written: string): Outcome<SpoonSet> {
  const name = written.trim().toLowerCase();
  if (name === "metric") return answer(METRIC_SPOONS);
  if (name === "us") return answer(US_SPOONS);
  return unusable({
    code: "choice-unknown",
    path: "spoons",
    message: `"${written}" is not a set of spoons that is known here.`,
    expected: "metric (5 mL teaspoon) or us (4.93 mL teaspoon)",
    received: written,
    hint: "write --spoons metric or --spoons us",
  });
}
