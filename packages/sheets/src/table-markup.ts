import { type Markup, markup } from './markup.ts';
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
      markup`<tr class="${changed ? 'changed' : 'same'}">${cells.map((cell, index) => markup`<td data-head="${head[index] ?? ''}">${cell}</td>`)}</tr>`,
  )}</tbody></table></div>`;
}
