// Controls (but tab and line feed), and the marks that turn the direction of writing.
const UNPRINTABLE = /(?![\t\n])[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu;

/** Text of a file or of the command line as it may stand on a screen: what would steer the terminal is spelled out. */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}
