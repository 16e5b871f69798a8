import type { Delivered } from "../supply/supply.ts";
import type { CivilDate } from "./civil-date.ts";
import type { Milestone } from "./crop.ts";

/** What every recorded line carries. */
interface Recorded {
  /** Names the line for good; an undo points at it. */
  readonly id: string;
  /** The day it happened, not the day it was written down. */
  readonly date: CivilDate;
  /** Which planting; all of them where it is left out. */
  readonly planting?: string;
}

/** A feed was given. The line stands on its own: it says what the plants got, whatever becomes of the shelf. */
export interface FedEntry extends Recorded {
  readonly kind: "fed";
  readonly cans: number;
  readonly canLitres: number;
  /** Of the whole feed, all cans together. */
  readonly amounts: readonly { readonly product: string; readonly massGrams: number }[];
  /** Grams of each element in all cans together, the water's own included. */
  readonly nutrientGrams: Delivered;
}

/** Rain, or anything else, prevented the feed of this day. */
export interface RainedOutEntry extends Recorded {
  readonly kind: "rained-out";
}

/** Something was seen in the plants: the first flower, the first fruit. */
export interface ObservedEntry extends Recorded {
  readonly kind: "observed";
  readonly milestone: Milestone;
}

export interface HarvestedEntry extends Recorded {
  readonly kind: "harvested";
  readonly massGrams: number;
}

/** Takes an earlier line back; the line itself stays in the record. */
export interface UndoneEntry {
  readonly kind: "undone";
  readonly id: string;
  readonly date: CivilDate;
  readonly undoes: string;
}

/** One line of the season's record. */
export type LogEntry = FedEntry | RainedOutEntry | ObservedEntry | HarvestedEntry | UndoneEntry;

/** The lines that hold: what an undo takes back is left out, and an undo can itself be taken back. */
export function effectiveEntries(log: readonly LogEntry[]): readonly Exclude<LogEntry, UndoneEntry>[] {
  const undone = new Set<string>();
  // From the last line back, so that an undone undo undoes nothing.
  for (const entry of [...log].reverse()) {
    if (entry.kind === "undone" && !undone.has(entry.id)) undone.add(entry.undoes);
  }
  return log.filter(
    (entry): entry is Exclude<LogEntry, UndoneEntry> => entry.kind !== "undone" && !undone.has(entry.id),
  );
}

/** The lines of each planting, in their order: its own, and those that name none. */
export function entriesByPlanting<T extends { readonly planting?: string }>(
  entries: readonly T[],
  plantings: readonly string[],
): ReadonlyMap<string, readonly T[]> {
  const lines = new Map<string, T[]>(plantings.map((name) => [name, []]));
  for (const entry of entries) {
    const meant = entry.planting === undefined ? plantings : [entry.planting];
    for (const name of meant) lines.get(name)?.push(entry);
  }
  return lines;
}
