import { listWords } from '../list-words.ts';
import { type Markup, type MarkupValue, markup } from '../markup.ts';
import { sentence } from '../sentence.ts';
import type { Repair } from './proved-repairs.ts';

/** A way back from a mistake at a step: the steps, what they need, and from where else they lead back. */
export function repairMarkup(repair: Repair, step: number): Markup {
  const { mistake, at, likewise, steps, needs, unproved } = repair;
  const way: MarkupValue =
    steps.length === 0
      ? null
      : markup`<p><b>${mistake}${at === '' ? '' : ` (${at})`}:</b></p><ol>${steps.map((words) => markup`<li>${sentence(words)}</li>`)}<li>Do step ${step} as written.</li></ol>${
          needs.length === 0 ? null : markup`<p>Beside the bag you need: ${needs.join('; ')}.</p>`
        }<p>Proved again, with the rest of the work after it${likewise.length === 0 ? '' : `; and in the same way from ${listWords(likewise)}`}.</p>`;
  const none: MarkupValue =
    unproved.length === 0
      ? null
      : markup`<p><b>${mistake}${steps.length === 0 ? '' : ', and it was another'}:</b> no way back is proved from ${unproved.map(({ at: where, why }, index) => `${index === 0 ? '' : '; '}${where} (${why})`)}. Stop, leave power off, and ask whoever made the kit.</p>`;
  return markup`<div class="repair">${way}${none}</div>`;
}
