import { type Job, netLabels, Rework, type StepAction } from '@loomproof/netlist';
import type { Touched } from './touched.ts';

/**
 * The part of a large job that mistakes in the work and readings near it have to do with: every wire that ends at a
 * connector where something is touched, and every wire on a net of one of those before or after the work, of chassis or
 * of a feed. All places, devices and nodes keep their numbers; wires, their ends and terminals are numbered anew. Readings
 * of copper between the places kept are the same in both jobs, whatever mistake is made.
 *
 * @param finished - the job done
 * @param touched - what the work has to do with
 */
export function sliceJob(finished: Rework, touched: Touched): Job {
  const { job } = finished;
  const places = keptPlaces(job, touched);
  const before = new Rework(job);
  const wires = new Set<number>(touched.wires);
  for (const { graph, ordinal } of [before, finished]) {
    const labels = netLabels(graph, ordinal, job.nodeCount, (edge) => graph.kind[edge] !== 'mate');
    const nets = new Set(places.map((place) => labels[place] ?? -1));
    for (const [index, { ends }] of job.wires.entries())
      if (ends.some((end) => nets.has(labels[job.ends[end]?.node ?? -1] ?? -1))) wires.add(index);
  }
  return renumbered(job, wires);
}

/** Every cavity of a connector where something is touched, touched studs, chassis and feeds. */
function keptPlaces(job: Job, touched: Touched): readonly number[] {
  const connectors = new Set([...touched.places].map((place) => job.places[place]?.connector ?? -1));
  connectors.delete(-1);
  return job.places.flatMap(({ connector, chassis, source }, place) =>
    touched.places.has(place) || connectors.has(connector) || chassis || source === 'always' ? [place] : [],
  );
}

function renumbered(job: Job, wires: ReadonlySet<number>): Job {
  const wireOf = numbersOf(job.wires, (_, index) => wires.has(index));
  const pieceOf = numbersOf(job.pieces, ({ wire }) => wires.has(wire));
  const endOf = numbersOf(job.ends, ({ wire }) => wires.has(wire));
  const terminalOf = numbersOf(
    job.terminals,
    ({ ends }) => ends.length === 0 || ends.some((end) => endOf.has(end)),
  );
  const to = (numbers: ReadonlyMap<number, number>, old: number): number => numbers.get(old) ?? -1;
  const all = (numbers: ReadonlyMap<number, number>, old: Iterable<number>): number[] =>
    [...old].flatMap((one) => numbers.get(one) ?? []);
  const both = (numbers: ReadonlyMap<number, number>, [a, b]: readonly [number, number]) =>
    [to(numbers, a), to(numbers, b)] as const;
  const { wanted } = job;
  return {
    ...job,
    wires: kept(job.wires, wireOf).map((one) => ({ ...one, ends: both(endOf, one.ends) })),
    pieces: kept(job.pieces, pieceOf).map((one) => ({
      ...one,
      wire: to(wireOf, one.wire),
      ends: both(endOf, one.ends),
    })),
    ends: kept(job.ends, endOf).map((one) => ({
      ...one,
      wire: to(wireOf, one.wire),
      home: 'terminal' in one.home ? { ...one.home, terminal: to(terminalOf, one.home.terminal) } : one.home,
    })),
    terminals: kept(job.terminals, terminalOf).map((one) => ({ ...one, ends: all(endOf, one.ends) })),
    tapsAsFound: new Map(
      [...job.tapsAsFound].flatMap(([wire, taps]) => {
        const stays = wireOf.get(wire);
        return stays === undefined ? [] : [[stays, taps] as const];
      }),
    ),
    special: job.special.map((one) => ({ ...one, wires: all(wireOf, one.wires) })),
    steps: job.steps.map((step) => ({ ...step, action: actionIn(step.action) })),
    wanted: {
      ...wanted,
      retiredWires: new Set(all(wireOf, wanted.retiredWires)),
      stubs: wanted.stubs.map((one) => ({ ...one, wire: to(wireOf, one.wire) })),
      changed: { ...wanted.changed, wires: new Set(all(wireOf, wanted.changed.wires)) },
    },
  };

  function actionIn(action: StepAction): StepAction {
    switch (action.kind) {
      case 'cut':
        return {
          ...action,
          piece: to(pieceOf, action.piece),
          leaves: both(pieceOf, action.leaves),
          newEnds: both(endOf, action.newEnds),
        };
      case 'tap':
        return { ...action, piece: to(pieceOf, action.piece), branch: to(endOf, action.branch) };
      case 'fasten':
      case 'remove off-cut':
        return { ...action, piece: to(pieceOf, action.piece) };
      case 'join':
        return { ...action, ends: all(endOf, action.ends) };
      case 'fit terminal':
        return { ...action, ends: all(endOf, action.ends), terminal: to(terminalOf, action.terminal) };
      case 'strip':
      case 'slide tube':
      case 'insert':
      case 'attach':
      case 'detach':
      case 'remove seal':
      case 'cover':
      case 'tie back':
      case 'fit seal':
        return { ...action, end: to(endOf, action.end) };
      default:
        return action;
    }
  }
}

/** New numbers of those that stay, in order. */
function numbersOf<T>(
  list: readonly T[],
  stays: (one: T, index: number) => boolean,
): ReadonlyMap<number, number> {
  const numbers = new Map<number, number>();
  for (const [index, one] of list.entries()) if (stays(one, index)) numbers.set(index, numbers.size);
  return numbers;
}

function kept<T>(list: readonly T[], numbers: ReadonlyMap<number, number>): readonly T[] {
  return list.filter((_, index) => numbers.has(index));
}
