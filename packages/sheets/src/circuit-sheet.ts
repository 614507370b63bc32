import { Rework } from '@loomproof/netlist';
import { circuitStrands, type Strand } from './circuit-strand.ts';
import { type Markup, markup, trusted } from './markup.ts';
import { page } from './page.ts';
import { panScript } from './pan-script.ts';
import type { SheetHead } from './sheet-head.ts';
import { strandFigure } from './strand-figure.ts';
import { touchedFaces } from './touched-faces.ts';

/** The circuits that change, before and after, as strands; and the faces that the work touches. */
export function circuitSheet(after: Rework, head: SheetHead): string {
  const views = (then: Rework, strands: readonly Strand[], when: string): Markup => {
    return markup`<section><h2>${when}</h2>${
      strands.length === 0 ? markup`<p>Nothing there that the work changes.</p>` : null
    }${strands.map((strand, index) => markup`<figure>${strandFigure(then, strand, `${when}, net ${index + 1}`)}</figure>`)}</section>`;
  };
  const faces = touchedFaces(after);
  const found = new Rework(after.job);
  const [before, now] = [circuitStrands(after, found.ordinal), circuitStrands(after, after.ordinal)];
  const ring = [...before, ...now].some(({ points }) => points.some(({ again }) => again))
    ? ' A broken ring is a point that is drawn already, once more.'
    : '';
  const body = markup`<p>Follow a strand with a finger. A housing is a cavity, a ring a stud, a barrel a splice, a triangle a tap, a filled cap an insulated end, a filled band the covered wound of a tap, a cross what is bare. Thick is new, dashed is cut off or given up.${ring}</p><div class="pair">${views(found, before, 'Before')}${views(after, now, 'After')}</div>${faces.length === 0 ? null : markup`<div class="together"><h2>Faces that the work touches, as they are after it</h2><p>The number on a cavity is that of the first step there.</p>${faces.slice(0, 1)}</div>${faces.slice(1)}`}`;
  return page(head, 'Circuits before and after', body, markup`<script>${trusted(panScript)}</script>`);
}
