import type { ProgrammeComparison } from "nutrient-core";
import { money, shown } from "./number.ts";
import { cansText } from "./season-feed.ts";

const EVIDENCE = {
  "common-practice": "common practice, no source",
  trial: "published trial",
  "published-advice": "published advice",
  own: "your own",
} as const;

/** The season as it is planned and under each programme, side by side: what each gives and costs from start to end. */
export function comparisonLines(compared: readonly ProgrammeComparison[], currency: string | undefined): string[] {
  return [...recordLines(compared), ...compared.flatMap((one) => programmeLines(one, currency))];
}

/** What is on record is the same in all of them. */
function recordLines([first]: readonly ProgrammeComparison[]): string[] {
  if (!first || first.recorded.feeds === 0) return [];
  const { feeds, cans, gramsPerPlant } = first.recorded;
  return [
    `On record, and counted in each of these: ${feedsText(feeds)}, ${cansText(cans)}: ${gramsText(gramsPerPlant)}`,
    "",
  ];
}

function programmeLines(
  { id, name, evidence, feeds, feedsMet, cans, gramsPerPlant, recorded, cost, costPerPlant }: ProgrammeComparison,
  currency: string | undefined,
): string[] {
  const price =
    cost === undefined || costPerPlant === undefined
      ? ""
      : `, ${money(cost, currency)} in all, ${money(costPerPlant, currency)} a plant`;
  const others = recorded.feeds > 0 ? `the other ${feeds - recorded.feeds}` : "them";
  return [
    `${id === "as-planned" ? "as planned" : id}: ${name} (${EVIDENCE[evidence]})`,
    `  ${feedsText(feeds)}, ${feedsMet} of ${others} as wanted, ${cansText(cans)}: ${gramsText(gramsPerPlant)}${price}`,
  ];
}

function feedsText(feeds: number): string {
  return `${feeds} ${feeds === 1 ? "feed" : "feeds"}`;
}

function gramsText({ N, P, K }: ProgrammeComparison["gramsPerPlant"]): string {
  return `N ${shown(N)}, P ${shown(P)}, K ${shown(K)} g per plant`;
}
