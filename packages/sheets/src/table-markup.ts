import { type Markup, type MarkupValue, markup } from './markup.ts';
import type { SheetTable } from './sheet-table.ts';

/**
 * A table; on a phone each row stands for itself, with the words of the head before its cells. Where even that is too
 * wide for the screen, it pans in its frame.
 *
 * @param headWords - whether the words of its head are those of every kit, so that none of them needs to be broken
 */
export function tableMarkup(
  { head, rows }: SheetTable,
  name: string,
  headWords: 'own' | 'of the kit' = 'own',
): Markup {
  return markup`<div class="pan" tabindex="0" role="region" aria-label="${name}"><table class="${headWords === 'own' ? 'own-head' : 'kit-head'}"><thead><tr>${head.map((cell) => markup`<th scope="col">${cell}</th>`)}</tr></thead><tbody>${rows.map(
    ({ cells, changed }) =>
      markup`<tr class="${changed ? 'changed' : 'same'}">${cells.map((cell, index) => markup`<td data-head="${head[index] ?? ''}">${cellMarkup(cell)}</td>`)}</tr>`,
  )}</tbody></table></div>`;
}

/** A cell whose measures stay in one line each: a number at the end of a line could be taken for another unit. */
function cellMarkup(cell: string): MarkupValue {
  const parts = cell.split(/(\b\d[\d.]* (?:mm2|mm|V|A|W)\b|\bAWG \d+\b)/);
  if (parts.length === 1) return cell;
  // One element for the whole cell, since a cell lays out its children side by side on a phone.
  return markup`<span>${parts.map((part, at) => (at % 2 === 0 ? part : markup`<span class="measure">${part}</span>`))}</span>`;
}
