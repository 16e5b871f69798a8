import { distance } from "fastest-levenshtein";
import { type MeasureSystem, UNITS, type UnitDefinition } from "./definitions.ts";

/** What a written unit name means; `assumed` when a bare shared name was read as the US measure. */
export interface NamedUnit {
  readonly unit: UnitDefinition;
  readonly assumed: boolean;
}

const SYSTEM_WORDS: Readonly<Record<string, MeasureSystem>> = {
  us: "US",
  "u.s.": "US",
  american: "US",
  imperial: "imperial",
  imp: "imperial",
  "imp.": "imperial",
  uk: "imperial",
  british: "imperial",
  metric: "metric",
  australian: "Australian",
  au: "Australian",
};

// "long ton" and "short ton" name one unit each, whatever stands before them.
const OWN_SYSTEM = new Set(["short ton", "short tons", "long ton", "long tons", "liquid quart", "liquid quarts"]);

let byName: Map<string, NamedUnit> | undefined;

function names(): Map<string, NamedUnit> {
  if (byName) return byName;
  const map = new Map<string, NamedUnit>();
  for (const unit of UNITS) {
    for (const name of [unit.name, unit.plural, ...unit.names]) map.set(name.toLowerCase(), { unit, assumed: false });
    if (!unit.shared) continue;
    const { system, names: shared } = unit.shared;
    for (const name of shared) {
      for (const [word, wordSystem] of Object.entries(SYSTEM_WORDS)) {
        if (wordSystem !== system) continue;
        map.set(`${word} ${name}`, { unit, assumed: false });
        map.set(`${name} (${word})`, { unit, assumed: false });
      }
      if (OWN_SYSTEM.has(name)) map.set(name, { unit, assumed: false });
      else if (system === "US") map.set(name, { unit, assumed: true });
    }
  }
  byName = map;
  return map;
}

/** Finds the unit that a name means, whatever its case and spacing; undefined when there is none. */
export function unitNamed(text: string): NamedUnit | undefined {
  // Mg and ML are a million grams and litres to some, thousandths to others: neither is guessed.
  if (/^M[gGlL]$/.test(text.trim())) return undefined;
  const name = text.trim().toLowerCase().replace(/\s+/g, " ");
  return names().get(name) ?? names().get(name.replace(/\.(?=\s|$)/g, ""));
}

/** Every way of writing a unit that is understood, longest first. */
export function unitNames(): string[] {
  return [...names().keys()].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
}

/** The names closest to a mistyped one, for a hint. */
export function nearestUnitNames(text: string, limit = 3): string[] {
  const wanted = text.trim().toLowerCase();
  const scored = unitNames()
    .filter((name) => name.length > 1 && Math.abs(name.length - wanted.length) <= 2)
    .map((name) => ({ name, edits: distance(wanted, name) }))
    .filter(({ edits }) => edits <= 2)
    .sort((a, b) => a.edits - b.edits || (a.name < b.name ? -1 : 1));
  return scored.slice(0, limit).map(({ name }) => name);
}
