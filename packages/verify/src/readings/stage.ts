import { type Job, netLabels, Rework } from '@loomproof/netlist';
import { finishWork } from '../faults/finish-work.ts';

/**
 * What is plugged while readings are taken; nothing is powered. `bench`: the harness lies on a table, everything is
 * unplugged and no stud touches metal. `unplugged`: on the machine with every connector pulled, studs of the chassis
 * joined by it. `in place`: plugged as the work leaves it, but for the connectors named here.
 */
export type Stage =
  | { readonly is: 'bench' }
  | { readonly is: 'unplugged' }
  | { readonly is: 'in place'; readonly pulled: ReadonlySet<number> };

/** The names of the stages, as typed. */
export const stageNames: readonly Stage['is'][] = ['bench', 'unplugged', 'in place'];

/** A place that a probe can touch in a stage, or a bare end. */
export interface ProbePoint {
  readonly name: string;
  readonly node: number;
}

/** Whether a pair of halves is apart in a stage, whichever of the two is named. */
export function isApart(rework: Rework, stage: Stage, connector: number): boolean {
  if (stage.is !== 'in place') return true;
  const other = rework.counterpart[connector] ?? -1;
  if (other < 0) return true;
  return rework.plugged[connector] !== true || stage.pulled.has(connector) || stage.pulled.has(other);
}

/**
 * The points that can be reached in a stage of the finished work: cavities of harness connectors that are unplugged,
 * studs, and ends that lie bare. Positions moulded shut are none, nor are the pins of devices, nor anything on the net
 * of a special circuit that nobody released: an airbag circuit is never probed.
 */
export function probePoints(rework: Rework, stage: Stage): readonly ProbePoint[] {
  const { job } = rework;
  const apart = job.connectors.map((connector, index) => !connector.device && isApart(rework, stage, index));
  const points: ProbePoint[] = [];
  const forbidden = forbiddenNodes(rework);
  for (const [node, place] of job.places.entries()) {
    if (place.kind === 'boundary' || place.blocked || forbidden.has(node)) continue;
    if (place.kind === 'cavity' && apart[place.connector] !== true) continue;
    points.push({ name: place.address, node });
  }
  for (const [index, end] of job.ends.entries())
    if (rework.isBare(index) && !forbidden.has(end.node)) points.push({ name: end.name, node: end.node });
  return points;
}

/**
 * Addresses that are never probed: on a net of a special circuit that nobody released, as found or when the work is done.
 */
export function neverProbed(job: Job): readonly string[] {
  const nodes = new Set([...forbiddenNodes(new Rework(job)), ...forbiddenNodes(finishWork(job))]);
  return job.places.flatMap(({ address }, node) => (nodes.has(node) ? [address] : []));
}

function forbiddenNodes(rework: Rework): ReadonlySet<number> {
  const { job, graph, ordinal } = rework;
  const wires = job.special.flatMap(({ released, wires: all }) => (released === null ? all : []));
  if (wires.length === 0) return new Set();
  const labels = netLabels(graph, ordinal, job.nodeCount);
  const nets = new Set(
    wires.flatMap((wire) =>
      (job.wires[wire]?.ends ?? []).map((end) => labels[job.ends[end]?.node ?? -1] ?? -1),
    ),
  );
  const found = new Set<number>();
  for (const [node, label] of labels.entries()) if (nets.has(label)) found.add(node);
  return found;
}
