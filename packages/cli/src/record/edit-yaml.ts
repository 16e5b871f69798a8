import { isDeepStrictEqual } from "node:util";
import { answer, type Outcome, unusable } from "nutrient-core";
import { type Document, isScalar, parse, parseDocument } from "yaml";

/** A field that was set: its path as it was written, and what stood there. */
export interface Edit {
  readonly path: string;
  readonly before: string;
  readonly after: string;
}

/**
 * Sets fields of a YAML text, `places[0].plants=20`, and leaves its comments, its order and everything else as it was.
 *
 * @param text YAML that reads.
 * @param settings Each a path, an equals sign, and the value as it would be written in the file.
 */
export function editYaml(
  text: string,
  settings: readonly string[],
): Outcome<{ readonly text: string; readonly edits: readonly Edit[] }> {
  const edits: Edit[] = [];
  let edited = text;
  for (const setting of settings) {
    const [, path = "", written = ""] = /^\s*([A-Za-z][\w.[\]-]*)\s*=\s*(.*?)\s*$/s.exec(setting) ?? [];
    if (path === "" || written === "") return cannotSet(setting);
    const document = parseDocument(edited);
    const keys = [...path.matchAll(/[^.[\]]+/g)].map(([key]) => (/^\d+$/.test(key) ? Number(key) : key));
    try {
      edited = withValue(edited, document, keys, written);
    } catch {
      return cannotSet(setting);
    }
    const node: unknown = document.getIn(keys, true);
    const before = isScalar(node) ? String(node.value) : document.hasIn(keys) ? "what it was" : "nothing";
    edits.push({ path, before, after: written });
  }
  return answer({ text: edited, edits });
}

/** The text with one field set. Throws where the field or the value cannot be. */
function withValue(text: string, document: Document, keys: readonly (string | number)[], written: string): string {
  const value: unknown = parse(written);
  const node: unknown = document.getIn(keys, true);
  if (isScalar(node) && node.range) {
    // Only the value's own letters are replaced, so that even the spaces before a comment stay.
    const [start, end] = node.range;
    const spliced = text.slice(0, start) + written + text.slice(end);
    const read = parseDocument(spliced);
    if (read.errors.length === 0 && isDeepStrictEqual(read.getIn(keys), value)) return spliced;
  }
  const changed = parseDocument(text);
  changed.setIn(keys, value);
  // Long lines are the grower's own: they are not folded.
  return changed.toString({ lineWidth: 0, flowCollectionPadding: false });
}

function cannotSet(setting: string): Outcome<never> {
  return unusable({
    code: "setting-unreadable",
    path: "set",
    message: `"${setting}" does not say which field becomes what.`,
    expected: "a field of the season file, an equals sign, and its value",
    received: setting || "nothing",
    hint: 'write for example --set "setOut=2027-05-20" or --set "places[0].plants=20"',
  });
}
