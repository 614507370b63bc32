// Everything that a terminal obeys or a reader cannot see: controls, format characters (the bidirectional
// controls among them), separators, lone surrogates, blanks other than the space, and the characters that
// Unicode says to draw as nothing.
const hidden = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]|(?! )\p{Zs}/gu;

const shortForms: ReadonlyMap<string, string> = new Map([
  ['\n', '\\n'],
  ['\r', '\\r'],
  ['\t', '\\t'],
]);

function escaped(character: string): string {
  return shortForms.get(character) ?? `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}

/**
 * A text made safe to print: every control, bidirectional, invisible or unusual blank character is written
 * as `\n`, `\r`, `\t` or `\u{…}`. Meant for reading only: a backslash that was there already stays as it is.
 *
 * @param text - any text, well formed or not
 * @returns the text with nothing hidden in it
 */
export function visibleText(text: string): string {
  return text.replace(hidden, escaped);
}
