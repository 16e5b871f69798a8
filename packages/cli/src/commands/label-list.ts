import { type LabelResult, label, MATERIALS } from "nutrient-core";
import type { Reply } from "../command.ts";
import { materialLines } from "../render/material-list.ts";

/** All generic materials, for people in groups, for programs with everything a label's answer holds. */
export function materialList(): Reply {
  return {
    inputs: {},
    result: {
      materials: MATERIALS.map((material) => {
        const outcome = label({ product: material });
        if (!outcome.ok) throw new Error(`the label of ${material.id} cannot be answered`);
        const { group, aliases, hazards } = material;
        return { id: material.id, group, aliases, hazards, ...(outcome.value satisfies LabelResult) };
      }),
    },
    cautions: [],
    working: [],
    lines: ({ width }) => materialLines(MATERIALS, width),
  };
}
