import type { SeasonEvent } from "nutrient-core";
import { canContent } from "../season-feed.ts";

/** What goes into one can, under a letter: the calendar names the letter, the card beside it says what to weigh. */
export interface CanRecipe {
  readonly letter: string;
  readonly canLitres: number;
  readonly stageNames: readonly string[];
  /** One of its feeds: all of them have the same amounts in a can. */
  readonly example: SeasonEvent;
}

export interface Recipes {
  readonly list: readonly CanRecipe[];
  /** The letter of a feed by its id; none for what was given already. */
  readonly letterOf: ReadonlyMap<string, string>;
}

/** Feeds to come that have the same in a can share a recipe; letters in the order in which they are needed. */
export function recipesOf(events: readonly SeasonEvent[]): Recipes {
  const groups = new Map<string, SeasonEvent[]>();
  for (const event of events) {
    if (event.status === "given") continue;
    const key = canContent(event);
    const group = groups.get(key);
    if (group) group.push(event);
    else groups.set(key, [event]);
  }
  const list = [...groups.values()].map((group, index): CanRecipe => {
    const [example] = group as [SeasonEvent, ...SeasonEvent[]];
    return {
      letter: letters(index),
      canLitres: example.canLitres,
      stageNames: [...new Set(group.map(({ stageName }) => stageName))],
      example,
    };
  });
  const letterOf = new Map(
    [...groups.values()].flatMap((group, index) => group.map(({ id }) => [id, letters(index)] as const)),
  );
  return { list, letterOf };
}

/** A to Z, then AA, AB and so on. */
function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letters(Math.floor(index / 26) - 1)}${last}`;
}
