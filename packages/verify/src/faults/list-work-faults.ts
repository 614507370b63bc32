import type { Job, Step, StepAction } from '@loomproof/netlist';
import { Names } from '../prove/names.ts';
import { cavitiesMistaken, cavityNeighbours } from './cavity-neighbours.ts';
import type { Likelihood, ListedFault, UnreadableFault, WorkFault } from './fault.ts';
import { listMisreadFaults } from './list-misread-faults.ts';

/** Steps that make or part no connection; leaving one out shows to the eye or to a pull, never to a meter. */
const seenKinds: ReadonlyMap<StepAction['kind'], string> = new Map([
  ['seal', 'look at the joint: it is sealed all round'],
  ['slide tube', 'look at the joint: its tube covers it'],
  ['cover', 'look at the end: it is covered, and the cover holds'],
  ['tie back', 'look at the end: it is tied back'],
  ['fasten', 'look along the wire: it is fastened'],
  ['fit plug', 'look at the cavity: it holds a plug'],
  ['fit seal', 'look at the wire: its seal sits in the cavity'],
  ['close lock', 'look at the lock: it is closed; pull each terminal'],
  ['close latch', 'look at the latch, and pull the connector'],
  ['reconnect', 'see that the machine comes on'],
  ['place', 'look for the device in its place'],
]);

/** Steps that are only there to let another be done: leaving one out is noticed at once, or is procedure. */
const enablingKinds: ReadonlySet<StepAction['kind']> = new Set<StepAction['kind']>([
  'disconnect',
  'prove dead',
  'unplug',
  'open lock',
  'open latch',
  'remove plug',
  'remove seal',
]);

/** The mistakes that can be made in the work of a job, in order of the steps; two sentences each. */
export function listWorkFaults(job: Job, variants: readonly string[]): readonly ListedFault[] {
  const names = new Names(job);
  const list: ListedFault[] = [];
  const add = (
    fault: WorkFault,
    about: string,
    words: string,
    likelihood: Likelihood,
    reason: string,
    shownBy: string,
    origin: ListedFault['origin'] = 'installation error',
  ): void => {
    list.push({ id: `${fault.is}: ${about}`, fault, words, likelihood, reason, origin, shownBy });
  };
  const look = 'compare colour, size and place with the drawing';
  for (const [at, { action, number }] of job.steps.entries()) {
    if (!enablingKinds.has(action.kind) && !seenKinds.has(action.kind))
      add(
        { is: 'step left out', at },
        `step ${number}`,
        `step ${number} (${action.kind}) was left out`,
        'sometimes',
        'a step is skipped when the work is interrupted',
        `see that step ${number} is done`,
      );
    if (action.kind === 'insert' || action.kind === 'withdraw')
      for (const { hit, how } of cavitiesMistaken(job, action.place))
        add(
          { is: 'wrong cavity', at, hit, how },
          `step ${number} at ${names.place(hit)}`,
          `step ${number} was done at ${names.place(hit)} instead of ${names.place(action.place)} (${how})`,
          how === 'the cavity next to it' ? 'often' : 'sometimes',
          how,
          look,
        );
    if (action.kind === 'attach')
      for (const [hit, place] of job.places.entries())
        if (place.kind === 'stud' && hit !== action.place)
          add(
            { is: 'wrong cavity', at, hit, how: 'another stud' },
            `step ${number} at ${place.address}`,
            `step ${number} was done at stud ${place.address} instead of ${names.place(action.place)}`,
            'sometimes',
            'studs look alike',
            look,
          );
    if (action.kind === 'cut' || action.kind === 'tap')
      for (const { wire, end, beside } of wiresBeside(job, action.piece)) {
        const doing = action.kind === 'cut' ? 'cut' : 'tapped';
        add(
          { is: 'wrong wire', at, wire, end },
          `step ${number} on ${job.wires[wire]?.name ?? ''}`,
          `at step ${number} the wire ${job.wires[wire]?.name ?? ''} was ${doing} instead of ${job.pieces[action.piece]?.name ?? ''} (next to it at ${names.place(beside)})`,
          'often',
          'neighbours lie in one bundle, and colours vary',
          look,
        );
      }
  }
  for (const [first, second] of exchangeableSteps(job)) {
    const numbers = [first, second].map((at) => job.steps[at]?.number ?? 0);
    add(
      { is: 'cavities exchanged', at: [first, second] },
      `steps ${numbers.join(' and ')}`,
      `the ends of steps ${numbers.join(' and ')} were exchanged`,
      'often',
      'two ends lie in the hand together',
      look,
    );
  }
  for (const [a, b] of exchangeableEnds(job))
    add(
      { is: 'ends exchanged', ends: [a, b] },
      `${names.end(a)} and ${names.end(b)}`,
      `${names.end(a)} and ${names.end(b)} were joined each in the place of the other`,
      'often',
      'ends at two joints lie side by side',
      look,
    );
  for (const [a, b] of neighbouringTerminals(job)) {
    const [one, other] = [a, b].map((terminal) => names.place(job.terminals[terminal]?.place ?? -1));
    add(
      { is: 'terminals exchanged', terminals: [a, b] },
      `${one ?? ''} and ${other ?? ''}`,
      `the kit was built with the terminals of ${one ?? ''} and ${other ?? ''} exchanged`,
      'seldom',
      'kits are tested where they are made',
      look,
      'build error',
    );
  }
  list.push(...listMisreadFaults(job));
  for (const variant of variants)
    add(
      { is: 'other variant', variant },
      variant,
      `the bag and the steps of the variant ${variant} were used on this machine`,
      'sometimes',
      'kits of two variants look alike',
      'read the label of the bag and of the machine',
    );
  return list;
}

/**
 * Mistakes that change no connection on the day of the test, each with the look or pull that shows it: what was left
 * out, a terminal not home, a joint that holds by a strand, a seal, a size or a rating that is another one.
 */
export function listUnreadableFaults(job: Job): readonly UnreadableFault[] {
  const names = new Names(job);
  const seen = ({ action, number }: Step): readonly Omit<UnreadableFault, 'at'>[] => {
    const shownBy = seenKinds.get(action.kind);
    if (shownBy !== undefined) return [{ words: `step ${number} (${action.kind}) was left out`, shownBy }];
    switch (action.kind) {
      case 'insert':
        return [
          {
            words: `step ${number}: the terminal at ${names.place(action.place)} is not home, though it touches`,
            shownBy:
              'pull it gently along its axis; the second lock closes only over terminals that are home',
          },
        ];
      case 'cut':
        return [
          {
            words: `step ${number}: ${job.pieces[action.piece]?.name ?? ''} was cut at another place along the wire`,
            shownBy: 'measure what is left at both sides of the cut',
          },
        ];
      case 'strip':
        return [
          {
            words: `step ${number}: strands were cut when ${names.end(action.end)} was stripped`,
            shownBy: 'look at the strands, and measure the volts lost under load',
          },
        ];
      case 'join':
      case 'tap':
        return [
          {
            words: `step ${number}: the joint is weak, or holds by the insulation or a few strands`,
            shownBy: 'pull each wire of the joint, and measure the volts lost under load',
          },
        ];
      case 'fit terminal':
        return action.seal === null
          ? []
          : [
              {
                words: `step ${number}: the seal of ${names.end(action.ends[0] ?? -1)} was left off, or is another one`,
                shownBy: 'look at the wire: its seal sits in the cavity, and is of the right colour',
              },
            ];
      case 'fit fuse':
        return [
          {
            words: `step ${number}: a fuse of another rating was fitted`,
            shownBy: 'read the rating on the fuse; pull it and see what goes dead',
          },
        ];
      default:
        return [];
    }
  };
  return job.steps.flatMap((step, at) => seen(step).map((one) => ({ at, ...one })));
}

/** Whole wires of the machine that lie next to a piece where it ends, and which of their ends is there. */
function wiresBeside(
  job: Job,
  piece: number,
): readonly { readonly wire: number; readonly end: 0 | 1; readonly beside: number }[] {
  const wire = job.wires[job.pieces[piece]?.wire ?? -1];
  const found = new Map<number, { wire: number; end: 0 | 1; beside: number }>();
  for (const own of job.pieces[piece]?.ends ?? []) {
    const home = job.ends[own]?.home;
    if (home?.kind !== 'place') continue;
    const near = new Set([...cavityNeighbours(job, home.place), home.place]);
    for (const [index, other] of job.wires.entries()) {
      if (other === wire || other.origin !== 'stock' || found.has(index)) continue;
      for (const end of [0, 1] as const) {
        const there = job.ends[other.ends[end]]?.home;
        if (there?.kind === 'place' && near.has(there.place) && job.places[there.place]?.kind === 'cavity')
          found.set(index, { wire: index, end, beside: home.place });
      }
    }
  }
  return [...found.values()];
}

/** Ends of steps further from each other than this, and at other connectors, do not lie in the hand together. */
const stepsInHand = 20;

/** The connector of a cavity; each stud is one of its own. */
function connectorOf(job: Job, place: number): number {
  const connector = job.places[place]?.connector ?? -1;
  return connector < 0 ? -1 - place : connector;
}

function exchangeableSteps(job: Job): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  const seats = job.steps.flatMap(({ action }, at) =>
    action.kind === 'insert' || action.kind === 'attach' ? [{ at, action }] : [],
  );
  for (const [index, first] of seats.entries())
    for (const second of seats.slice(index + 1)) {
      const isNear =
        second.at - first.at <= stepsInHand ||
        connectorOf(job, first.action.place) === connectorOf(job, second.action.place);
      if (isNear && first.action.kind === second.action.kind && first.action.place !== second.action.place)
        found.push([first.at, second.at]);
    }
  return found;
}

function exchangeableEnds(job: Job): readonly (readonly [number, number])[] {
  const joints = job.steps.flatMap(({ action }, at) => {
    if (action.kind === 'join') return [{ at, ends: action.ends }];
    return action.kind === 'tap' ? [{ at, ends: [action.branch] }] : [];
  });
  const found: (readonly [number, number])[] = [];
  for (const [index, first] of joints.entries())
    for (const second of joints.slice(index + 1))
      if (second.at - first.at <= stepsInHand)
        for (const a of first.ends) for (const b of second.ends) found.push([a, b]);
  return found;
}

/** Pairs of terminals of the bag that sit in neighbouring cavities of one connector before the work. */
function neighbouringTerminals(job: Job): readonly (readonly [number, number])[] {
  const at = new Map<number, number>();
  for (const [index, terminal] of job.terminals.entries())
    if (terminal.place >= 0 && terminal.ends.length > 0 && job.places[terminal.place]?.origin === 'kit')
      at.set(terminal.place, index);
  const found: (readonly [number, number])[] = [];
  for (const [place, terminal] of at)
    for (const other of cavityNeighbours(job, place)) {
      const second = at.get(other);
      if (second !== undefined && other > place) found.push([terminal, second]);
    }
  return found;
}
