/** Text that is HTML already: only {@link html} makes it, so nothing reaches the page unescaped. */
export interface Markup {
  readonly markup: string;
}

/** What may stand in a template: text and numbers are escaped, markup and lists of it go in as they are. */
export type Part = string | number | Markup | readonly Part[] | false | undefined;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * HTML or SVG from a template; every text put into it is escaped, in content and in quoted attributes alike.
 *
 * @example
 * html`<p title="${'"'}">${"<b>"}</p>`.markup  // => "<p title=\"&quot;\">&lt;b&gt;</p>"
 */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return { markup: strings.map((text, index) => text + (index < parts.length ? asMarkup(parts[index]) : "")).join("") };
}

function asMarkup(part: Part): string {
  if (part === undefined || part === false) return "";
  if (typeof part === "string" || typeof part === "number")
    return String(part).replace(/[&<>"']/g, (character) => ENTITIES[character]!);
  return "markup" in part ? part.markup : part.map(asMarkup).join("");
}
