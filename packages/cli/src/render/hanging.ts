import { wrapAnsi as wrap } from "fast-wrap-ansi";

/** A label with its text beside it, wrapped under itself. */
export function hanging(label: string, text: string, width: number): string {
  const indent = " ".repeat(label.length);
  return wrap(text, Math.max(16, width - label.length))
    .split("\n")
    .map((line, index) => (index === 0 ? label : indent) + line)
    .join("\n");
}
