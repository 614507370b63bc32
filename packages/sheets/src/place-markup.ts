import { faceFigure, isWideFace } from './face-figure.ts';
import { type Markup, type MarkupValue, markup } from './markup.ts';
import { sentence } from './sentence.ts';
import type { StepSight } from './work-steps.ts';

/** How to find the place of a step: in words, on both views of the face, and what it could be taken for. */
export function placeMarkup(place: StepSight, mark: string): Markup {
  const { address, away, words, otherWords, face, label, connector, sight } = place;
  if (face === null || words === null) {
    const seen = place.isStud
      ? `a stud, ${sight === 'no wire' ? 'no wire on it now' : `on it now ${sight}`}`
      : sight === 'empty'
        ? 'empty now'
        : `in it now ${sight}`;
    return markup`<p class="place"><b>${address}</b>${away === null ? null : `, ${away}`}: ${seen}.</p>${
      place.connector === address
        ? null
        : markup`<p>Where this cavity lies on its connector is not said: find it by the moulded number.</p>`
    }`;
  }
  const marks = new Map([[label, mark]]);
  const view = (side: 'wire side' | 'mating side'): MarkupValue =>
    faceFigure(face, {
      side,
      marks,
      look: place.look,
      title: `${connector} from its ${side}, cavity ${label} marked ${mark}`,
    });
  return markup`<div class="together"><p class="place"><b>${address}</b>${away === null ? null : `, ${away}`}: ${words}.</p>
<div class="views${isWideFace(face, 1) ? ' wide' : ''}"><figure><div class="pan" tabindex="0" role="group" aria-label="${connector}, wire side, step ${mark}">${view('wire side')}</div><figcaption>${connector}, <b>wires toward you</b></figcaption></figure>
<figure class="other"><div class="pan" tabindex="0" role="group" aria-label="${connector}, mating side, step ${mark}">${view('mating side')}</div><figcaption>${connector}, mating face toward you: the view that you do not have now.${otherWords === null ? null : ` ${sentence(otherWords)}`}</figcaption></figure></div></div>${trapMarkup(place)}`;
}

function trapMarkup({ traps, label }: StepSight): MarkupValue {
  if (traps.length === 0) return null;
  return markup`<div class="trap"><b>Easily taken for ${label}, and the step could be done there just as well:</b><ul>${traps.map(
    ({ cavity, sight, why }) => markup`<li><b>${cavity}</b>, ${sight}: ${why.join('; ')}</li>`,
  )}</ul></div>`;
}
