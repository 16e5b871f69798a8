import { answer, at, gather, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Condition, Programme, Stage, StageTarget } from "../programme.ts";
import { PROGRAMMES, programmeNamed } from "../programmes/programmes.ts";
import type { SeasonDocument } from "./document.ts";
import { readCondition } from "./read-condition.ts";
import { readSeasonRates } from "./read-rates.ts";

type OwnStage = NonNullable<SeasonDocument["stages"]>[number];

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

/** Of a season of its own stages: nothing is fed until a rhythm and litres are said. */
const USUAL_EVERY_DAYS = 14;

function readOwn(stages: readonly OwnStage[], quantity: QuantityReader): Outcome<Programme> {
  const read = gatherList(stages.map((stage, index) => readStage(stage, `stages[${index}]`, quantity)));
  if (!read.ok) return read;
  const twice = read.value.find(({ id }, index) => read.value.findIndex((one) => one.id === id) < index);
  if (twice) {
    return unusable({
      code: "id-twice",
      path: "stages",
      message: `Two stages are called "${twice.id}".`,
      expected: "an id of its own for each stage",
      received: twice.id,
      hint: "rename one of the two",
    });
  }
  return answer({
    id: "own",
    name: "own stages",
    evidence: "own",
    sources: [],
    notes: [],
    everyDays: USUAL_EVERY_DAYS,
    litresPerPlant: 0,
    stages: read.value,
  });
}

function readStage(stage: OwnStage, path: string, quantity: QuantityReader): Outcome<Stage> {
  const within = <T>(name: string, outcome: Outcome<T>): Outcome<T> =>
    outcome.ok ? outcome : unusable(...outcome.problems.map((one) => ({ ...one, path: `${path}.${name}` })));
  const parts = gather<{
    begins: Condition;
    ends: Condition | undefined;
    target: StageTarget;
    everyDays: number | undefined;
    litres: number | undefined;
  }>({
    begins: within("begins", readCondition(stage.begins)),
    ends: stage.ends === undefined ? answer(undefined) : within("ends", readCondition(stage.ends)),
    target: within("target", readStageTarget(stage.target, stage.per ?? "feed")),
    everyDays: stage.everyDays === undefined ? answer(undefined) : readEveryDays(stage.everyDays, `${path}.everyDays`),
    litres:
      stage.litresPerPlant === undefined
        ? answer(undefined)
        : within("litresPerPlant", ofDimension(quantity(stage.litresPerPlant), "volume", stage.litresPerPlant)),
  });
  if (!parts.ok) return parts;
  const { begins, ends, target, everyDays, litres } = parts.value;
  const id =
    stage.id ??
    stage.name
      .trim()
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "");
  return answer({
    id,
    name: stage.name,
    begins,
    target,
    ...(ends === undefined ? {} : { ends }),
    ...(everyDays === undefined ? {} : { everyDays }),
    ...(litres === undefined ? {} : { litresPerPlant: litres }),
    ...(stage.products === undefined ? {} : { products: stage.products }),
  });
}

function readStageTarget(text: string, per: "feed" | "stage"): Outcome<StageTarget> {
  const rates = readSeasonRates(text);
  if (!rates.ok) return rates;
  const { basis, wanted } = rates.value;
  if (basis === "cubicMetre" || basis === "total" || (basis === "litre" && per === "stage")) {
    return unusable({
      code: "target-basis-mismatch",
      path: "",
      message: `"${text}" is no target for ${per === "stage" ? "all feeds of a stage" : "a feed"}.`,
      expected: per === "stage" ? "grams per plant or per area" : "a strength, or grams per plant or per area",
      received: text,
      hint: per === "stage" ? 'write for example "N 2 g/plant"' : 'write for example "N 150 ppm" or "N 0.2 g/plant"',
    });
  }
  return answer({ basis, wanted, per }, rates.cautions, rates.working);
}

function readEveryDays(days: number, path: string): Outcome<number> {
  if (Number.isInteger(days) && days >= 1 && days <= 366) return answer(days);
  return unusable({
    code: "field-unusable",
    path,
    message: `A feed every ${days} days is not possible.`,
    expected: "a whole number of days from 1 to 366",
    received: String(days),
    hint: "write for example everyDays: 14",
  });
}
