import { listWords } from '../list-words.ts';
import { type Markup, type MarkupValue, markup } from '../markup.ts';
import { sentence } from '../sentence.ts';
import type { Repair } from './proved-repairs.ts';

/** A way back from a mistake at a step: the steps, what they need, and from where else they lead back. */
export function repairMarkup(repair: Repair, step: number): Markup {
  const { mistake, at, likewise, steps, needs, before, again, unproved } = repair;
  const way: MarkupValue =
    steps.length === 0
      ? null
      : markup`<p><b>${mistake}${at === '' ? '' : ` (${at})`}:</b>${before === null ? null : ` ${sentence(before)}`}</p><ol>${steps.map((words) => markup`<li>${sentence(words)}</li>`)}<li>${again ? `Do step ${step} as written.` : `Step ${step} is done with this: go on with the next one.`}</li></ol>${
          needs.length === 0 ? null : markup`<p>Beside the bag you need: ${needs.join('; ')}.</p>`
        }<p>Proved again, with the rest of the work after it${likewise.length === 0 ? '' : `; and in the same way from ${listWords(likewise)}`}.</p>`;
  const none: MarkupValue =
    unproved.length === 0
      ? null
      : markup`<p><b>${mistake}${steps.length === 0 ? '' : ', and it was another'}:</b> no way back is proved${unproved.map(({ at: where, why }, index) => `${index === 0 ? '' : ';'}${where === '' ? '' : ` from ${where}`} (${why})`)}. Stop, leave power off, and ask whoever made the kit.</p>`;
  return markup`<div class="repair">${way}${none}</div>`;
}
