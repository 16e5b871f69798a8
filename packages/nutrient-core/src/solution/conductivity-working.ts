import { term, type WorkingLine } from "../outcome/working.ts";
import type { Conducting } from "./conductivity.ts";
import { entriesOf, IONS, type Ion, type IonAmounts } from "./ion.ts";
import { pairCharge } from "./pairs.ts";

interface Parts {
  readonly litres: number;
  readonly water: IonAmounts;
  /** What a meter reads in the water, mS/cm. */
  readonly metered: number;
  readonly least: Conducting;
  readonly most: Conducting;
  readonly middle: number;
}

/** The arithmetic behind a conductivity: each ion's moles, what pairs, what it adds, and the sum. */
export function conductivityWorking(parts: Parts): WorkingLine[] {
  const { least, most, metered, middle } = parts;
  const same = least === most;
  const lines = same
    ? oneBound(parts, most, "")
    : [...oneBound(parts, least, "at the least: "), ...oneBound(parts, most, "at the most: ")];
  if (!same || metered > 0) {
    const water = metered > 0 ? ` + ${term(metered)} mS/cm` : "";
    lines.push({
      label: same ? "conductivity with the water's own" : "middle of the two",
      expression: same
        ? `${term(most.milliSiemensPerCm)} mS/cm${water}`
        : `(${term(least.milliSiemensPerCm)} mS/cm + ${term(most.milliSiemensPerCm)} mS/cm) / 2${water}`,
      value: middle,
      unit: "mS/cm",
      source: null,
    });
  }
  return lines;
}

function oneBound(parts: Parts, result: Conducting, prefix: string): WorkingLine[] {
  const lines: WorkingLine[] = openLines(result, prefix);
  const sum: string[] = [];
  for (const { ion, concentration, activity, exponent, milliSiemensPerCm } of result.contributions) {
    const { name, charge, equivalentConductivity, source } = IONS[ion];
    lines.push(...concentrationLines(parts, result, prefix, ion, concentration));
    const size = Math.abs(charge);
    lines.push({
      label: `${prefix}${name} conducts`,
      expression: `${size} * ${term(equivalentConductivity)} S cm^2/mol * ${term(concentration * 1000)} mmol/L * ${term(activity)}^${term(exponent)}`,
      value: milliSiemensPerCm,
      unit: "mS/cm",
      source,
    });
    sum.push(`${term(milliSiemensPerCm)} mS/cm`);
  }
  for (const { pair, milliSiemensPerCm } of result.fromPairs) {
    const size = Math.abs(pairCharge(pair.cation, pair.anion));
    lines.push({
      label: `${prefix}${IONS[pair.cation].name} with ${IONS[pair.anion].name} conducts`,
      expression: `${size} * ${term(milliSiemensPerCm / pair.concentration / size)} S cm^2/mol * ${term(pair.concentration * 1000)} mmol/L`,
      value: milliSiemensPerCm,
      unit: "mS/cm",
      source: "phreeqc-databases",
    });
    sum.push(`${term(milliSiemensPerCm)} mS/cm`);
  }
  lines.push({
    label: `${prefix}conductivity at 25 °C`,
    expression: sum.length > 0 ? sum.join(" + ") : "0 mS/cm",
    value: result.milliSiemensPerCm,
    unit: "mS/cm",
    source: "appelo-specific-conductance",
  });
  return lines;
}

/** What a mere grade leaves open is where a range comes from: the ions that each end takes its label to mean. */
function openLines({ dissolved }: Conducting, prefix: string): WorkingLine[] {
  return dissolved.flatMap(({ name, unit, ions, open }) => {
    if (!open) return [];
    const held = entriesOf(ions);
    const said = held.length > 0 ? held.map(([ion]) => IONS[ion].name).join(", ") : "none for certain";
    return [
      {
        label: `${prefix}ions that the analysis of ${name} allows in 1 ${unit} (${said})`,
        expression: held.map(([, moles]) => `${term(moles)} mol/${unit}`).join(" + ") || `0 mol/${unit}`,
        value: held.reduce((sum, [, moles]) => sum + moles, 0),
        unit: `mol/${unit}`,
        source: "ciaaw-2021",
      },
    ];
  });
}

/** Where an ion comes from, and what of it stays free. */
function concentrationLines(
  { litres, water }: Parts,
  { dissolved }: Conducting,
  prefix: string,
  ion: Ion,
  free: number,
): WorkingLine[] {
  const { name } = IONS[ion];
  const sources: string[] = [];
  let total = water[ion] ?? 0;
  for (const { amount, unit, ions } of dissolved) {
    const moles = ions[ion] ?? 0;
    if (moles === 0) continue;
    sources.push(`${term(amount)} ${unit} * ${term(moles)} mol/${unit}`);
    total += (amount * moles) / litres;
  }
  const own = water[ion] === undefined ? "" : ` + ${term(water[ion] * 1000)} mmol/L`;
  const lines: WorkingLine[] = [
    {
      label: `${prefix}${name} put in`,
      expression: sources.length > 0 ? `(${sources.join(" + ")}) / (${term(litres)} L)${own}` : `0 mmol/L${own}`,
      value: total * 1000,
      unit: "mmol/L",
      source: "ciaaw-2021",
    },
  ];
  const lost = total - free;
  if (Math.abs(lost) > 1e-12 * total) {
    lines.push({
      label: `${prefix}${name} left free by pairs, acid and base`,
      expression: `${term(total * 1000)} mmol/L - ${term(lost * 1000)} mmol/L`,
      value: free * 1000,
      unit: "mmol/L",
      source: "phreeqc-databases",
    });
  }
  return lines;
}
