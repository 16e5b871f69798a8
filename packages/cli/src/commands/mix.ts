import {
  type Answer,
  answer,
  type MixInput,
  type MixResult,
  mix,
  type Outcome,
  type QuantityReader,
  readMix,
  readPlainQuantity,
  STARTING_POINTS,
  type StartingPoint,
} from "nutrient-core";
import type { Context, Options, TrugCommand } from "../command.ts";
import { mixLines } from "../render/mix.ts";

const startingPoint = ({ id, about }: StartingPoint): string => `  ${id.padEnd(26)}${about}`;

const each = (value: string, before: readonly string[] = []): string[] => [...before, value];

export const mixCommand: TrugCommand = {
  name: "mix",
  configure: (command) =>
    command
      .option("--recipe <parts>", 'parts or percent: "own soil 2, compost 1 + lime 3 kg/m3"')
      .option("--fill <shape>", 'a bed or pots, may be repeated: "bed 4 ft x 8 ft x 12 in mound 4 in"', each)
      .option("--loss <percent>", "volume lost on mixing (default: 15%, assumed)")
      .option("--settling <percent>", "volume lost on settling (default: 10%, assumed)")
      .option("--pack <pack>", 'a size to buy: "compost 50 L 6.50", "coir 650 g makes 9 L 3.20"', each)
      .option("--bulk <load>", 'loose: "compost 45 per m3, least 1 m3, step 0.5 m3, delivery 60"', each)
      .option("--stock <volume>", 'at hand: "perlite 40 L"', each)
      .option("--aim <aim>", "of the order: least-cost (default) or least-left-over")
      .option("--floor-limit <load>", "what a roof or balcony may carry: 2.5 kPa, 60 psf")
      .option("--car <load>", 'what the car takes at once: "400 kg, 600 L"')
      .option("--drawing <file>", "also write a drawing to scale, as SVG")
      .addHelpText("after", `\nStarting points for --recipe:\n${STARTING_POINTS.map(startingPoint).join("\n")}`),
  examples: [
    'trug mix --recipe "compost 1, perlite 1, coir 1" --fill "12 pots 30 cm x 24 cm x 28 cm" --pack "compost 50 L 6.50"',
    'trug mix --recipe "own soil 2, compost 1" --fill "2 beds 4 ft x 8 ft x 12 in" --loss 10% --units us',
    'trug mix --recipe peat-vermiculite --fill "6 trade #5 pots" --settling 0',
  ],
  run: async (_, options, context) => {
    const { recipe, fill, loss, settling, pack, bulk, stock, aim, floorLimit, car } = options;
    const request = { recipe, fill, loss, settling, pack, bulk, stock, aim, floorLimit, car };
    const shelf = await context.shelf();
    if (!shelf.ok) return shelf;
    const input = await readOnce(
      (quantity) => readMix(request, { quantity, components: shelf.value.components }),
      request,
      context,
    );
    if (!input.ok) return input;
    const outcome = mix(input.value);
    if (!outcome.ok) return outcome;
    const drawn = await drawnTo(
      options["drawing"],
      input.value,
      outcome.value,
      options["units"] ?? context.io.env["TRUG_UNITS"],
      context,
    );
    if (!drawn.ok) return drawn;
    const { recipe: parts, fills, losses, aim: orderAim } = input.value;
    return {
      inputs: {
        recipe: { components: parts.components, additions: parts.additions, source: parts.source },
        fills: fills.map(({ label, kind, count, heightMetres }) => ({
          label,
          kind,
          count,
          ...(heightMetres === undefined ? {} : { heightMetres }),
        })),
        ...losses,
        aim: orderAim,
        ...(input.value.floorLimitKilopascals === undefined
          ? {}
          : { floorLimitKilopascals: input.value.floorLimitKilopascals }),
        ...(input.value.car === undefined ? {} : { car: input.value.car }),
      },
      result: outcome.value,
      cautions: [...outcome.cautions, ...input.cautions],
      working: [...input.working, ...outcome.working],
      lines: (style) => [
        ...mixLines(outcome.value, style, shelf.value.currency),
        ...(drawn.value === undefined ? [] : [`The drawing is in ${drawn.value}`]),
      ],
    };
  },
};

/**
 * Sizes stand inside longer texts here ("bed 1.2 m x 2.4 m x 30 cm"), so they are read with the plain reader first; only
 * when that does not do is the expression reader loaded, and its word is the last.
 */
async function readOnce(
  read: (quantity: QuantityReader) => Outcome<MixInput>,
  request: Readonly<Record<string, unknown>>,
  context: Context,
): Promise<Answer<MixInput> | Exclude<Outcome<MixInput>, { ok: true }>> {
  const plain = read(readPlainQuantity);
  return plain.ok ? plain : read(await context.quantityReader(Object.values(request)));
}

/** Writes the drawing where one is asked for; its code is loaded only then. */
async function drawnTo(
  file: Options[string],
  input: MixInput,
  result: MixResult,
  units: Options[string],
  { io }: Context,
): Promise<Outcome<string | undefined>> {
  if (typeof file !== "string") return answer(undefined);
  const { mixDrawing } = await import("../render/mix-drawing.ts");
  const { writeWhole } = await import("../record/write-whole.ts");
  const { resolve } = await import("node:path");
  const written = await writeWhole(
    resolve(io.cwd, file),
    mixDrawing(input.fills, result, units === "us" ? "us" : "metric"),
    file,
  );
  return written.ok ? answer(file) : written;
}
