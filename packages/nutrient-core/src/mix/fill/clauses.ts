import { andThen, answer, gather, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { readNumber } from "../../quantity/number.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import { MOUND_PROFILES, type MoundProfile } from "../shape/mound.ts";
import type { Spacing } from "../shape/spacing.ts";
import type { Fill } from "./fill.ts";
import { BELIEVABLE, withLentUnits } from "./lent-unit.ts";
import { clauseUnusable } from "./problems.ts";

/** What may be said about a fill after its sizes. */
export interface Clauses {
  readonly mound?: MoundClause;
  /** Readings of an uneven depth, metres, in rows. */
  readonly depths?: readonly (readonly number[])[];
  /** Kept free below the rim, for watering. */
  readonly headspace?: Kept;
  /** Layers under the mix: drainage, wood. */
  readonly layers: readonly Kept[];
  readonly hasDrainageLayer: boolean;
  readonly spacing?: Spacing;
  /** Plants in each pot. */
  readonly plantsEach?: number;
}

export interface MoundClause {
  readonly heightMetres: number;
  readonly profile?: MoundProfile;
  readonly crownMetres?: number;
}

/** A layer by its thickness, or as a share of the volume where only the litres are known. */
export type Kept = { readonly metres: number } | { readonly share: number };

/** What the cautions must know of the layers under a mix. */
export function layerNotes({ layers, hasDrainageLayer }: Clauses): Pick<Fill, "notes"> {
  if (layers.length === 0) return {};
  return { notes: [...(hasDrainageLayer ? (["drainage-layer"] as const) : []), "layer"] };
}

const WORD =
  /[\s,]+(mound|ridge|headspace|drainage|gravel|wood|logs|depths|plants|rows|triangle|trapezoid|parabola|crown)\b/i;

/** Other words for the same clause. */
const SAME: Readonly<Record<string, string>> = { ridge: "mound", gravel: "drainage", logs: "wood" };

/** Parts a fill's text into its sizes and its clauses. */
export function splitClauses(text: string): { sizes: string; clauses: readonly (readonly [string, string])[] } {
  const parts = ` ${text}`.split(new RegExp(WORD.source, "gi"));
  const clauses: (readonly [string, string])[] = [];
  for (let i = 1; i < parts.length; i += 2) {
    const word = parts[i]!.toLowerCase();
    clauses.push([SAME[word] ?? word, parts[i + 1]!.replace(/^[\s,]+|[\s,]+$/g, "")]);
  }
  return { sizes: parts[0]!.trim(), clauses };
}

/** Reads the clauses; all their problems at once. */
export function readClauses(
  clauses: readonly (readonly [string, string])[],
  text: string,
  read: QuantityReader,
): Outcome<Clauses> {
  const length = (part: string): Outcome<number> => ofDimension(read(part), "length", part);
  const kept = (part: string): Outcome<Kept> => readKept(part, length);
  const once = (name: string): string | undefined => clauses.find(([word]) => word === name)?.[1];
  const words = clauses.map(([word]) => word);
  const twice = words.find((word, index) => word !== "wood" && word !== "drainage" && words.indexOf(word) < index);
  if (twice) return unusable(clauseUnusable(text, `"${twice}" stands twice in "${text}".`, `say "${twice}" once`));

  const profiles = MOUND_PROFILES.filter((profile) => words.includes(profile));
  const stray = clauses.find(([word, rest]) => (MOUND_PROFILES as readonly string[]).includes(word) && rest !== "");
  if (profiles.length > 1 || stray) {
    return unusable(
      clauseUnusable(text, `"${text}" does not say one outline.`, 'write one of "parabola", "triangle" or "trapezoid"'),
    );
  }
  const mound = once("mound");
  const crown = once("crown");
  if (crown !== undefined && profiles[0] !== "trapezoid") {
    return unusable(
      clauseUnusable(text, "Only a trapezoid has a flat crown.", 'write "mound 10 cm trapezoid crown 60 cm"'),
    );
  }
  const depths = once("depths");
  const headspace = once("headspace");
  const spacing = readSpacing(once("plants"), once("rows"), text, length, read);
  const readParts = gather({
    mound: mound === undefined ? answer(undefined) : length(mound),
    crown: crown === undefined ? answer(undefined) : length(crown),
    depths: depths === undefined ? answer(undefined) : readDepths(depths, text, length, read),
    headspace: headspace === undefined ? answer(undefined) : kept(headspace),
    layers: gatherList(
      clauses.filter(([word]) => word === "wood" || word === "drainage").map(([, part]) => kept(part)),
    ),
    spacing,
  });
  if (!readParts.ok) return readParts;
  const parts = readParts.value;
  const shape = {
    ...(profiles[0] === undefined ? {} : { profile: profiles[0] }),
    ...(parts.crown === undefined ? {} : { crownMetres: parts.crown }),
  };
  return answer(
    {
      layers: parts.layers,
      hasDrainageLayer: words.includes("drainage"),
      ...(parts.mound === undefined
        ? profiles[0] === undefined
          ? {}
          : { mound: { heightMetres: 0, ...shape } }
        : { mound: { heightMetres: parts.mound, ...shape } }),
      ...(parts.depths === undefined ? {} : { depths: parts.depths }),
      ...(parts.headspace === undefined ? {} : { headspace: parts.headspace }),
      ...parts.spacing,
    },
    readParts.cautions,
    readParts.working,
  );
}

function readKept(part: string, length: (part: string) => Outcome<number>): Outcome<Kept> {
  const percent = /^(.*?)\s*%$/.exec(part);
  if (!percent) {
    const read = length(part);
    return read.ok ? answer({ metres: read.value }, read.cautions) : read;
  }
  const share = readNumber(percent[1]!);
  if (!share.ok) return share;
  return share.value < 100
    ? answer({ share: share.value / 100 })
    : unusable(clauseUnusable(part, `"${part}" leaves no room for the mix.`, "write less than 100 %"));
}

function readDepths(
  part: string,
  text: string,
  length: (part: string) => Outcome<number>,
  read: QuantityReader,
): Outcome<readonly (readonly number[])[]> {
  // A slash between digits is a fraction (1/3 in); one with a gap beside it parts two rows.
  const rows = part
    .split(/\s+\/\s*|\s*\/\s+/)
    .map((row) => row.split(/\s*,(?!\d)\s*|\s*;\s*/).filter((one) => one !== ""));
  const readings = rows.flat().length;
  if (readings < 2 || rows.some((row) => row.length !== rows[0]!.length)) {
    return unusable(
      clauseUnusable(
        text,
        `"depths ${part}" is no set of readings.`,
        'write two or more, such as "depths 28 cm, 30 cm, 33 cm"; rows of equal length are parted by " / "',
      ),
    );
  }
  return gatherList(
    rows.map((row) =>
      andThen(withLentUnits(row, BELIEVABLE.depth, text, read), (sized) => gatherList(sized.map(length))),
    ),
  );
}

function readSpacing(
  plants: string | undefined,
  rows: string | undefined,
  text: string,
  length: (part: string) => Outcome<number>,
  read: QuantityReader,
): Outcome<{ spacing?: Spacing; plantsEach?: number }> {
  if (plants !== undefined && rows !== undefined) {
    return unusable(clauseUnusable(text, "Plants stand either by a distance or in rows.", 'keep "plants" or "rows"'));
  }
  if (rows !== undefined) {
    const [between, inRow, ...more] = rows.split(/\s*x\s*(?=[\d.])/i);
    if (inRow === undefined || more.length > 0) {
      return unusable(clauseUnusable(text, `"rows ${rows}" is no spacing.`, 'write "rows 60 cm x 40 cm"'));
    }
    const both = andThen(withLentUnits([between!, inRow], BELIEVABLE.row, text, read), ([first, second]) =>
      gather({ betweenRowsMetres: length(first!), inRowMetres: length(second!) }),
    );
    return both.ok ? answer({ spacing: { pattern: "rows", ...both.value } }, both.cautions) : both;
  }
  if (plants === undefined) return answer({});
  if (/^\d+$/.test(plants)) return answer({ plantsEach: Number(plants) });
  const match = /^(.*?)\s*(square|triangular)?$/i.exec(plants)!;
  const distance = length(match[1]!);
  if (!distance.ok) return distance;
  const pattern = match[2]?.toLowerCase() === "triangular" ? "triangular" : "square";
  return answer({ spacing: { pattern, distanceMetres: distance.value } }, distance.cautions);
}
