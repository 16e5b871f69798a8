import { type Caution, type CautionKind, raise, type Severity } from "../outcome/caution.ts";
import type { MixInput } from "./mix-input.ts";
import type { FilledSpace, MixResult } from "./mix-result.ts";
import { floorLoad } from "./weight.ts";

const number = (value: number): string => String(Number(value.toPrecision(3)));

interface LoadFacts {
  readonly [fact: string]: number | string;
  readonly kilogramsPerSquareMetre: number;
  readonly kilopascals: number;
  readonly poundsPerSquareFoot: number;
  /** 0 when the grower stated none. */
  readonly limitKilopascals: number;
  readonly of: string;
}

const PLACE = "On a roof, balcony or deck ask a structural engineer first, and follow local codes.";

const load = ({ kilogramsPerSquareMetre, kilopascals, poundsPerSquareFoot, of }: LoadFacts): string =>
  `Wet, "${of}" weighs up to ${number(kilogramsPerSquareMetre)} kg/m2 (${number(kilopascals)} kPa, ${number(poundsPerSquareFoot)} psf)`;

function roofLoad(severity: Severity, sentence: (facts: LoadFacts) => string): CautionKind<LoadFacts> {
  return { code: "roof-load", severity, source: "irc-2000-live-loads", sentence };
}

/** No limit was stated: the number, and where it matters. */
const roofLoadUnstated: CautionKind<LoadFacts> = roofLoad("caution", (facts) => `${load(facts)}. ${PLACE}`);

/** The stated limit is not reached by the mix alone. */
const roofLoadWithin: CautionKind<LoadFacts> = roofLoad(
  "caution",
  (facts) =>
    `${load(facts)}: ${number((100 * facts.kilopascals) / facts.limitKilopascals)} % of the stated ${number(facts.limitKilopascals)} kPa, which must carry people, snow, pots and timber too. ${PLACE}`,
);

/** The mix alone is more than the stated limit. */
const roofLoadOver: CautionKind<LoadFacts> = roofLoad(
  "danger",
  (facts) =>
    `${load(facts)}: more than the stated ${number(facts.limitKilopascals)} kPa. Do not fill it there. ${PLACE}`,
);

/** A limit was stated, and nothing tells whether this fill keeps it. */
const roofLoadUnchecked: CautionKind<{
  readonly of: string;
  readonly limitKilopascals: number;
  /** Of one, watered, at most; 0 where the mix's weight is not known. */
  readonly kilogramsEach: number;
  readonly leastSquareMetresEach: number;
}> = {
  code: "roof-load-unchecked",
  severity: "caution",
  source: "irc-2000-live-loads",
  sentence: ({ of, limitKilopascals, kilogramsEach, leastSquareMetresEach }) =>
    kilogramsEach > 0
      ? `The stated ${number(limitKilopascals)} kPa was not checked for "${of}": how much floor it covers is not known. Watered, one weighs up to ${number(kilogramsEach)} kg, which is over the limit on less than ${number(leastSquareMetresEach)} m2. Write its measures instead, such as "12 pots 30 cm x 24 cm x 28 cm". ${PLACE}`
      : `The stated ${number(limitKilopascals)} kPa was not checked for "${of}": the mix's weight is not known. Water a litre of it, let it drain, weigh it, and reckon with that. ${PLACE}`,
};

/** Gravel as it is tipped, 1.5 to 1.8 kg/L: from memory. */
const layerNotCounted: CautionKind<{ readonly of: readonly string[] }> = {
  code: "roof-load-layer",
  severity: "caution",
  source: "from-memory",
  sentence: ({ of }) =>
    `The layer under the mix in "${of.join('", "')}" is not counted in its weight: gravel alone adds about 15 to 18 kg/m2 for each centimetre, and wood soaks itself full.`,
};

/** The lightest place in the tables that were read, a flat roof (delft-variable-loads); below it nothing is said unasked. */
const LIGHT_LOAD_KILOPASCALS = 1;

/** The heaviest fill against the floor's limit, and whatever could not be held against it. */
export function loadCautions({ floorLimitKilopascals: limit, fills }: MixInput, result: MixResult): Caution[] {
  const loaded = result.fills.filter((fill) => fill.load !== undefined);
  const [heaviest] = [...loaded].sort((a, b) => b.load!.kilopascals - a.load!.kilopascals);
  const cautions: Caution[] = [];
  if (heaviest?.load && (limit !== undefined || heaviest.load.kilopascals >= LIGHT_LOAD_KILOPASCALS)) {
    const facts = { ...heaviest.load, limitKilopascals: limit ?? 0, of: heaviest.written };
    const stated = heaviest.load.kilopascals > (limit ?? 0) ? roofLoadOver : roofLoadWithin;
    cautions.push(raise(limit === undefined ? roofLoadUnstated : stated, facts));
  }
  if (limit !== undefined) {
    cautions.push(...result.fills.filter((fill) => !fill.load).map((fill) => unchecked(fill, result, limit)));
  }
  const layered = fills.filter(({ notes }) => notes?.includes("layer")).map(({ written }) => written);
  if (layered.length > 0 && cautions.length > 0) {
    cautions.push(raise(layerNotCounted, { of: layered }));
  }
  return cautions;
}

function unchecked({ written, volumeLitres, count }: FilledSpace, result: MixResult, limit: number): Caution {
  const wettest = (result.massKilograms?.wetRange[1] ?? 0) / result.fillVolumeLitres;
  const kilogramsEach = (wettest * volumeLitres) / count;
  const leastSquareMetresEach = floorLoad(kilogramsEach).kilopascals / limit;
  return raise(roofLoadUnchecked, { of: written, limitKilopascals: limit, kilogramsEach, leastSquareMetresEach });
}
