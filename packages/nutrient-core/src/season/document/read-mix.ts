import { mixFirstSeason } from "../../mix/first-season.ts";
import { LIME } from "../../mix/material-as-part.ts";
import { mixedIngredients } from "../../mix/mixed-ingredients.ts";
import { readMix } from "../../mix/read-mix.ts";
import { mixVolumes, volumesWorking } from "../../mix/volumes.ts";
import { type Caution, raise } from "../../outcome/caution.ts";
import { answer, gather, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import { mixAdditionsNotCounted, mixReckoned, mixWithoutCompost } from "../caution-kinds/mix.ts";
import type { SeasonDocument } from "./document.ts";
import { readSeasonRates, type SeasonRates } from "./read-rates.ts";

/** What the mix brings, by its volume or for each plant. */
export interface MixRates {
  readonly rates: SeasonRates;
  readonly overDays: number;
}

/** What a season's mix is read with: the shelf file's `components`, as written, may hold a measured density. */
export interface MixContext {
  readonly quantity: QuantityReader;
  readonly components?: readonly unknown[];
}

type MixTexts = NonNullable<SeasonDocument["mix"]>;

/** Reads what the mix brings, or reckons it from the mix's recipe; undefined where nothing is said of it. */
export function readSeasonMix({ mix }: SeasonDocument, context: MixContext): Outcome<MixRates | undefined> {
  if (mix === undefined) return answer(undefined);
  return gather<{ rates: SeasonRates; overDays: number }>({
    rates: ratesOf(mix, context),
    overDays: at("mix.over", ofDimension(context.quantity(mix.over), "time", mix.over)),
  });
}

function ratesOf({ recipe, brings }: MixTexts, context: MixContext): Outcome<SeasonRates> {
  if (recipe !== undefined && brings === undefined) return fromRecipe(recipe, context);
  if (brings !== undefined && recipe === undefined) return bringing(brings);
  const isBoth = brings !== undefined;
  return unusable({
    code: isBoth ? "options-conflict" : "field-missing",
    path: "mix",
    message: isBoth ? "The mix's recipe and what it brings are both given." : "What the mix brings is not said.",
    expected: "the mix's recipe, or what it brings",
    received: isBoth ? "both" : "neither",
    hint: 'write recipe: "compost 1, perlite 1, coir 1", or brings: "N 100 g/m3" where a label or a test says more',
  });
}

function bringing(written: string): Outcome<SeasonRates> {
  const rates = at("mix.brings", readSeasonRates(written));
  if (!rates.ok || rates.value.basis === "cubicMetre" || rates.value.basis === "plant") return rates;
  return unusable({
    code: "target-basis-mismatch",
    path: "mix.brings",
    message: `"${written}" does not say what the mix brings.`,
    expected: "grams per volume of mix or per plant",
    received: written,
    hint: 'write for example "N 100 g/m3" or "N 1 g/plant"',
  });
}

/**
 * The nitrogen that the recipe's compost sets free in its first season, the least that is published: who feeds a little
 * more can see it, who counted on too much starves the plants.
 */
function fromRecipe(written: string, { quantity, components = [] }: MixContext): Outcome<SeasonRates> {
  // Of one cubic metre: the rate is the same whatever the places hold.
  const read = readMix({ recipe: written, fill: ["1000 L"] }, { quantity, components });
  if (!read.ok) return unusable(...read.problems.map((one) => ({ ...one, path: placeOf(one.path) })));
  const { recipe, losses, lossSources } = read.value;
  const volumes = mixVolumes(1000, losses);
  const season = mixFirstSeason(mixedIngredients(read.value, volumes), volumes.fillVolumeLitres);
  const additions = recipe.additions.map(({ name }) => name).filter((name) => !LIME.test(name));
  const cautions: Caution[] = additions.length === 0 ? [] : [raise(mixAdditionsNotCounted, { additions })];
  if (!season) return answer({ basis: "cubicMetre", wanted: [] }, [...cautions, raise(mixWithoutCompost, {})]);
  const [low, high] = season.value.firstSeasonNitrogenGramsPerCubicMetre;
  return answer(
    { basis: "cubicMetre", wanted: [{ nutrient: "N", rate: low, asked: { form: "N", rate: low } }] },
    [...cautions, raise(mixReckoned, { lowGramsPerCubicMetre: low, highGramsPerCubicMetre: high })],
    // What is heaped up on top is no matter here.
    [...volumesWorking(volumes, losses, lossSources).slice(0, 2), ...season.working].map((line) => ({
      ...line,
      label: `a cubic metre of the mix: ${line.label}`,
    })),
  );
}

/** The recipe's problems stand in the document, those of the shelf's ingredients on the shelf. */
function placeOf(path: string): string {
  return path.startsWith("components") ? `shelf ${path}` : "mix.recipe";
}

/** Problems stand at this place of the document. */
function at<T>(path: string, outcome: Outcome<T>): Outcome<T> {
  return outcome.ok ? outcome : unusable(...outcome.problems.map((problem) => ({ ...problem, path })));
}
