import { type Caution, raise } from "../outcome/caution.ts";
import { shown } from "../outcome/sentence.ts";
import { ofPlanting } from "./caution-kinds/planting.ts";
import { recordedFeedLarge } from "./caution-kinds/record.ts";
import { dateInWords } from "./civil-date.ts";
import { cansFor, feedFor, gramsOfRate, litresWanted } from "./feeds.ts";
import type { FedEntry } from "./log.ts";
import type { Stage } from "./programme.ts";
import { type RecipeBook, recipeBook } from "./recipe-book.ts";
import type { Slot } from "./schedule.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { PlacedStage } from "./stages.ts";

/**
 * More than so many times what is planned is no generous feed any more but a slip of the pen, or a harm that was done:
 * our own judgement. Three times the strongest published feed is where a planned one is said to burn.
 */
const FAR_MORE = 3;

/** One figure of the record beside the plan's. */
interface Comparison {
  readonly times: number;
  readonly words: string;
}

/**
 * Recorded feeds that are far more than the plan gives in a feed of their stage: in water, or in what the stage is to
 * bring. They count as they stand, for nothing that is on record is lost; the furthest off is told in numbers.
 */
export function largeFeeds(planting: Planting, slots: readonly Slot[], input: SeasonInput): Caution[] {
  // Its recipes are for comparison only, and none of the plan's.
  const book = recipeBook(input);
  const large = slots
    .flatMap(({ entry, stage, day }) => {
      if (!entry || !stage) return [];
      const compared = [
        ...waterOf(entry, stage.stage, planting, input),
        ...nutrientsOf(entry, { stage, day, status: "planned" }, planting, input, book),
      ];
      return compared.length === 0 ? [] : [{ entry, compared, times: Math.max(...compared.map(({ times }) => times)) }];
    })
    .sort((a, b) => b.times - a.times);
  const [first, ...others] = large;
  if (!first) return [];
  return [
    raise(recordedFeedLarge, {
      ...ofPlanting(planting),
      line: first.entry.id,
      date: first.entry.date,
      compared: first.compared.map(({ words }) => words),
      times: first.times,
      otherLines: others.map(({ entry }) => `line ${entry.id} (${dateInWords(entry.date)})`),
    }),
  ];
}

/** Sums of a few products: what is three times as much but for rounding is not more. */
const ROUNDING = 1e-9;
const isFarMore = (times: number): boolean => times > FAR_MORE * (1 + ROUNDING);

/** The water of a feed against the cans that the plan gives. */
function waterOf(entry: FedEntry, stage: Stage, planting: Planting, { canLitres }: SeasonInput): Comparison[] {
  const cans = cansFor(litresWanted(planting, stage), canLitres);
  const times = (entry.cans * entry.canLitres) / (cans * canLitres);
  const given = `${shown(entry.cans)} ${entry.cans === 1 ? "can" : "cans"} of ${shown(entry.canLitres)} L`;
  const words = `${given}, where the plan for "${stage.name}" gives ${cans} of ${shown(canLitres)} L (${shown(times)} times)`;
  return isFarMore(times) ? [{ times, words }] : [];
}

/**
 * Of the nutrients that the stage wants the one that is furthest off, against what is wanted, or what the planned feed
 * brings where that is more: water and product bring other nutrients along.
 */
function nutrientsOf(
  entry: FedEntry,
  slot: Slot & { readonly stage: PlacedStage },
  planting: Planting,
  input: SeasonInput,
  book: RecipeBook,
): Comparison[] {
  const { stage } = slot.stage;
  const litres = cansFor(litresWanted(planting, stage), input.canLitres) * input.canLitres;
  const suspects = stage.target.wanted.flatMap((line) => {
    const wanted = gramsOfRate(line.rate, stage, planting, litres) ?? 0;
    const given = entry.nutrientGrams[line.nutrient] ?? 0;
    return wanted > 0 && isFarMore(given / wanted) ? [{ ...line, wanted, given }] : [];
  });
  // The planned feed is worked out only where there is something to compare.
  if (suspects.length === 0) return [];
  const planned = feedFor(slot, planting, input, 1, {}, book);
  const compared = suspects.flatMap(({ nutrient, rate, asked, wanted, given }): Comparison[] => {
    const brought = planned.ok ? (planned.value.recipe.gramsPerCan[nutrient] ?? 0) * planned.value.cans : 0;
    const most = Math.max(wanted, brought);
    const times = given / most;
    if (!isFarMore(times)) return [];
    // In the form that was asked for, as everywhere where a target is spoken of.
    const inForm = (grams: number): string => `${shown((grams * asked.rate) / rate)} g`;
    const whole = stage.target.per === "stage" ? "all feeds of the stage together bring" : "such a feed brings";
    const words = `${asked.form} ${inForm(given)}, where by the plan ${whole} ${inForm(most)} (${shown(times)} times)`;
    return [{ times, words }];
  });
  const most = Math.max(...compared.map(({ times }) => times));
  const furthest = compared.find(({ times }) => times >= most * (1 - ROUNDING));
  return furthest ? [furthest] : [];
}
