import { answer, at, gather, type Outcome, unusable } from "../outcome/outcome.ts";
import { ofDimension, type QuantityReader } from "../quantity/quantity.ts";

/** A concentrate that an injector thins: one part of stock in `ratio` parts of finished feed. */
export interface Stock {
  readonly ratio: number;
  readonly tankLitres: number;
}

/** The texts that ask for a stock solution. */
export interface StockTexts {
  readonly stock?: string | undefined;
  readonly tank?: string | undefined;
}

/**
 * Reads how a stock solution is made: both its ratio and its tank, or neither.
 *
 * @example
 * readStock({ stock: "1:100", tank: "5 L" }, readPlainQuantity)  // => { ratio: 100, tankLitres: 5 }
 */
export function readStock(texts: StockTexts, quantity: QuantityReader): Outcome<Stock | undefined> {
  if (texts.stock === undefined && texts.tank === undefined) return answer(undefined);
  if (texts.stock === undefined || texts.tank === undefined) {
    const missing = texts.stock === undefined ? "stock" : "tank";
    return unusable({
      code: "option-missing",
      path: missing,
      message: "A stock solution needs both its ratio and the volume of the tank.",
      expected: missing === "stock" ? "an injector ratio such as 1:100" : "a volume such as 5 L",
      received: "nothing",
      hint: missing === "stock" ? "add --stock 1:100" : 'add --tank "5 L"',
    });
  }
  return gather<{ ratio: number; tankLitres: number }>({
    ratio: at("stock", readInjectorRatio(texts.stock)),
    tankLitres: at("tank", ofDimension(quantity(texts.tank), "volume", texts.tank)),
  });
}

/**
 * Reads an injector ratio: `1:100` is one part of stock in one hundred parts of finished feed.
 *
 * @example
 * readInjectorRatio("1:100")  // => 100
 */
export function readInjectorRatio(written: string): Outcome<number> {
  const match = /^\s*1\s*[:/]\s*(\d+(?:\.\d+)?)\s*$/.exec(written);
  const ratio = Number(match?.[1]);
  if (!match || !(ratio >= 1 && ratio <= 5000)) {
    return unusable({
      code: "injector-ratio-unreadable",
      path: "",
      message: `"${written}" is not an injector ratio.`,
      expected: "1:R with R from 1 to 5000, such as 1:100",
      received: written,
      hint: "write 1:100 for one part of stock in one hundred parts of finished feed",
    });
  }
  return answer(ratio);
}
