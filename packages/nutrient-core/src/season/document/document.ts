import * as z from "zod/mini";

const said = (description: string) => z.optional(z.string().check(z.describe(description)));
const number = (description: string) => z.optional(z.number().check(z.describe(description)));

const stage = z.strictObject({
  id: said("Short name, small letters and hyphens; made from the name where left out."),
  name: z.string().check(z.describe("What the stage is called on the sheet.")),
  begins: z
    .string()
    .check(
      z.describe(
        'When it begins: a date, "set out + 14 days", "400 degree days after set out", or a milestone that is to be seen, such as "first flower".',
      ),
    ),
  ends: said("When it ends, written the same way; the next stage ends it in any case."),
  target: z
    .string()
    .check(z.describe('What each feed brings: "N 150 ppm, K2O 200 ppm", "N 0.2 g/plant" or "N 2 g/m2".')),
  per: z.optional(
    z.enum(["feed", "stage"]).check(z.describe("Whether each feed brings the target, or all feeds of the stage do.")),
  ),
  everyDays: number("Days from one feed to the next."),
  litresPerPlant: said('Feed for each plant: "1 L".'),
  products: z.optional(z.array(z.string()).check(z.describe("Products to feed with in this stage."))),
});

const place = z.strictObject({
  name: z.string().check(z.minLength(1), z.describe("Your own name for it; the record uses it.")),
  fill: z
    .string()
    .check(z.describe('What it is: "18 pots 20 L", "18 pots 30 cm x 24 cm x 28 cm", "2 beds 1.2 m x 2.4 m x 30 cm".')),
  plants: number("Plants in all of them together; one in each pot where left out."),
  crop: said("Where it differs from the season's."),
  sown: said("Where it differs from the season's, YYYY-MM-DD."),
  setOut: said("Where it differs from the season's, YYYY-MM-DD."),
  end: said("Where it differs from the season's, YYYY-MM-DD."),
  programme: said("Where it differs from the season's."),
  harvestPerPlant: said('Fruit hoped for from each plant: "2 kg".'),
});

/** The season file as it is written. */
export const seasonDocument = z.strictObject({
  kind: z.optional(z.literal("season")),
  name: z.string().check(z.minLength(1), z.describe("What the sheet is headed with.")),
  note: said("Anything; it is not used."),
  crop: z.string().check(z.minLength(1), z.describe("Plain name: sweet pepper, chilli pepper, tomato.")),
  places: z.array(place).check(z.minLength(1), z.describe("Beds and pots, with what grows in them.")),
  sown: said("Day of sowing, YYYY-MM-DD."),
  setOut: z.string().check(z.describe("Day of setting out (of sowing, if sown where it grows), YYYY-MM-DD.")),
  end: z.string().check(z.describe("Last day of the season, YYYY-MM-DD.")),
  programme: said("Id of a programme that comes along, such as two-phase."),
  stages: z.optional(z.array(stage).check(z.minLength(1), z.describe("Stages of your own, instead of a programme."))),
  everyDays: number("Days from one feed to the next, instead of the programme's."),
  litresPerPlant: said('Feed for each plant, instead of the programme\'s: "1 L".'),
  products: z.optional(
    z
      .array(z.string())
      .check(
        z.minLength(1),
        z.describe("What to feed with: ids from the shelf, grades or formulas. All of the shelf where left out."),
      ),
  ),
  stageProducts: z.optional(
    z
      .record(z.string(), z.array(z.string()).check(z.minLength(1)))
      .check(z.describe("Products of single stages, by the stage's id.")),
  ),
  shelf: said("Name of the shelf file."),
  stockCounted: said("Day on which the shelf's stock was counted, YYYY-MM-DD."),
  water: said('What the water holds: "N 5 ppm, Ca 60 ppm".'),
  mix: z.optional(
    z
      .strictObject({
        recipe: said(
          'What the mix is made of, as trug mix reads it: "compost 1, perlite 1, coir 1"; what its compost gives is reckoned from it.',
        ),
        brings: said(
          'What the mix or compost gives, instead of its recipe: "N 100 g/m3, K2O 200 g/m3" or "N 1 g/plant".',
        ),
        over: z.string().check(z.describe('In how long, from setting out: "120 days".')),
      })
      .check(z.describe("Nutrients of the first season that need not be fed.")),
  ),
  can: z.string().check(z.describe('The watering can: "10 L".')),
  scale: said('The step of the scale: "1 g".'),
  spoons: said("A set of spoons: metric or us."),
  syringe: said('The step of the syringe for liquids: "1 mL".'),
  labelRule: z.optional(
    z.enum(["us", "eu"]).check(z.describe("Whose rule says how far a bag may fall short of its label.")),
  ),
  ceilings: z.optional(
    z
      .array(z.string())
      .check(z.describe('The most to be given in the season: "N 20 g/m2", "P2O5 3 g/plant", "N 500 g in all".')),
  ),
  leaching: said('How much of each feed drains out: "15%".'),
  weather: said("Name of the file of daily minimum and maximum temperatures."),
  raisedAtCelsius: number("Air temperature around the seedlings before setting out, °C."),
  sowingCelsius: number("Temperature of the seed bed, °C."),
  thresholdsCelsius: z.optional(
    z
      .array(z.number())
      .check(
        z.minLength(1),
        z.maxLength(2),
        z.describe("Lower and upper temperature of growth, °C, instead of the crop's."),
      ),
  ),
  expect: z.optional(
    z
      .record(z.string(), z.string())
      .check(z.describe('When to expect a milestone: { first flower: "20 to 45 days after set out" }.')),
  ),
  reminders: z.optional(z.boolean().check(z.describe("Whether to list what to do beside feeding."))),
  log: said("Name of the record's file."),
});
export type SeasonDocument = z.infer<typeof seasonDocument>;

/** Names of the files that a season leans on, before it is read itself. */
export interface SeasonFiles {
  readonly shelf?: string;
  readonly weather?: string;
  readonly log?: string;
}

/**
 * Which files a season document names, whatever else may be wrong with it.
 *
 * @example
 * seasonFiles({ weather: "weather.csv" })  // => { weather: "weather.csv" }
 */
export function seasonFiles(document: unknown): SeasonFiles {
  if (document === null || typeof document !== "object") return {};
  const named = document as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    (["shelf", "weather", "log"] as const).flatMap((key) =>
      typeof named[key] === "string" ? [[key, named[key]]] : [],
    ),
  );
}
