import { Rework } from '@loomproof/netlist';
import type { SheetRow, SheetTable } from './sheet-table.ts';
import { endsAt, jointWords, pointOfEnd, wireData } from './wire-words.ts';

/**
 * Every cavity and stud before and after the work: what stands in it and where that leads.
 *
 * @param after - the harness after the last step
 */
export function pinTable(after: Rework): SheetTable {
  const { job } = after;
  const before = new Rework(job);
  const rows = job.places.flatMap((place, index): readonly SheetRow[] => {
    // The pin of a device is the place of the cavity that faces it under another name.
    if (job.connectors[place.connector]?.device === true) return [];
    const [was, is] = [before, after].map((rework) => contentOf(rework, index));
    if (was === undefined || is === undefined) return [];
    const changed = was.join('\n') !== is.join('\n');
    return [{ cells: [place.address, ...was, ...is, changed ? 'changed' : ''], changed }];
  });
  return {
    head: [
      'cavity',
      'before',
      'colour and size before',
      'leads to before',
      'after',
      'colour and size after',
      'leads to after',
      'change',
    ],
    rows,
  };
}

/** Wire or plug, its looks, and where it leads. */
function contentOf(rework: Rework, place: number): readonly [string, string, string] {
  const { job } = rework;
  const ends = endsAt(rework, place);
  if (rework.plug.at(place) != null) return ['plug', '', ''];
  if (job.places[place]?.blocked === true) return ['blocked', '', ''];
  if (ends.length === 0) return [hasNoWire(rework, place), '', ''];
  const pieces = ends.map((end) => rework.endPiece[end] ?? -1);
  const names = pieces.map((piece) => job.pieces[piece]?.name ?? '');
  const looks = pieces.map((piece) => {
    const { colour, size } = wireData(job, job.pieces[piece]?.wire ?? -1);
    return [colour, size].filter((one) => one !== '').join(' ');
  });
  const far = ends.map((end, at) => {
    const [a = -1, b = -1] = job.pieces[pieces[at] ?? -1]?.ends ?? [];
    const taps = rework.jointsOn(pieces[at] ?? -1).map((joint) => jointWords(rework, joint));
    // In the order in which a finger meets them from here.
    if (a !== end) taps.reverse();
    return [...taps, pointOfEnd(rework, a === end ? b : a)].join(', ');
  });
  return [names.join(' + '), looks.join(' + '), far.join(' + ')];
}

/** What a place without a wire is called: a blank cell would look like something that was forgotten. */
function hasNoWire(rework: Rework, place: number): string {
  if ((rework.seated[place] ?? -1) >= 0) return 'terminal without a wire';
  return rework.job.places[place]?.kind === 'cavity' ? 'empty' : 'no wire';
}
