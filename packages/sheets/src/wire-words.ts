import { formatColour, formatSize, type Job, type Rework } from '@loomproof/netlist';

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

/** The point at which an end is now: an address, a splice or tap, or a free end by its name and cover. */
export function pointOfEnd(rework: Rework, end: number): string {
  const { job } = rework;
  const joint = rework.endJoint[end] ?? -1;
  if (joint >= 0) return job.joints[joint]?.name ?? '';
  const place = rework.terminalPlace[rework.endTerminal[end] ?? -1] ?? -1;
  if (place >= 0) return job.places[place]?.address ?? '';
  const cover = rework.endCover[end] ?? null;
  return `free end ${job.ends[end]?.name ?? ''}${cover === null ? '' : `, insulated with ${cover}`}`;
}

/** What a person sees in a cavity now: a wire by its looks, a plug, or nothing. */
export function sightIn(rework: Rework, place: number): string {
  const { job } = rework;
  if (job.places[place]?.blocked === true) return 'a blocked position';
  if (rework.plug[place] != null) return 'a plug';
  const terminal = rework.seated[place] ?? -1;
  if (terminal < 0)
    return job.connectors[job.places[place]?.connector ?? -1]?.device === true ? 'a pin' : 'empty';
  const wires = piecesIn(rework, terminal).map((piece) => {
    const { colour, size } = wireData(job, job.pieces[piece]?.wire ?? -1);
    return `a wire${colour === '' ? '' : ` ${colour}`}${size === '' ? '' : ` (${size})`}`;
  });
  return wires.length === 0 ? 'a terminal' : wires.join(' and ');
}
