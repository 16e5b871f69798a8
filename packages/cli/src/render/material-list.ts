import type { Material } from "nutrient-core";
import { hanging } from "./hanging.ts";
import { shown } from "./number.ts";

/** The materials in their groups: id, printed analysis, and the name where it says more than the id. */
export function materialLines(materials: readonly Material[], width: number): string[] {
  const ids = Math.max(...materials.map(({ id }) => id.length)) + 2;
  const analyses = Math.max(...materials.map((material) => analysisOf(material).length)) + 2;
  const lines: string[] = ["Generic materials: N-P2O5-K2O and further percent by mass"];
  let group = "";
  for (const material of materials) {
    if (material.group !== group) {
      group = material.group;
      lines.push("", group);
    }
    const line = `  ${material.id.padEnd(ids)}${analysisOf(material)}`;
    const name = nameOf(material);
    if (name === "") lines.push(line);
    else if (2 + ids + analyses + name.length <= width) lines.push(`${line.padEnd(2 + ids + analyses)}${name}`);
    else lines.push(line, `    ${name}`);
  }
  const note = "this analysis is remembered, not read in a source. In every case your bag's label goes first.";
  return [...lines, "", ...hanging("* ", note, width).split("\n")];
}

/** `15.5-0-0 + 19 Ca`, with a star where it is from memory. */
function analysisOf({ printed, source }: Material): string {
  const percent = (wanted: string) => printed.find(({ form }) => form === wanted)?.massFraction ?? 0;
  const grade = ["N", "P2O5", "K2O"].map((form) => shown(100 * percent(form))).join("-");
  const further = printed.flatMap(({ form, massFraction }) =>
    ["N", "P2O5", "K2O"].includes(form) || form.endsWith("-N") ? [] : [`${shown(100 * massFraction)} ${form}`],
  );
  const text = [grade, ...further].join(" + ");
  return source === "from-memory" ? `${text} *` : text;
}

/** The name where it is more than the id's words, and the short form of the trade. */
function nameOf({ id, name, aliases }: Material): string {
  const short = aliases.filter((alias) => alias.length <= 4).map((alias) => alias.toUpperCase());
  return [...(name === id.replaceAll("-", " ") ? [] : [name]), ...short].join(", ");
}
