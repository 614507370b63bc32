// An approximation of Unicode Standard Annex 11 by properties that the language knows: the scripts and the
// pictures that terminals draw over two columns, and the marks that they draw over the character before.
const twoColumns =
  /^(?:\p{Script=Han}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Script=Hangul}|\p{Script=Bopomofo}|\p{Emoji_Presentation}|[\u3001-\u303e\uff01-\uff60\uffe0-\uffe6])$/u;
const halfWidth = /^[\uff61-\uffdc]$/u;
const noColumn = /^[\p{Mn}\p{Me}]$/u;

/**
 * The number of terminal columns that one visible character takes.
 *
 * @param character - one code point, as `visibleText` leaves it
 * @returns 0 for a combining mark, 2 for a wide character, otherwise 1
 */
export function displayWidth(character: string): 0 | 1 | 2 {
  // Most texts are ASCII, and the properties are slow to look up.
  if (character < '\u0300') return 1;
  if (noColumn.test(character)) return 0;
  if (halfWidth.test(character)) return 1;
  return twoColumns.test(character) ? 2 : 1;
}
