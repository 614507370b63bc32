import type { Job, Piece, Step, StepAction, Terminal, WireEnd } from '@loomproof/netlist';
import type { WorkFault } from './fault.ts';

/** What a name of the written work means once a mistake was made: the person goes on with what is in the hand. */
interface Substitution {
  readonly ends: ReadonlyMap<number, number>;
  readonly pieces: ReadonlyMap<number, number>;
}

/**
 * The job as it is done with one mistake in it.
 *
 * @param job - the job as designed, or one already changed by another mistake
 * @param fault - any but the other variant's steps, which are a job of their own
 * @param variants - jobs of the other variants by name
 * @returns the changed job; the same nodes keep their numbers, new ones come after them
 */
export function changeJob(job: Job, fault: WorkFault, variants: ReadonlyMap<string, Job>): Job {
  switch (fault.is) {
    case 'step left out':
      // Something that changes nothing stands in its place, so that a second mistake finds its step where it was.
      return withoutMark(
        withSteps(job, (action, index) => (index === fault.at ? { kind: 'prove dead', place: 0 } : action)),
        job.steps[fault.at]?.action,
        fault.at,
      );
    case 'wrong cavity':
      return wrongCavity(job, fault.at, fault.hit);
    case 'cavities exchanged': {
      const [first, second] = fault.at;
      const places = fault.at.map((at) => placeOf(job.steps[at]?.action));
      return withSteps(job, (action, index) => {
        if (index === first) return withPlace(action, places[1] ?? -1);
        return index === second ? withPlace(action, places[0] ?? -1) : action;
      });
    }
    case 'ends exchanged': {
      const [a, b] = fault.ends;
      const swapped = new Map([
        [a, b],
        [b, a],
      ]);
      // The end that is taken for the other one is also made ready in its place.
      const made = { ends: swapped, pieces: new Map<number, number>() };
      return withSteps(job, (action) => (joiningKinds.has(action.kind) ? substituted(action, made) : action));
    }
    case 'terminals exchanged':
      return terminalsExchanged(job, fault.terminals);
    case 'wrong wire':
      return wrongWire(job, fault.at, fault.wire, fault.end);
    case 'cut at another place':
      return withSteps(job, (action, index) =>
        index === fault.at && action.kind === 'cut' ? { ...action, after: fault.after } : action,
      );
    case 'connector misread':
    case 'both ends misread':
    case 'built in a wrong cavity': {
      const built = fault.where === 'work' ? job : seatedElsewhere(job, fault.hits);
      return fault.where === 'bag' ? built : workedElsewhere(built, fault.hits);
    }
    case 'other variant':
      return variants.get(fault.variant) ?? job;
  }
}

/** Steps that make an end ready for a joint and join it. */
const joiningKinds: ReadonlySet<StepAction['kind']> = new Set<StepAction['kind']>([
  'strip',
  'slide tube',
  'join',
  'tap',
]);

/** The cavity or stud that a step is done at, or -1. */
function placeOf(action: StepAction | undefined): number {
  if (action === undefined) return -1;
  if (action.kind === 'insert' || action.kind === 'attach' || action.kind === 'withdraw') return action.place;
  return -1;
}

function withPlace(action: StepAction, place: number): StepAction {
  if (action.kind === 'insert' || action.kind === 'attach' || action.kind === 'withdraw')
    return { ...action, place };
  return action;
}

function withSteps(job: Job, change: (action: StepAction, index: number) => StepAction): Job {
  const steps = job.steps.map((step, index): Step => {
    const action = change(step.action, index);
    return action === step.action ? step : { ...step, action };
  });
  return { ...job, steps };
}

/**
 * The same work where a tap is not on the piece that it was meant for: later marks on that piece are no longer counted
 * from it, and fall where they lie.
 */
function withoutMark(job: Job, missing: StepAction | undefined, at: number): Job {
  if (missing?.kind !== 'tap') return job;
  let { piece, after } = missing;
  return withSteps(job, (action, index) => {
    if (index <= at || (action.kind !== 'cut' && action.kind !== 'tap') || action.piece !== piece)
      return action;
    const isBeyond = action.after > after;
    if (action.kind === 'cut') {
      piece = action.leaves[isBeyond ? 0 : 1];
      if (!isBeyond) after -= action.after;
    } else if (!isBeyond) after += 1;
    return isBeyond ? { ...action, after: action.after - 1 } : action;
  });
}

function wrongCavity(job: Job, at: number, hit: number): Job {
  const meant = job.steps[at]?.action;
  if (meant?.kind !== 'withdraw')
    return withSteps(job, (action, index) => (index === at ? withPlace(action, hit) : action));
  // Whoever pulled the neighbour's terminal goes on with that one in the hand.
  const [own, other] = [meant.place, hit].map((place) => endsSeatedAt(job, place));
  const ends = new Map<number, number>();
  for (const [index, end] of (own ?? []).entries()) {
    const taken = other?.[index] ?? other?.[0];
    if (taken !== undefined) ends.set(end, taken);
  }
  return withSteps(job, (action, index) => {
    if (index === at) return withPlace(action, hit);
    return index > at ? substituted(action, { ends, pieces: new Map() }) : action;
  });
}

/** Every step at one of the cavities is done at the one that it was taken for. */
function workedElsewhere(job: Job, hits: readonly (readonly [number, number])[]): Job {
  const taken = new Map(hits);
  let changed = job;
  for (const [at, { action }] of job.steps.entries()) {
    if (!('place' in action)) continue;
    const hit = taken.get(action.place);
    if (hit === undefined) continue;
    if (action.kind === 'remove plug' || action.kind === 'fit plug')
      changed = withSteps(changed, (one, index) => (index === at ? { ...action, place: hit } : one));
    else changed = wrongCavity(changed, at, hit);
  }
  return changed;
}

/** Every terminal that the bag brings in one of the cavities sits in the one that it was taken for. */
function seatedElsewhere(job: Job, hits: readonly (readonly [number, number])[]): Job {
  const at = new Map(hits);
  const terminals = job.terminals.map((terminal): Terminal => {
    const place = terminal.ends.length === 0 ? undefined : at.get(terminal.place);
    return place === undefined ? terminal : { ...terminal, place };
  });
  const ends = job.ends.map((end): WireEnd => {
    if (end.home.kind !== 'place') return end;
    const place = at.get(end.home.place);
    return place === undefined ? end : { ...end, home: { ...end.home, place } };
  });
  return { ...job, terminals, ends };
}

function endsSeatedAt(job: Job, place: number): readonly number[] {
  return job.terminals.find((terminal) => terminal.place === place)?.ends ?? [];
}

function terminalsExchanged(job: Job, [a, b]: readonly [number, number]): Job {
  const [first, second] = [job.terminals[a], job.terminals[b]];
  if (first === undefined || second === undefined) return job;
  const placeOfTerminal = new Map([
    [a, second.place],
    [b, first.place],
  ]);
  const terminals = job.terminals.map((terminal, index): Terminal => {
    const place = placeOfTerminal.get(index);
    return place === undefined ? terminal : { ...terminal, place };
  });
  const ends = job.ends.map((end): WireEnd => {
    if (end.home.kind !== 'place') return end;
    const place = placeOfTerminal.get(end.home.terminal);
    return place === undefined ? end : { ...end, home: { ...end.home, place } };
  });
  return { ...job, terminals, ends };
}

function wrongWire(job: Job, at: number, wire: number, nearEnd: 0 | 1): Job {
  const action = job.steps[at]?.action;
  const hit = job.wires[wire];
  if (hit === undefined || action === undefined) return job;
  if (action.kind === 'tap')
    return withoutMark(
      withSteps(job, (one, index) => (index === at ? { ...action, piece: wire, after: 0 } : one)),
      action,
      at,
    );
  if (action.kind !== 'cut') return job;
  const meant = job.pieces[action.piece];
  if (meant === undefined) return job;
  // The new ends and pieces of the wire that was really cut come after everything that the job has.
  const firstEnd = job.ends.length;
  const cutEnds = [0, 1].map(
    (index): WireEnd => ({
      name: `${hit.name}@cut ${index === 0 ? 'a' : 'b'}`,
      node: job.nodeCount + index,
      wire,
      home: { kind: 'cut' },
      seal: null,
    }),
  );
  // The piece near the connector stays near it: leaves of the meant wire are matched by where they lie.
  const meantNear = nearLeaf(job, action.piece, action.leaves, wire, nearEnd);
  const turned = meantNear !== nearEnd;
  const leaves: readonly [number, number] = [job.pieces.length, job.pieces.length + 1];
  const newPieces: readonly Piece[] = [
    { name: `${hit.name} a`, wire, ends: [hit.ends[0], firstEnd] },
    { name: `${hit.name} b`, wire, ends: [firstEnd + 1, hit.ends[1]] },
  ];
  const order = turned ? [1, 0] : [0, 1];
  const ends = new Map<number, number>();
  const pieces = new Map<number, number>();
  for (const [index, own] of action.newEnds.entries()) ends.set(own, firstEnd + (order[index] ?? 0));
  for (const [index, own] of action.leaves.entries()) pieces.set(own, leaves[order[index] ?? 0] ?? 0);
  const changed = withSteps(job, (one, index) => {
    if (index === at)
      return { ...action, piece: wire, after: 0, leaves, newEnds: [firstEnd, firstEnd + 1] as const };
    return index > at ? substituted(one, { ends, pieces }) : one;
  });
  return {
    ...changed,
    ends: [...job.ends, ...cutEnds],
    pieces: [...job.pieces, ...newPieces],
    nodeCount: job.nodeCount + 2,
  };
}

/** Which leaf of the meant wire, 0 or 1, lies at the connector where the wire that was hit has its near end. */
function nearLeaf(
  job: Job,
  piece: number,
  leaves: readonly [number, number],
  hit: number,
  nearEnd: 0 | 1,
): 0 | 1 {
  const there = connectorOfEnd(job, job.wires[hit]?.ends[nearEnd] ?? -1);
  const wire = job.wires[job.pieces[piece]?.wire ?? -1];
  const originals = new Set(wire?.ends ?? []);
  for (const index of [0, 1] as const) {
    const ends = job.pieces[leaves[index]]?.ends ?? [];
    if (ends.some((end) => originals.has(end) && connectorOfEnd(job, end) === there)) return index;
  }
  return nearEnd;
}

function connectorOfEnd(job: Job, end: number): number {
  const home = job.ends[end]?.home;
  return home?.kind === 'place' ? (job.places[home.place]?.connector ?? -1) : -1;
}

function substituted(action: StepAction, { ends, pieces }: Substitution): StepAction {
  const endOf = (end: number): number => ends.get(end) ?? end;
  const pieceOf = (piece: number): number => pieces.get(piece) ?? piece;
  switch (action.kind) {
    case 'strip':
    case 'slide tube':
    case 'insert':
    case 'attach':
    case 'detach':
    case 'remove seal':
    case 'tie back':
    case 'fit seal':
      return { ...action, end: endOf(action.end) };
    case 'cover':
      return { ...action, end: action.end < 0 ? action.end : endOf(action.end) };
    case 'join':
    case 'fit terminal':
      return { ...action, ends: action.ends.map(endOf) };
    case 'cut':
      return { ...action, piece: pieceOf(action.piece) };
    case 'tap':
      return { ...action, piece: pieceOf(action.piece), branch: endOf(action.branch) };
    case 'fasten':
    case 'remove off-cut':
      return { ...action, piece: pieceOf(action.piece) };
    default:
      return action;
  }
}
