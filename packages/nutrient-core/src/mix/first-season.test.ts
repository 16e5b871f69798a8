import { expect, test } from "vitest";
import { mixFirstSeason } from "./first-season.ts";
import { mixed } from "./testing/read.ts";

// Worked by hand: a litre of compost of 0.393 kg (the middle of 0.285 and 0.501) with 1.53 % nitrogen has 6.01 g of it.
test("compost alone", () => {
  const season = mixFirstSeason([{ name: "compost", volumeLitres: 1000, looseVolumeLitres: 1000 }], 1000)!.value;
  const nitrogen = 1000 * 393 * 0.0153;
  expect(Math.abs(season.totalGramsPerCubicMetre.N! - nitrogen)).toBeLessThanOrEqual(nitrogen * 1e-12);
  const [low, high] = season.firstSeasonNitrogenGramsPerCubicMetre;
  expect(Math.abs(low - nitrogen * 0.05)).toBeLessThanOrEqual(nitrogen * 1e-12);
  expect(Math.abs(high - nitrogen * 0.1)).toBeLessThanOrEqual(nitrogen * 1e-12);
  // CalRecycle (seen) prints P as 5,900 mg/kg and K as 1.13 % beside the oxides; P was rounded there before or after
  // the conversion (1.34 % P2O5 is 5,848 mg/kg), so 1 %.
  expect(Math.abs(season.totalGramsPerCubicMetre.P! / 393_000 - 0.0059)).toBeLessThanOrEqual(0.0059 * 0.01);
  expect(Math.abs(season.totalGramsPerCubicMetre.K! / 393_000 - 0.0113)).toBeLessThanOrEqual(0.00005);
});

test("a measured density goes before the published one", () => {
  const ingredient = { name: "compost", volumeLitres: 1000, looseVolumeLitres: 1000, dryKilogramsPerLitre: 0.3 };
  expect(mixFirstSeason([ingredient], 1000)!.value.totalGramsPerCubicMetre.N).toBe(300_000 * 0.0153);
});

test("it is spread over the filled space: loss on mixing makes it denser", () => {
  const at = (loss: string): number =>
    mixed({ recipe: "compost 1, perlite 2", fill: ["1 pot 100 L"], loss, settling: "0" }).value.firstSeason!
      .totalGramsPerCubicMetre.N!;
  expect(Math.abs(at("20%") - at("0") / 0.8)).toBeLessThanOrEqual(at("0") * 1e-12);
});

test("a mix without compost brings nothing that is counted", () => {
  expect(mixFirstSeason([{ name: "coir", volumeLitres: 1, looseVolumeLitres: 1 }], 1)).toBeUndefined();
  expect(mixed({ recipe: "peat 1, perlite 1", fill: ["1 pot 10 L"] }).value.firstSeason).toBeUndefined();
});
