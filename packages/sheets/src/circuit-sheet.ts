import { Rework } from '@loomproof/netlist';
import { circuitStrands } from './circuit-strand.ts';
import { type Markup, markup, trusted } from './markup.ts';
import { page } from './page.ts';
import { panScript } from './pan-script.ts';
import type { SheetHead } from './sheet-head.ts';
import { strandFigure } from './strand-figure.ts';
import { touchedFaces } from './touched-faces.ts';

/** The circuits that change, before and after, as strands; and the faces that the work touches. */
export function circuitSheet(after: Rework, head: SheetHead): string {
  const views = (then: Rework, when: string): Markup => {
    const strands = circuitStrands(after, then.ordinal);
    return markup`<section><h2>${when}</h2>${
      strands.length === 0 ? markup`<p>Nothing there that the work changes.</p>` : null
    }${strands.map((strand, index) => markup`<figure>${strandFigure(then, strand, `${when}, net ${index + 1}`)}</figure>`)}</section>`;
  };
  const faces = touchedFaces(after);
  const body = markup`<p>Follow a strand with a finger. A housing is a cavity, a ring a stud, a barrel a splice, a triangle a tap, a filled cap an insulated end. Thick is new, dashed is cut off or given up.</p><div class="pair">${views(new Rework(after.job), 'Before')}${views(after, 'After')}</div>${faces.length === 0 ? null : markup`<div class="together"><h2>Faces that the work touches, as they are after it</h2>${faces.slice(0, 1)}</div>${faces.slice(1)}`}`;
  return page(head, 'Circuits before and after', body, markup`<script>${trusted(panScript)}</script>`);
}
