import type { Rework, Side } from '@loomproof/netlist';
import { faceFigure, isWideFace } from './face-figure.ts';
import { type Markup, markup } from './markup.ts';
import { placesOfStep } from './step-place.ts';
import { lookOf } from './work-steps.ts';

/** Each face with the cavities that steps touch, flagged with the number of the first such step, from both sides. */
export function touchedFaces(after: Rework): readonly Markup[] {
  const { job } = after;
  return job.connectors.flatMap((connector, index): readonly Markup[] => {
    const { face, name } = connector;
    if (face === null) return [];
    const marks = new Map<string, string>();
    for (const { number, action } of job.steps) {
      for (const { place } of placesOfStep(after, action)) {
        const at = job.places[place];
        if (at?.connector === index && !marks.has(at.label)) marks.set(at.label, String(number));
      }
    }
    if (marks.size === 0) return [];
    const view = (side: Side, words: string): Markup =>
      markup`<figure><div class="pan" tabindex="0" role="group" aria-label="${name}, ${side}">${faceFigure(face, { side, marks, look: lookOf(after, index), title: `${name} from its ${side}` })}</div><figcaption>${name}, ${words}</figcaption></figure>`;
    return [
      markup`<div class="views${isWideFace(face, marks.size) ? ' wide' : ''}">${view('wire side', 'wires toward you')}${view('mating side', 'mating face toward you')}</div>`,
    ];
  });
}
