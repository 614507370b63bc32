import type { Job, Rework } from '@loomproof/netlist';
import { enumerateFaults, type FaultFilter, type FaultList } from '../faults/enumerate-faults.ts';
import { isWorkFault, type ListedFault } from '../faults/fault.ts';
import { finishWork } from '../faults/finish-work.ts';
import { type FaultWorld, simulateFaults } from '../faults/simulate-faults.ts';
import { placesNear, sliceJob } from '../faults/slice-job.ts';
import { type Touched, touchedBy } from '../faults/touched.ts';
import { type Bands, defaultBands } from '../readings/bands.ts';
import { type HarnessState, harnessState, LocalStates } from '../readings/harness-state.ts';
import { type ProbePoint, probePoints, type Stage } from '../readings/stage.ts';
import { finishNow, type LongWork } from './long-work.ts';

/** Everything from which checks are chosen and readings are explained: the points, the faults and their states. */
export interface FaultTable {
  /** The job as it was given; that of the world may be the part of it that its work has to do with. */
  readonly whole: Job;
  readonly world: FaultWorld;
  readonly stage: Stage;
  readonly bands: Bands;
  readonly points: readonly ProbePoint[];
  readonly list: FaultList;
  readonly designed: HarnessState;
  /** One state a fault, in their order. */
  readonly states: readonly HarnessState[];
}

/** How a fault table is made. */
export interface FaultTableOptions {
  readonly stage: Stage;
  readonly bands?: Bands;
  readonly filter?: FaultFilter;
  /** The bags and steps of the other variants used on this machine, by name; see `KitVariant.otherWork`. */
  readonly otherWork?: ReadonlyMap<string, Job>;
  /** Above this many points only those are kept that the work has to do with. */
  readonly mostPoints?: number;
  /** Names of points that are kept in any case, since somebody read there. */
  readonly readAt?: ReadonlySet<string>;
}

/** Simulates every single fault of a job in a stage, at once. */
export function faultTable(job: Job, options: FaultTableOptions): FaultTable {
  return finishNow(faultTableWork(job, options));
}

/** Whether a table is of the part of its job that the work has to do with, since the whole is a large one. */
export function isOfPart({ whole, world }: FaultTable): boolean {
  return world.job !== whole;
}

/** How many faults are simulated between two looks at the clock. */
const faultsAtOnce = 16;

/** Simulates every single fault of a job in a stage, piece by piece. */
export function* faultTableWork(whole: Job, options: FaultTableOptions): LongWork<FaultTable> {
  const {
    stage,
    bands = defaultBands,
    otherWork = new Map<string, Job>(),
    mostPoints = usualPoints,
  } = options;
  const { job, finished, isPart } = jobToSimulate(whole, options);
  const world: FaultWorld = { job, finished, variants: otherWork, done: new Map() };
  const list = enumerateFaults(job, finished, { ...options.filter, variants: [...otherWork.keys()] });
  const all = probePoints(finished, stage);
  const points =
    !isPart && all.length <= mostPoints ? all : all.filter(nearWork(finished, list.touched, options.readAt));
  const designed = harnessState(finished, [], stage, points, bands);
  const table = { whole, world, stage, bands, points, list, designed };
  // What is broken in the finished harness has a local effect; only a mistake in the work is done again as a whole.
  const local = stage.is === 'in place' ? null : new LocalStates(finished, stage, points, bands);
  const states: HarnessState[] = [];
  for (const one of list.faults) {
    if (states.length % faultsAtOnce === 0)
      yield { what: 'faults simulated', done: states.length, total: list.faults.length };
    states.push(
      local === null || isWorkFault(one.fault) ? faultyState(table, [one]) : local.broken(one.fault),
    );
  }
  return { ...table, states };
}

/** Above this many points only those are kept that the work has to do with, where nothing else is said. */
const usualPoints = 200;

/**
 * The job done, or where it is a large one only the part of it that its work has to do with. With devices in circuit
 * everything may hang together through loads, and nothing is left out.
 */
function jobToSimulate(
  whole: Job,
  { stage, filter, mostPoints = usualPoints, readAt = new Set() }: FaultTableOptions,
): { readonly job: Job; readonly finished: Rework; readonly isPart: boolean } {
  const finished = finishWork(whole);
  if (stage.is === 'in place' || filter?.scope === 'all' || probePoints(finished, stage).length <= mostPoints)
    return { job: whole, finished, isPart: false };
  const touched = touchedBy(finished);
  const named = whole.places.flatMap(({ address }, place) => (readAt.has(address) ? [place] : []));
  const job = sliceJob(finished, touched, new Set([...placesNear(finished, touched), ...named]));
  return { job, finished: finishWork(job), isPart: true };
}

/** The state of the harness with any of the faults in it, as the points of a table see it. */
export function faultyState(
  { world, stage, bands, points }: Omit<FaultTable, 'states'>,
  faults: readonly ListedFault[],
): HarnessState {
  const { rework, broken } = simulateFaults(
    world,
    faults.map((one) => one.fault),
  );
  return harnessState(rework, broken, stage, pointsIn(world.job, rework, points), bands);
}

/** The same points in a harness whose places are numbered in another way, by their names. */
function pointsIn(job: Job, rework: Rework, points: readonly ProbePoint[]): readonly ProbePoint[] {
  if (rework.job.places === job.places) return points;
  const nodes = new Map(rework.job.places.map((place, node) => [place.address, node]));
  return points.map(({ name }) => ({ name, node: nodes.get(name) ?? -1 }));
}

/**
 * Whether a point is one of the work: a place touched or beside one, chassis, a feed, or a bare end; or one of those that
 * are asked for besides.
 */
function nearWork(
  { job }: Rework,
  { places }: Touched,
  besides: ReadonlySet<string> = new Set(),
): (point: ProbePoint) => boolean {
  return ({ node, name }) => {
    const place = job.places[node];
    if (place === undefined || places.has(node) || besides.has(name)) return true;
    if (place.kind === 'stud') return place.chassis || place.source === 'always';
    return [node - 1, node + 1].some(
      (beside) => places.has(beside) && job.places[beside]?.connector === place.connector,
    );
  };
}
