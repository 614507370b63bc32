/** Rows of a CSV text by RFC 4180, character by character; independent of what wrote it. */
export function readCsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const one = text[at];
    if (quoted) {
      if (one !== '"') cell += one;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (one === '"') quoted = true;
    else if (one === ',') {
      row.push(cell);
      cell = '';
    } else if (one === '\r') {
      rows.push([...row, cell]);
      row = [];
      cell = '';
      at += 1;
    } else cell += one;
  }
  return rows;
}
