/** A number as a sentence says it: three digits, no more. */
export function shown(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** Names as a sentence lists them: `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** The first letter large, as at the start of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
