import type { Caution } from "../outcome/caution.ts";
import type { WorkingLine } from "../outcome/working.ts";
import { feedCautions, nitrogenFormCautions } from "../solution/cautions.ts";
import { type Conductivity, electricalConductivity } from "../solution/conductivity.ts";
import type { Extent } from "../supply/basis.ts";
import { inBothForms } from "../supply/both-forms.ts";
import { addDelivered } from "../supply/one-product.ts";
import { type Amount, type Delivered, deliver } from "../supply/supply.ts";
import type { BlendInput } from "./blend-input.ts";
import type { BlendResult } from "./blend-result.ts";

/** What a blend for a target delivers, and what to heed in it. */
export interface Spread {
  readonly result: Partial<BlendResult>;
  readonly cautions: readonly Caution[];
  /** How the conductivity was reckoned, or both ends of its range. */
  readonly working: readonly WorkingLine[];
}

const DELIVERED_FIELD = {
  litre: "deliveredPpm",
  squareMetre: "deliveredGramsPerSquareMetre",
  cubicMetre: "deliveredGramsPerCubicMetre",
} as const;

/** What these amounts come to on the blend's target; undefined for a batch, which is spread on nothing yet. */
export function spreadOf({ purpose, already }: BlendInput, amounts: readonly Amount[]): Spread | undefined {
  return purpose.kind === "target" ? spreadOn(purpose.extent, amounts, already) : undefined;
}

function spreadOn(extent: Extent, amounts: readonly Amount[], already: Delivered): Spread {
  const delivered = addDelivered(deliver(amounts, extent), already);
  const conductivity: Conductivity | undefined =
    extent.basis === "litre" ? electricalConductivity(amounts, extent.amount) : undefined;
  return {
    result: {
      [DELIVERED_FIELD[extent.basis]]: inBothForms(delivered),
      ...(conductivity?.known ? { ecMilliSiemensPerCm: conductivity.milliSiemensPerCm } : {}),
      ...(conductivity?.range ? { ecRange: conductivity.range } : {}),
    },
    cautions: [...feedCautions(delivered, extent, conductivity, amounts), ...nitrogenFormCautions(delivered, extent)],
    working: conductivity?.working ?? [],
  };
}
