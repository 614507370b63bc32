// What a terminal would obey or a reader could not see; the line feed is left to the layout, since within a string
// it is escaped already.
const hidden = /(?!\n)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]|(?! )\p{Zs}/gu;

/**
 * JSON text with two blanks of indent and a line end. Equal data gives equal bytes. Within strings every hidden
 * character is written as an escape, so that the text is safe to look at and means the same.
 */
export function jsonText(data: unknown): string {
  return `${JSON.stringify(data, null, 2).replace(hidden, escaped)}\n`;
}

function escaped(character: string): string {
  return [...Array(character.length).keys()]
    .map((at) => `\\u${character.charCodeAt(at).toString(16).padStart(4, '0')}`)
    .join('');
}
