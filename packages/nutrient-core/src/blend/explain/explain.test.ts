import { describe, expect, test } from "vitest";
import { formNamed } from "../../element/nutrient.ts";
import { MATERIALS } from "../../product/materials.ts";
import { fractionOf } from "../../product/product.ts";
import { blend } from "../blend.ts";
import type { BlendInput } from "../blend-input.ts";
import type { BlendResult } from "../blend-result.ts";
import { type Ask, ask, inputOf } from "../testing/ask.ts";
import { EXPLAINED, SHELF } from "../testing/explained-cases.ts";
import { rateWords, timesWords } from "../words.ts";

/**
 * Every sentence is read twice: as words against the table, and as a claim, which is checked by solving the blend that
 * it speaks of. A sentence that no check knows is a failure.
 */
interface Case {
  readonly request: Ask;
  readonly input: BlendInput;
  readonly result: BlendResult;
}
type Check = (match: RegExpExecArray, one: Case) => void;

const largestMiss = ({ certificate }: BlendResult): number => Math.max(...certificate.solution.relativeMisses);
/** What is said to three digits or as a whole percent is right to half of its last place and a little. */
const saidPercent = (text: string, share: number) =>
  expect(Math.abs(share * 100 - Number(text))).toBeLessThanOrEqual(0.51);
const saidFigure = (text: string, value: number) =>
  expect(Math.abs(value - Number(text)) / Math.abs(value)).toBeLessThanOrEqual(0.006);
const massOf = (text: string, unit: string | undefined): number => Number(text) * (unit === "kg" ? 1000 : 1);
const nutrientOf = (name: string) => formNamed(name)!;
const holds = (input: BlendInput, name: string) =>
  input.products.filter((one) => fractionOf(one, nutrientOf(name) as "N") > 0);
const again = (request: Ask): BlendResult => ask(request, SHELF).value;
const withMaterial = ({ request }: Case, id: string): Ask => {
  const { aim: _, prefer: __, ...rest } = request;
  return { ...rest, ...(request.aim ? { aim: request.aim } : {}), products: `${request.products}, ${id}` };
};
/** A trial material has no price, so the blend is solved as one without prices. */
const idOf = (name: string): string => MATERIALS.find((one) => one.name.toLowerCase() === name.toLowerCase())!.id;

const G = String.raw`([\d.]+) (k?g)`;
const NAME = String.raw`(.+?)(?: \((\S+)\))?`;

const CHECKS: readonly (readonly [RegExp, Check])[] = [
  [/^Every target is met\.$/, (_, { result }) => expect(result.residuals.every(({ met }) => met)).toBe(true)],
  [
    /^(\S+) comes out ([\d.]+) % (short of|over) what was asked(?: \(.+ would still count as met\))?\.$/,
    ([, name, text, side], { result }) => {
      const { delivered, wanted, met } = result.residuals.find(({ nutrient }) => nutrient === name)!;
      expect(met).toBe(false);
      saidPercent(text!, Math.abs(delivered / wanted - 1));
      expect(delivered < wanted).toBe(side === "short of");
    },
  ],
  [
    /^(\S+) comes out at ([\d.]+) times what was asked\.$/,
    ([, name, factor], { result }) => {
      const { delivered, wanted } = result.residuals.find(({ nutrient }) => nutrient === name)!;
      expect(Math.abs(delivered / wanted - Number(factor))).toBeLessThanOrEqual(0.051);
    },
  ],
  [
    /^Nothing is off by more than ([\d.]+) % of what was asked: labels and scales are less exact than that\. Within 1 % it would all count as met\.$/,
    ([, text], { request, result }) => {
      saidPercent(text!, largestMiss(result));
      expect(again({ ...request, within: "1%" }).status).toBe("met");
    },
  ],
  [
    /^Both are (\S+), and so is every mixture of the two\.$/,
    ([, ratio], { request }) => {
      for (const products of request.products.split(", "))
        expect(again({ ...request, grade: undefined, ratio, products, within: "1%" }).status).toBe("met");
    },
  ],
  [/^None of these products holds (.+)\.$/, ([, name], { input }) => expect(holds(input, name!)).toEqual([])],
  [
    /^All the (\S+) here comes with (\S+), so more \S+ would bring too much \S+\.$/,
    ([, first, second], { input }) => {
      expect(holds(input, first!).length).toBeGreaterThan(0);
      for (const one of holds(input, first!)) expect(holds(input, second!)).toContain(one);
    },
  ],
  [
    /^More (\S+) is held back: (.+), and there is enough of (each|that)\.$/,
    ([, name, brings], { input, result }) => {
      const said = brings!.split(/, | and /).map((part) => part.split(" brings "));
      expect(said).toHaveLength(holds(input, name!).length);
      for (const [who, what] of said) {
        const one = input.products.find((candidate) => candidate.name.toLowerCase() === who!.toLowerCase())!;
        expect(holds(input, name!)).toContain(one);
        expect(holds(input, what!)).toContain(one);
        const { delivered, wanted } = result.residuals.find(
          ({ nutrient }) => nutrient === (nutrientOf(what!) as string),
        )!;
        expect(delivered).toBeGreaterThan(wanted);
      }
    },
  ],
  [
    /^The (?:extra )?(\S+) comes along with the (\S+) of (.+)\.$/,
    ([, over, reason, names], { input }) => {
      for (const name of names!.split(/, | and /)) {
        const one = input.products.find((candidate) => candidate.name.toLowerCase() === name.toLowerCase())!;
        expect(holds(input, over!)).toContain(one);
        expect(holds(input, reason!)).toContain(one);
      }
    },
  ],
  [
    /^If (\S+) may (rise|fall) to ([\d.]+) \S+?(?:, (twice|[\d.]+ times) what was asked)?, everything else is met\.$/,
    ([, name, , rate, factor], { request, result }) => {
      const asked = result.residuals.find(({ nutrient }) => nutrient === name)!.wanted;
      expect(Number(rate) / asked).toBeLessThanOrEqual(3);
      expect(factor === undefined ? Number(rate) / asked : 0).toBeLessThan(2);
      if (factor) expect(Math.abs(Number(rate) / asked - (Number.parseFloat(factor) || 2))).toBeLessThanOrEqual(0.06);
      const target = request.target!.replace(new RegExp(`\\b${name} (at most )?[\\d.]+`), `${name} ${rate}`);
      expect(target).not.toBe(request.target);
      const { residuals } = again({ ...request, target });
      // The rate is said to three digits.
      for (const one of residuals) expect(Math.abs(one.delivered / one.wanted - 1)).toBeLessThan(0.051);
      expect(residuals.find(({ nutrient }) => nutrient === name)!.wanted).toBeGreaterThan(
        result.residuals.find(({ nutrient }) => nutrient === name)!.wanted,
      );
    },
  ],
  [
    /^A (ratio|grade) of (\S+) could be made exactly\.$/,
    ([, kind, triple], { request }) => {
      expect(again({ ...request, [kind!]: triple, within: "1%" }).status).toBe("met");
    },
  ],
  [
    /^The batch is full: these products are too weak for this grade, even without filler\.$/,
    (_, { result }) => expect(result.fillerGrams!).toBeLessThan(1e-6),
  ],
  [
    /^Mixed, these two reach only what lies between (\S+) \(all .+\) and (\S+) \(all .+\)\.$/,
    ([, from, to], { request }) => {
      const products = request.products.split(", ");
      for (const [index, ratio] of [from!, to!].entries()) {
        expect(again({ ...request, grade: undefined, ratio, products: products[index]!, within: "1%" }).status).toBe(
          "met",
        );
      }
    },
  ],
  [
    new RegExp(`^At least ${G} of (.+) has to be used; less would come closer\\.$`),
    (_, { request, result }) => {
      const free = again({ ...request, use: undefined });
      expect(free.certificate.solution.objective).toBeLessThan(result.certificate.solution.objective);
    },
  ],
  [
    /^The limit (.+) is reached; a tenth more room would bring the largest miss from ([\d.]+) % to ([\d.]+) %\.$/,
    ([, , before, after], { request, result }) => {
      saidPercent(before!, largestMiss(result));
      const limit = request.limit!.replace(/[\d.]+/, (digits) => String(Number(digits) * 1.1));
      // NH4-N begins with a digit of its own.
      const wider = request.limit!.startsWith("NH4") ? "NH4-N 33% of N" : limit;
      saidPercent(after!, largestMiss(again({ ...request, limit: wider })));
    },
  ],
  [
    new RegExp(
      `^(?:All ${G} of (.+) on the shelf is used|(.+) is held to ${G}); ${G} more would bring the largest miss from ([\\d.]+) % to ([\\d.]+) %\\.$`,
    ),
    (match, { request, result }) => {
      const [, all, allUnit, , held, most, mostUnit, more, moreUnit, before, after] = match;
      saidPercent(before!, largestMiss(result));
      const next = massOf(all ?? most!, allUnit ?? mostUnit) + massOf(more!, moreUnit);
      const wider = held
        ? again({ ...request, use: `${held} at most ${next} g` })
        : ask(
            request,
            SHELF.map((one) => (one.stockGrams ? { ...one, stockGrams: next } : one)),
          ).value;
      saidPercent(after!, largestMiss(wider));
    },
  ],
  [
    new RegExp(
      `^Adding ${G} of ${NAME} and weighing the rest anew would meet every target(?:, but it brings (.+?) too(?:; ${G} of ${NAME} instead would bring (?:no \\S+|none of that))?)?\\.$`,
    ),
    (match, one) => {
      const [, mass, unit, name, id, , second, secondUnit, secondName, secondId] = match;
      const helps = (material: string, said: number) => {
        const tried = again(withMaterial(one, material));
        expect(tried.status).toBe("met");
        saidFigure(String(said), tried.amounts.at(-1)!.massGrams);
      };
      helps(id ?? idOf(name!), massOf(mass!, unit));
      if (second) {
        helps(secondId ?? idOf(secondName!), massOf(second, secondUnit));
        expect(massOf(second, secondUnit)).toBeGreaterThanOrEqual(massOf(mass!, unit));
      }
    },
  ],
  [
    new RegExp(
      `^Adding ${G} of ${NAME} and weighing the rest anew would bring it ([\\d.]+) % closer to what was asked(?:, but it brings (.+?) too(?:; ${G} of ${NAME} instead would bring it ([\\d.]+) % closer, and (?:no \\S+|none of that))?)?\\.$`,
    ),
    ([, , , name, id, cut], one) => {
      const tried = again(withMaterial(one, id ?? idOf(name!)));
      const { objective } = tried.certificate.solution;
      saidPercent(cut!, 1 - Math.sqrt(objective / one.result.certificate.solution.objective));
    },
  ],
  [
    /^(.+) could be left out: (.+) alone also meets? every target\.$/,
    ([, , kept], { request }) => {
      expect(again({ ...request, products: kept!.replace(" and ", ", ") }).status).toBe("met");
    },
  ],
  [
    /^Asking a tenth less (\S+) would save ([\d.]+) % of the cost\.$/,
    ([, name, saved], { request, result }) => {
      const target = request.target!.replace(
        new RegExp(`\\b${name} ([\\d.]+)`),
        (_, digits) => `${name} ${Number(digits) * 0.9}`,
      );
      saidPercent(saved!, 1 - again({ ...request, target }).cost! / result.cost!);
    },
  ],
  [
    /^There is ([\d.]+) (\S+) of (\S+) already, more than was asked, and no product takes any away\.$/,
    ([, rate, , name], { request }) => expect(request.already).toContain(`${name} ${rate}`),
  ],
];

describe.each(EXPLAINED)("$name", ({ request, says }) => {
  const input = inputOf(request, SHELF);
  const { value: result } = ask(request, SHELF);

  test("says what the table says", () => expect(result.explanation).toEqual(says));

  test.each(result.explanation)("is true: %s", (sentence) => {
    const found = CHECKS.filter(([pattern]) => pattern.test(sentence));
    expect(found, "checks that know this sentence").toHaveLength(1);
    const [pattern, check] = found[0]!;
    check(pattern.exec(sentence)!, { request, input, result });
  });

  test("is short, and plain", () => {
    expect(result.explanation.length).toBeLessThanOrEqual(8);
    for (const sentence of result.explanation) {
      expect(sentence.length, sentence).toBeLessThanOrEqual(220);
      expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
      expect(sentence).not.toMatch(/multiplier|residual|objective|constraint|NaN|undefined|Infinity|e-\d/);
    }
  });
});

test("a grower of US habit hears the same in the units of the trade there", () => {
  const { request } = EXPLAINED.find(({ name }) => name === "a mix")!;
  const said = blend({ ...inputOf(request, SHELF), explainedIn: "us" });
  const sentences = said.ok ? said.value.explanation : [];
  // 232 g/m3 is 0.391 lb in a cubic yard of 0.764555 m3; 51.7 g is 1.82 oz: by the definitions of pound and yard.
  expect(sentences).toContain("If S may rise to 0.391 lb/cu yd, 2.9 times what was asked, everything else is met.");
  expect(sentences.at(-1)).toContain("Adding 1.82 oz (51.7 g) of agricultural lime");
  expect(rateWords(10, "squareMetre", "us")).toBe("2.05 lb/1000 sq ft");
  expect(rateWords(150, "litre", "us")).toBe("150 ppm");
});

test("twice is said as a word, and large factors whole", () => {
  expect([1.96, 2.04, 2.06, 12.3].map(timesWords)).toEqual(["twice", "twice", "2.1 times", "12 times"]);
});

test("thirty or more are read", () => expect(EXPLAINED.length).toBeGreaterThanOrEqual(30));

test.each(["potassium only with nitrogen", "a nutrient that nothing holds", "phosphate only with nitrogen"])(
  "%s: no other material on the list meets every target with less",
  (name) => {
    const { request, says } = EXPLAINED.find((one) => one.name === name)!;
    const said = /^Adding ([\d.]+) (k?g) of/.exec(says.find((sentence) => sentence.startsWith("Adding"))!)!;
    const inWater = request.water !== undefined;
    const masses = MATERIALS.flatMap((material) => {
      const { id, hazards, state, leavesResidue, solubilityGramsPerLitre } = material;
      const proposed = inWater ? !leavesResidue && solubilityGramsPerLitre !== undefined : state !== "liquid";
      if (!proposed || hazards.includes("acid") || hazards.includes("caustic")) return [];
      if (request.products.split(", ").some((one) => one === id || one === material.formula)) return [];
      const { amounts, status } = again({ ...request, products: `${request.products}, ${id}` });
      const mass = amounts.at(-1)!.massGrams;
      return status === "met" && mass > 0 ? [mass] : [];
    });
    expect(masses.length).toBeGreaterThan(1);
    saidFigure(String(massOf(said[1]!, said[2])), Math.min(...masses));
  },
);
