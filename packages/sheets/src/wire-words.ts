import { formatColour, formatSize, type Job, type Rework } from '@loomproof/netlist';
import { listWords } from './list-words.ts';

/** Colour and size of a wire as a table shows them; what is not known is empty. */
export function wireData(
  job: Job,
  wire: number,
): { readonly colour: string; readonly size: string; readonly length: string } {
  const one = job.wires[wire];
  return {
    colour: one?.colour == null ? '' : formatColour(one.colour),
    size: one?.size == null ? '' : formatSize(one.size),
    length: one?.lengthMm == null ? '' : `${one.lengthMm} mm`,
  };
}

/** Pieces whose ends are crimped in a terminal now, as `name, colour, size`. */
export function piecesIn(rework: Rework, terminal: number): readonly number[] {
  if (terminal < 0) return [];
  return rework.endsOf(terminal).map((end) => rework.endPiece[end] ?? -1);
}

/** A splice or tap as it is now, such as `tap TAP1`; of a tap that was taken off, the wound that it left in the run. */
export function jointWords(rework: Rework, joint: number): string {
  const { kind = 'splice', name = '' } = rework.job.joints[joint] ?? {};
  const state = rework.jointState[joint];
  if (state === 'wound') return `bare wound of ${kind} ${name}`;
  if (state !== 'covered wound') return `${kind} ${name}`;
  const cover = rework.jointCover.at(joint);
  return `wound of ${kind} ${name}${cover === null ? ' covered' : ` insulated with ${cover}`}`;
}

/** The point at which an end is now: an address, a splice or tap, or a free end by its name and cover. */
export function pointOfEnd(rework: Rework, end: number): string {
  const { job } = rework;
  const joint = rework.endJoint[end] ?? -1;
  if (joint >= 0) return job.joints[joint]?.name ?? '';
  const place = rework.terminalPlace[rework.endTerminal[end] ?? -1] ?? -1;
  if (place >= 0) return job.places[place]?.address ?? '';
  const cover = rework.endCover.at(end);
  return `free end ${job.ends[end]?.name ?? ''}${cover === null ? '' : `, insulated with ${cover}`}`;
}

/** The ends of wires in a cavity, on a stud or beyond a boundary now. */
export function endsAt(rework: Rework, place: number): readonly number[] {
  const { job } = rework;
  const terminal = rework.seated[place] ?? -1;
  if (terminal >= 0) return rework.endsOf(terminal);
  if (job.places[place]?.kind === 'cavity') return [];
  // Rings and boundaries are not in the list of seated terminals.
  return [...rework.terminalPlace.keys()]
    .filter((one) => rework.terminalPlace[one] === place && rework.terminalThere[one] === 1)
    .flatMap((one) => rework.endsOf(one));
}

/** What a person sees in a cavity or on a stud now: wires by their looks, a plug, or nothing. */
export function sightIn(rework: Rework, place: number): string {
  const { job } = rework;
  if (job.places[place]?.blocked === true) return 'a blocked position';
  if (rework.plug.at(place) != null) return 'a plug';
  const isCavity = job.places[place]?.kind === 'cavity';
  if (isCavity && (rework.seated[place] ?? -1) < 0)
    return job.connectors[job.places[place]?.connector ?? -1]?.device === true ? 'a pin' : 'empty';
  const wires = endsAt(rework, place).map((end) => {
    const piece = rework.endPiece[end] ?? -1;
    const { colour, size } = wireData(job, job.pieces[piece]?.wire ?? -1);
    return `a wire${colour === '' ? '' : ` ${colour}`}${size === '' ? '' : ` (${size})`}`;
  });
  if (wires.length > 0) return listWords(wires);
  return isCavity ? 'a terminal' : 'no wire';
}
