import type { Job, Rework, StepAction } from '@loomproof/netlist';

/** A place that a step is about, and why. */
export interface StepPlace {
  readonly place: number;
  /** `80 mm from it` where the work is not at the place itself; else null. */
  readonly away: string | null;
  /** The same in millimetres along the wire. */
  readonly mm: number | null;
}

/** The places at which a person must find the right cavity or stud for a step, in the order of the step's words. */
export function placesOfStep(rework: Rework, action: StepAction): readonly StepPlace[] {
  const { job } = rework;
  switch (action.kind) {
    case 'insert':
    case 'attach':
    case 'withdraw':
    case 'remove plug':
    case 'fit plug':
    case 'prove dead':
      return [{ place: action.place, away: null, mm: null }];
    case 'fit jumper':
      return action.places.map((place) => ({ place, away: null, mm: null }));
    case 'cut':
      return alongWire(rework, job.ends[action.newEnds[0]]?.node ?? -1, job.pieces[action.piece]?.wire ?? -1);
    case 'tap':
      return alongWire(rework, job.joints[action.joint]?.node ?? -1, job.pieces[action.piece]?.wire ?? -1);
    case 'remove tap': {
      const run = job.pieces[rework.tapPiece[action.joint] ?? -1]?.wire ?? -1;
      return alongWire(rework, job.joints[action.joint]?.node ?? -1, run);
    }
    default:
      return [];
  }
}

/** Where the end is, from which the position on a wire is measured. */
function alongWire(
  { job, terminalPlace, endTerminal }: Rework,
  node: number,
  wire: number,
): readonly StepPlace[] {
  const position = job.positions.get(node);
  const end = position === undefined ? undefined : job.wires[wire]?.ends[position.fromEnd];
  if (position === undefined || end === undefined) return [];
  const now = terminalPlace[endTerminal[end] ?? -1] ?? -1;
  const place = now >= 0 ? now : homePlace(job, end);
  // Of an end that has come off, the distance counts from that end and not from where it was.
  const from = now >= 0 ? 'it' : 'the end that was there';
  return place < 0 ? [] : [{ place, away: `${position.mm} mm from ${from}`, mm: position.mm }];
}

function homePlace(job: Job, end: number): number {
  const home = job.ends[end]?.home;
  return home?.kind === 'place' ? home.place : -1;
}
