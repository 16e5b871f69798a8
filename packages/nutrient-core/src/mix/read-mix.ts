import * as z from "zod/mini";
import { throughDoor } from "../outcome/door.ts";
import { answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { readNumber } from "../quantity/number.ts";
import type { QuantityReader } from "../quantity/quantity.ts";
import type { Fill } from "./fill/fill.ts";
import { readFills } from "./fill/read-fill.ts";
import { type IngredientSupply, mergedSupplies, readShelfIngredients, readSupplyTexts } from "./ingredient/supply.ts";
import type { Car, MixInput } from "./mix-input.ts";
import type { OrderAim } from "./order/offer.ts";
import { readCar } from "./read-car.ts";
import { readFloorLimit } from "./read-floor-limit.ts";
import { readRecipe } from "./recipe/read-recipe.ts";
import type { Recipe } from "./recipe/recipe.ts";
import { USUAL_LOSS_SHARE, USUAL_SETTLING_SHARE } from "./usual-losses.ts";

/** A recipe of a hundred ingredients is shorter; more is a mistake, such as a whole file. */
const line = z.string().check(z.maxLength(4000));
const text = z.optional(line);
const texts = z.optional(z.array(line).check(z.maxLength(200)));

/** What a grower says, all as text. */
export const mixRequest = z.strictObject({
  recipe: text,
  fill: texts,
  loss: text,
  settling: text,
  pack: texts,
  bulk: texts,
  stock: texts,
  aim: text,
  floorLimit: text,
  car: text,
});
export type MixRequest = z.infer<typeof mixRequest>;

/** What a mix request is read with. */
export interface MixReadingContext {
  readonly quantity: QuantityReader;
  /** The shelf file's `components`, as written. */
  readonly components?: readonly unknown[];
}

/**
 * Turns a mix request's texts into what a mix is worked out from, or says everything that is wrong with it.
 *
 * @param request Anything: an object of texts as {@link MixRequest}.
 * @returns The domain input; the losses that were not stated are the usual ones, marked with their source.
 * @example
 * readMix({ recipe: "compost 1", fill: ["1 pot 10 L"] }, { quantity: readPlainQuantity }).value.losses  // => { lossShare: 0, settlingShare: 0.1 }
 */
export function readMix(request: unknown, context: MixReadingContext): Outcome<MixInput> {
  const entered = throughDoor(mixRequest, request);
  if (!entered.ok) return entered;
  const said = entered.value;
  const { quantity } = context;
  const recipe =
    said.recipe === undefined
      ? unusable(missing("recipe", '--recipe "compost 1, perlite 1, coir 1"'))
      : at("recipe", readRecipe(said.recipe));
  const parts = gather<{
    recipe: Recipe;
    fills: readonly Fill[];
    loss: number | undefined;
    settling: number | undefined;
    supplies: readonly IngredientSupply[];
    shelf: readonly IngredientSupply[];
    aim: OrderAim;
    floorLimit: number | undefined;
    car: Car | undefined;
  }>({
    recipe,
    fills:
      said.fill === undefined || said.fill.length === 0
        ? unusable(missing("fill", '--fill "bed 1.2 m x 2.4 m x 30 cm"'))
        : fillsOf(said.fill, quantity),
    loss: said.loss === undefined ? answer(undefined) : at("loss", readShare(said.loss)),
    settling: said.settling === undefined ? answer(undefined) : at("settling", readShare(said.settling)),
    supplies: recipe.ok
      ? readSupplyTexts(
          { pack: said.pack ?? [], bulk: said.bulk ?? [], stock: said.stock ?? [] },
          recipe.value.components.filter(({ isOwn }) => !isOwn).map(({ name }) => name),
          quantity,
        )
      : answer([]),
    shelf: readShelfIngredients(context.components ?? [], quantity),
    aim: said.aim === undefined ? answer("least-cost") : readAim(said.aim),
    floorLimit: said.floorLimit === undefined ? answer(undefined) : at("floorLimit", readFloorLimit(said.floorLimit)),
    car: said.car === undefined ? answer(undefined) : at("car", readCar(said.car, quantity)),
  });
  if (!parts.ok) return parts;
  const { fills, loss, settling, supplies, shelf, aim, floorLimit, car } = parts.value;
  // A single ingredient is mixed with nothing and loses nothing on mixing.
  const usualLoss = parts.value.recipe.components.length > 1 ? USUAL_LOSS_SHARE : 0;
  const input: MixInput = {
    recipe: parts.value.recipe,
    fills,
    losses: { lossShare: loss ?? usualLoss, settlingShare: settling ?? USUAL_SETTLING_SHARE },
    lossSources: {
      loss: loss === undefined && usualLoss > 0 ? "container-mix-guidance" : null,
      settling: settling === undefined ? "common-practice" : null,
    },
    supplies: mergedSupplies(shelf, supplies),
    aim,
    ...(floorLimit === undefined ? {} : { floorLimitKilopascals: floorLimit }),
    ...(car === undefined ? {} : { car }),
  };
  return answer(input, parts.cautions, parts.working);
}

function fillsOf(written: readonly string[], quantity: QuantityReader): Outcome<readonly Fill[]> {
  const read = readFills(written, quantity);
  if (read.ok) return read;
  return unusable(...read.problems.map((problem) => ({ ...problem, path: `fill${problem.path}` })));
}

/**
 * Reads a share of a volume: `15%`, `15 %`, `0`, `0.15`.
 *
 * A bare number from 0 to less than 1 is a share; 1 and more need the percent sign, so that "15" is never taken for
 * fifteen wholes.
 *
 * @returns From 0 to less than 0.9.
 * @example
 * readShare("15%")  // => 0.15
 */
export function readShare(written: string): Outcome<number> {
  const match = /^\s*(.*?)\s*(%|percent)?\s*$/i.exec(written)!;
  const number = readNumber(match[1]!);
  const share = number.ok ? (match[2] ? number.value / 100 : number.value) : Number.NaN;
  if (share >= 0 && share < 0.9) return answer(share);
  return unusable({
    code: "share-unreadable",
    path: "",
    message: `"${written}" is not a share of a volume.`,
    expected: "from 0 to less than 90 %",
    received: written,
    hint: 'write "15%", or "0" for none',
  });
}

function readAim(written: string): Outcome<OrderAim> {
  const plain = written.trim().toLowerCase();
  if (plain === "least-cost" || plain === "least-left-over") return answer(plain);
  return unusable({
    code: "choice-unknown",
    path: "aim",
    message: `"${written}" is not something an order can aim at.`,
    expected: "least-cost or least-left-over",
    received: written,
    hint: "write least-cost or least-left-over",
  });
}

function missing(path: string, example: string) {
  return {
    code: "option-missing",
    path,
    message: path === "recipe" ? "What the mix is made of is missing." : "What is to be filled is missing.",
    expected: path === "recipe" ? "a recipe by parts, or a starting point's id" : "one or more beds or pots",
    received: "nothing",
    hint: `add ${example}`,
  };
}
