import type { Answer, Outcome } from "../../outcome/outcome.ts";
import { readQuantity } from "../../quantity/expression.ts";
import { mix } from "../mix.ts";
import type { MixResult } from "../mix-result.ts";
import { readMix } from "../read-mix.ts";

/** The value of an outcome that must be usable. */
export function usable<T>(outcome: Outcome<T>): Answer<T> {
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => `${p.path} ${p.code}: ${p.message}`).join("\n"));
  return outcome;
}

/** A mix from a grower's texts. */
export function mixed(request: object, components: readonly unknown[] = []): Answer<MixResult> {
  const input = usable(readMix(request, { quantity: readQuantity, components }));
  const result = usable(mix(input.value));
  return { ...result, cautions: [...result.cautions, ...input.cautions] };
}

/** The codes of the problems with a request; empty when it can be used. */
export function problemsWith(request: object, components: readonly unknown[] = []): string[] {
  const input = readMix(request, { quantity: readQuantity, components });
  const outcome = input.ok ? mix(input.value) : input;
  return outcome.ok ? [] : outcome.problems.map(({ path, code }) => `${path} ${code}`.trim());
}
