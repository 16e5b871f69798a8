import { expect, test } from "vitest";
import { runTrug } from "./support/run.ts";

const codes = async (recipe: string): Promise<string[]> => {
  const { out } = await runTrug(["mix", "--recipe", recipe, "--fill", "12 pots 10 L", "--json"]);
  return (JSON.parse(out) as { cautions: { code: string }[] }).cautions.map(({ code }) => code);
};

test("additions that harm each other are named as a pair, and one alone is not", async () => {
  const both = await codes("peat 1, vermiculite 1 + ammonium-sulfate 0.5 kg/m3 + hydrated-lime 1 kg/m3");
  expect(both).toContain("pair-ammonia");
  expect(await codes("peat 1, vermiculite 1 + hydrated-lime 1 kg/m3")).not.toContain("pair-ammonia");
});
