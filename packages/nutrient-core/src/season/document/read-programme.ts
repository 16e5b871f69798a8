import { answer, at, gather, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Programme } from "../programme.ts";
import { PROGRAMMES, programmeNamed } from "../programmes/programmes.ts";
import type { SeasonDocument } from "./document.ts";
import { readEveryDays, readOwn } from "./read-own-stages.ts";

/**
 * The programme that a season follows: one by its id, or the stages of its own; with the season's own rhythm, litres
 * and products put in.
 *
 * @param id Of a place, where it differs from the season's.
 */
export function readProgramme(
  document: SeasonDocument,
  id: string | undefined,
  quantity: QuantityReader,
): Outcome<Programme> {
  const { stages, stageProducts } = document;
  const named = id ?? document.programme;
  if ((named === undefined) === (stages === undefined) && id === undefined) {
    return unusable({
      code: named === undefined ? "field-missing" : "options-conflict",
      path: "programme",
      message: named === undefined ? "No programme is named." : "A programme and stages of your own are both given.",
      expected: "a programme's name, or stages of your own",
      received: named === undefined ? "neither" : "both",
      hint: `write programme: ${PROGRAMMES[0]!.id}, or stages of your own`,
    });
  }
  const base = named === undefined ? readOwn(stages!, quantity) : found(named);
  const everyDays =
    document.everyDays === undefined ? answer(undefined) : readEveryDays(document.everyDays, "everyDays");
  const litres =
    document.litresPerPlant === undefined
      ? answer(undefined)
      : at("litresPerPlant", ofDimension(quantity(document.litresPerPlant), "volume", document.litresPerPlant));
  const parts = gather<{ base: Programme; everyDays: number | undefined; litres: number | undefined }>({
    base,
    everyDays,
    litres,
  });
  if (!parts.ok) return parts;
  const programme: Programme = {
    ...parts.value.base,
    ...(parts.value.everyDays === undefined ? {} : { everyDays: parts.value.everyDays }),
    ...(parts.value.litres === undefined ? {} : { litresPerPlant: parts.value.litres }),
  };
  if (programme.stages.some((stage) => (stage.litresPerPlant ?? programme.litresPerPlant) <= 0)) {
    return unusable({
      code: "field-missing",
      path: "litresPerPlant",
      message: "How much feed each plant gets is not said.",
      expected: "a volume such as 1 L",
      received: "nothing",
      hint: "add litresPerPlant: 1 L, to the season or to each stage",
    });
  }
  return stageProducts === undefined ? answer(programme) : withProducts(programme, stageProducts);
}

function found(id: string): Outcome<Programme> {
  const programme = programmeNamed(id.trim());
  if (programme) return answer(programme);
  return unusable({
    code: "programme-unknown",
    path: "programme",
    message: `"${id}" is not a programme that comes along.`,
    expected: `one of ${PROGRAMMES.map((one) => one.id).join(", ")}`,
    received: id,
    hint: "write one of these, or stages of your own",
  });
}

function withProducts(
  programme: Programme,
  products: NonNullable<SeasonDocument["stageProducts"]>,
): Outcome<Programme> {
  const ids = programme.stages.map(({ id }) => id);
  const stranger = Object.keys(products).find((id) => !ids.includes(id));
  if (stranger !== undefined) {
    return unusable({
      code: "stage-unknown",
      path: `stageProducts.${stranger}`,
      message: `The programme "${programme.id}" has no stage "${stranger}".`,
      expected: `one of ${ids.join(", ")}`,
      received: stranger,
      hint: `write ${ids.join(" or ")}`,
    });
  }
  const stages = programme.stages.map((stage) => {
    const own = products[stage.id];
    return own === undefined ? stage : { ...stage, products: own };
  });
  return answer({ ...programme, stages });
}
