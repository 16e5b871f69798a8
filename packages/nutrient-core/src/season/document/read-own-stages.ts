import { answer, gather, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Condition, Programme, Stage, StageTarget } from "../programme.ts";
import type { SeasonDocument } from "./document.ts";
import { readCondition } from "./read-condition.ts";
import { readSeasonRates } from "./read-rates.ts";

type OwnStage = NonNullable<SeasonDocument["stages"]>[number];

/** Of a season of its own stages: nothing is fed until a rhythm and litres are said. */
const USUAL_EVERY_DAYS = 14;

/** A programme of the grower's own stages. */
export function readOwn(stages: readonly OwnStage[], quantity: QuantityReader): Outcome<Programme> {
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

/** Holds a rhythm to whole days. */
export function readEveryDays(days: number, path: string): Outcome<number> {
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
