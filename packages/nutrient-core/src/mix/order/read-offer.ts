import { answer, gatherList, type Outcome, unusable } from "../../outcome/outcome.ts";
import type { Problem } from "../../outcome/problem.ts";
import { plainText, readNumber } from "../../quantity/number.ts";
import { ofDimension, type QuantityReader } from "../../quantity/quantity.ts";
import type { Offer, PriceBreak } from "./offer.ts";

/** An offer and what it is an offer of. */
export interface NamedOffer {
  readonly ingredient: string;
  readonly offer: Offer;
}

const NAMED = /^([^\d$€£]*[^\d\s$€£:])\s*:?\s+([$€£]?\s*[\d.].*)$/;
const PRICE_LAST = /^(.*?\S)\s+[$€£]?\s*(\d+(?:[.,]\d{1,2})?)\s*(?:[$€£]|[A-Z]{3})?$/;

/** Parts "compost 50 L 6.50" into the ingredient and the rest. */
export function splitName(text: string): { readonly name: string; readonly rest: string } | undefined {
  const match = NAMED.exec(plainText(text).replace(/\s+/g, " "));
  return match ? { name: match[1]!.trim().toLowerCase(), rest: match[2]!.trim() } : undefined;
}

/**
 * Reads a sack, brick or bale: `50 L 6.50`, `2 cu ft 24.99`, `650 g makes 9 L 3.20`, `107 L makes 200 L weighs 18 kg`.
 *
 * `makes` gives the loose litres of something compressed, from its label (claims for one and the same brick differ
 * more than threefold, so it is never guessed). The last bare number is the price, in any money.
 *
 * @param text Without the ingredient's name.
 */
export function readPack(text: string, read: QuantityReader): Outcome<Offer> {
  const written = plainText(text).replace(/\s+/g, " ");
  const priced = PRICE_LAST.exec(written);
  const body = priced ? priced[1]! : written;
  const [size = "", ...more] = body.split(/\s+(makes|weighs)\s+/i);
  const said = new Map<string, string>();
  for (let i = 0; i + 1 < more.length; i += 2) said.set(more[i]!.toLowerCase(), more[i + 1]!);
  const price = priced ? readPrice(priced[2]!, text) : answer(undefined);
  const makes = said.get("makes");
  const weighs = said.get("weighs");
  const outside = read(size);
  if (!outside.ok) return unusable(...outside.problems, ...(price.ok ? [] : price.problems));
  if (!price.ok) return price;
  if (makes === undefined && outside.value.dimension === "mass") {
    return unusable({
      code: "pack-without-volume",
      path: "",
      message: `"${text}" is sold by mass; how many litres it makes is not said.`,
      expected: "litres, or a mass with the loose litres it makes",
      received: text,
      hint: `write what the label says, such as "${size} makes 60 L"`,
    });
  }
  const litres = makes === undefined ? ofDimension(outside, "volume", size) : ofDimension(read(makes), "volume", makes);
  const mass = weighs === undefined ? undefined : ofDimension(read(weighs), "mass", weighs);
  if (!litres.ok) return litres;
  if (mass && !mass.ok) return mass;
  const kilograms = mass
    ? mass.value / 1000
    : outside.value.dimension === "mass"
      ? outside.value.value / 1000
      : undefined;
  return answer(
    {
      label: makes === undefined ? size : `${size} (makes ${makes})`,
      litres: litres.value,
      ...(price.value === undefined ? {} : { price: price.value }),
      ...(kilograms === undefined ? {} : { massKilograms: kilograms }),
      isBulk: false,
    },
    [...outside.cautions, ...litres.cautions],
  );
}

const BULK = /^[$€£]?\s*(\d+(?:[.,]\d{1,2})?)\s*[$€£]?\s*(?:per|\/)\s*(.+)$/i;

/**
 * Reads loose material by the load: `45 per m3, least 2 m3, step 0.5 m3, delivery 60, from 5 m3 40`.
 *
 * @param text Price per volume; then, parted by commas: the least that is brought, the step (else the volume that the
 *   price is for), the charge for the lorry (`delivery 60 with yard` where one lorry brings several things), and lower
 *   prices `from` a volume on, for the whole load.
 */
export function readBulk(text: string, ingredient: string, read: QuantityReader): Outcome<Offer> {
  const [head = "", ...clauses] = plainText(text)
    .replace(/\s+/g, " ")
    .split(/\s*[,;](?!\d)\s*/);
  const match = BULK.exec(head);
  if (!match) return unusable(bulkUnreadable(text, `"${head}" is no price per volume`));
  const perText = /^[\d.]/.test(match[2]!) ? match[2]! : `1 ${match[2]!}`;
  const per = ofDimension(read(perText), "volume", perText);
  const price = readPrice(match[1]!, text);
  if (!per.ok || !price.ok) return unusable(...[per, price].flatMap((one) => (one.ok ? [] : one.problems)));
  const volume = (part: string): Outcome<number> => ofDimension(read(part), "volume", part);

  let step = answer(per.value) as Outcome<number>;
  let least = answer(0) as Outcome<number>;
  let delivery: Offer["delivery"];
  const breaks: Outcome<{ fromLitres: number; price: number }>[] = [];
  const problems: Problem[] = [];
  for (const clause of clauses) {
    const [, word = "", rest = ""] = /^(\w+)\s+(.*)$/.exec(clause) ?? [];
    const from = PRICE_LAST.exec(rest);
    const lorry = /^[$€£]?\s*(\d+(?:[.,]\d{1,2})?)\s*[$€£]?(?:\s+with\s+(.+))?$/i.exec(rest);
    if (word === "step") step = volume(rest);
    else if (word === "least") least = volume(rest);
    else if (word === "delivery" && lorry) {
      const charge = Number(lorry[1]!.replace(",", "."));
      delivery = { name: lorry[2]?.toLowerCase() ?? `${ingredient}: ${head}`, charge };
    } else if (word === "from" && from) {
      const fromLitres = volume(from[1]!);
      const lower = readPrice(from[2]!, text);
      breaks.push(
        fromLitres.ok && lower.ok
          ? answer({ fromLitres: fromLitres.value, price: lower.value })
          : unusable(...[fromLitres, lower].flatMap((one) => (one.ok ? [] : one.problems))),
      );
    } else problems.push(bulkUnreadable(text, `"${clause}" is not understood`));
  }
  const broken = gatherList(breaks);
  if (!step.ok || !least.ok || !broken.ok || problems.length > 0) {
    return unusable(...problems, ...[step, least, broken].flatMap((one) => (one.ok ? [] : one.problems)));
  }
  const litres = step.value;
  const perStep = (money: number): number => Math.round(((money * litres) / per.value) * 100) / 100;
  // A hair over a whole number of steps is that number: cubic yards are no round number of litres.
  const steps = (wanted: number): number => Math.max(1, Math.ceil(wanted / litres - 1e-9));
  const priceBreaks = broken.value.map(
    (one): PriceBreak => ({ fromCount: steps(one.fromLitres), price: perStep(one.price) }),
  );
  return answer(
    {
      label: `bulk, steps of ${clauses.find((one) => one.startsWith("step "))?.slice(5) ?? perText}`,
      litres,
      price: perStep(price.value),
      minimumCount: steps(least.value),
      ...(priceBreaks.length === 0 ? {} : { priceBreaks }),
      ...(delivery === undefined ? {} : { delivery }),
      isBulk: true,
    },
    per.cautions,
  );
}

function readPrice(digits: string, text: string): Outcome<number> {
  const price = readNumber(digits.replace(",", "."));
  if (!price.ok) return price;
  // Nothing costs nothing: what is free is at hand.
  return price.value >= 0.01
    ? price
    : unusable({
        code: "price-not-positive",
        path: "",
        message: `"${text}" costs nothing.`,
        expected: "a price of 0.01 or more, or none",
        received: text,
        hint: "leave the price out if it is unknown; what is free is stock at hand",
      });
}

function bulkUnreadable(text: string, reason: string): Problem {
  return {
    code: "bulk-unreadable",
    path: "",
    message: `"${text}" is not an offer of loose material: ${reason}.`,
    expected: "a price per volume, then least, step, delivery and from",
    received: text,
    hint: 'write for example "compost 45 per m3, least 2 m3, step 0.5 m3, delivery 60, from 5 m3 40"',
  };
}
