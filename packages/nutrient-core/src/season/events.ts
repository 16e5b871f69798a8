import { answer, type Outcome } from "../outcome/outcome.ts";
import { inBothForms } from "../supply/both-forms.ts";
import { addDelivered } from "../supply/one-product.ts";
import type { Delivered } from "../supply/supply.ts";
import { dateOfDay } from "./civil-date.ts";
import { type Feed, feedFor } from "./feeds.ts";
import type { FedEntry } from "./log.ts";
import type { RecipeBook } from "./recipe-book.ts";
import type { Slot } from "./schedule.ts";
import type { Planting, SeasonInput } from "./season.ts";
import type { SeasonAmount, SeasonEvent } from "./season-plan.ts";
import type { PlacedStage } from "./stages.ts";

/** Turns a planting's days into feeds with amounts: recorded ones as they were, the rest worked out. */
export function eventsOf(
  slots: readonly Slot[],
  planting: Planting,
  input: SeasonInput,
  book: RecipeBook,
): Outcome<readonly SeasonEvent[]> {
  const left = new Map<PlacedStage, number>();
  const given = new Map<PlacedStage, Delivered>();
  for (const { stage, entry } of slots) {
    if (!stage) continue;
    if (entry) given.set(stage, addDelivered(given.get(stage) ?? {}, entry.nutrientGrams));
    else left.set(stage, (left.get(stage) ?? 0) + 1);
  }
  const events: SeasonEvent[] = [];
  for (const [index, slot] of slots.entries()) {
    const id = `${planting.name}-${index + 1}`;
    if (slot.entry) {
      events.push(recorded(id, slot, slot.entry, planting, input));
      continue;
    }
    const stage = slot.stage!;
    // Each feed of a stage takes the same share of what the stage still wants.
    const feed = feedFor({ ...slot, stage }, planting, input, left.get(stage)!, given.get(stage) ?? {}, book);
    if (!feed.ok) return feed;
    events.push(planned(id, feed.value, planting, input));
  }
  return answer(events);
}

function planned(id: string, { slot, cans, recipe, recipeNumber }: Feed, planting: Planting, input: SeasonInput) {
  const stage = slot.stage!;
  const event: SeasonEvent = {
    id,
    date: dateOfDay(slot.day),
    ...(slot.dueSince === undefined ? {} : { dueSince: dateOfDay(slot.dueSince) }),
    planting: planting.name,
    stage: stage.stage.id,
    stageName: stage.stage.name,
    status: slot.status,
    provisional: stage.provisional,
    cans,
    canLitres: input.canLitres,
    litresPerPlant: (cans * input.canLitres) / planting.plants,
    amounts: recipe.amounts.flatMap(({ product, massGrams }): SeasonAmount[] => {
      if (!(massGrams > 0)) return [];
      const density = product.densityKilogramsPerLitre;
      return [
        {
          product: product.id,
          name: product.name,
          massGrams: massGrams * cans,
          perCanGrams: massGrams,
          // 1 kg/L is 1 g/mL.
          ...(density === undefined ? {} : { perCanMillilitres: massGrams / density }),
          ...(product.pricePerGram === undefined ? {} : { cost: massGrams * cans * product.pricePerGram }),
        },
      ];
    }),
    deliveredPpm: inBothForms(recipe.delivered),
    ...(recipe.ecMilliSiemensPerCm === undefined ? {} : { ecMilliSiemensPerCm: recipe.ecMilliSiemensPerCm }),
    reached: recipe.reached,
    explanation: recipe.explanation,
    recipe: recipeNumber,
    nutrientGrams: times(recipe.gramsPerCan, cans),
  };
  return event;
}

function recorded(id: string, slot: Slot, entry: FedEntry, planting: Planting, input: SeasonInput): SeasonEvent {
  const litres = entry.cans * entry.canLitres;
  return {
    id,
    date: entry.date,
    planting: planting.name,
    stage: slot.stage?.stage.id ?? "",
    stageName: slot.stage?.stage.name ?? "",
    status: "given",
    provisional: false,
    cans: entry.cans,
    canLitres: entry.canLitres,
    litresPerPlant: litres / planting.plants,
    amounts: entry.amounts.map(({ product: productId, massGrams }): SeasonAmount => {
      const product = input.shelf.find((one) => one.id === productId);
      const perCanGrams = massGrams / entry.cans;
      const density = product?.densityKilogramsPerLitre;
      return {
        product: productId,
        name: product?.name ?? productId,
        massGrams,
        perCanGrams,
        ...(density === undefined ? {} : { perCanMillilitres: perCanGrams / density }),
        ...(product?.pricePerGram === undefined ? {} : { cost: massGrams * product.pricePerGram }),
      };
    }),
    // Grams in so many litres as mg per litre.
    deliveredPpm: inBothForms(times(entry.nutrientGrams, 1000 / litres)),
    reached: "as-recorded",
    explanation: [],
    recipe: null,
    nutrientGrams: entry.nutrientGrams,
  };
}

/** Amounts so many times over. */
export function times(amounts: Delivered, factor: number): Delivered {
  return Object.fromEntries(Object.entries(amounts).map(([nutrient, amount]) => [nutrient, amount * factor]));
}
