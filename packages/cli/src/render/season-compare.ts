import type { ProgrammeComparison } from "nutrient-core";
import { money, shown } from "./number.ts";

const EVIDENCE = {
  "common-practice": "common practice, no source",
  trial: "published trial",
  "published-advice": "published advice",
  own: "your own",
} as const;

/** Programmes side by side: what each gives and costs over the same season. */
export function comparisonLines(compared: readonly ProgrammeComparison[], currency: string | undefined): string[] {
  return compared.flatMap(({ id, name, evidence, feeds, feedsMet, cans, gramsPerPlant, cost, costPerPlant }) => {
    const { N, P, K } = gramsPerPlant;
    const price =
      cost === undefined || costPerPlant === undefined
        ? ""
        : `, ${money(cost, currency)} in all, ${money(costPerPlant, currency)} a plant`;
    return [
      `${id}: ${name} (${EVIDENCE[evidence]})`,
      `  ${feeds} feeds, ${feedsMet} of them as wanted, ${cans} cans: N ${shown(N)}, P ${shown(P)}, K ${shown(K)} g per plant${price}`,
    ];
  });
}
