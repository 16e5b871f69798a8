/**
 * What US trade-size pots truly hold, in litres, by trade number.
 *
 * The number is a class, not a volume: a number 1 holds about 0.74 US gallon. These are one nursery's measured fills;
 * the standard for nursery stock allows a range around each, and for number 3 its remembered minimum (10.29 L) lies
 * above this value. Source: nursery-true-pot-volumes.
 */
export const TRADE_POT_LITRES: Readonly<Record<string, number>> = {
  "1": 2.8,
  "2": 6.0,
  "3": 9.0,
  "5": 14.9,
  "7": 24.6,
  "10": 34.1,
  "15": 54.9,
  "20": 74.2,
  "25": 104.5,
};
