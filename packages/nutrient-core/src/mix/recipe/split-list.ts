/** Parts a list at any of the signs, outside brackets only; a comma inside a number (1,5) is no sign. */
export function splitOutside(text: string, signs: ",;" | "+"): string[] {
  const pieces: string[] = [];
  let depth = 0;
  let piece = "";
  for (const [index, letter] of [...text].entries()) {
    if (letter === "(") depth += 1;
    if (letter === ")") depth -= 1;
    const inNumber = letter === "," && /\d/.test(text[index - 1] ?? "") && /\d/.test(text[index + 1] ?? "");
    if (signs.includes(letter) && depth === 0 && !inNumber) {
      pieces.push(piece.trim());
      piece = "";
    } else piece += letter;
  }
  return [...pieces, piece.trim()];
}

/** What a list names, parted by commas or semicolons; a list of nothing is one empty piece, for its reader to refuse. */
export function listed(list: string): string[] {
  const pieces = splitOutside(list, ",;").filter((piece) => piece !== "");
  return pieces.length === 0 ? [""] : pieces;
}
