// A spreadsheet takes a cell that begins with one of these for a formula, unless it is a plain number; some take the wide
// signs for the same.
const formulaStart = /^(?:\s*[=+\-@＝＋－＠]|[\t\r])/u;
const plainNumber = /^[+-]\d+(?:[.,]\d+)?$/;
const protectedStart = /^'+(?:\s*[=+\-@＝＋－＠]|[\t\r])/u;

/**
 * Protects a cell from being taken for a formula by putting an apostrophe before it, which a spreadsheet does
 * not show. Done for text that begins with `=`, `+`, `-` or `@`, narrow or wide, after blanks too, with a tab or a
 * carriage return, except plain numbers such as `-5`; and for text that is already protected, so that `unprotectCell` is
 * its exact inverse.
 *
 * Addresses `CONNECTOR:CAVITY` are protected like other text: a designation such as `-X1` is a formula to a
 * spreadsheet, and comes out as the content of cell X1.
 *
 * @param text - the text of a cell
 * @returns the text to write
 */
export function protectCell(text: string): string {
  const isFormula = formulaStart.test(text) && !plainNumber.test(text);
  return isFormula || protectedStart.test(text) ? `'${text}` : text;
}

/**
 * Takes one protecting apostrophe off.
 *
 * @param text - the text of a cell as read
 * @returns the text that `protectCell` was given
 */
export function unprotectCell(text: string): string {
  return protectedStart.test(text) ? text.slice(1) : text;
}
