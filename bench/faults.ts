import { type EdgeKind, netLabels, readKit, WiringGraph } from '@loomproof/netlist';
import { makeChecklist } from '@loomproof/verify';
import { LocalEffects } from '../packages/verify/src/readings/local-effects.ts';
import { makeKit } from './kit-model.ts';

/** What the simulation of single faults costs, on one graph. */
export interface FaultFigures {
  readonly faults: number;
  /** Milliseconds for all of them by their local effect, the pass over the graph counted. */
  readonly localMs: number;
  /** Milliseconds for all of them by extracting the nets anew, from a sample. */
  readonly anewMs: number;
  readonly sample: number;
}

const cavityCount = 12_000;
const joinFaults = 15_000;
const bridgeFaults = 13_000;
const rounds = 7;
const sampleSize = 60;

/**
 * Simulates up to 28,000 single faults of a harness in two ways on the same graph: each conductor and contact open, and
 * each two neighbouring cavities bridged.
 *
 * @param wireCount - 5,000 conductors
 * @param groundWires - how many of them hang on one ground net, in splices of eight
 * @throws Error when the two ways do not agree on the sample
 */
export function faultFigures(wireCount: number, groundWires: number): FaultFigures {
  const graph = makeGraph(wireCount, groundWires);
  const from = Int32Array.from({ length: graph.edgeCount }, (_, edge) => graph.fromOf(edge));
  const to = Int32Array.from({ length: graph.edgeCount }, (_, edge) => graph.toOf(edge));
  const faults = Math.min(joinFaults, graph.edgeCount) + bridgeFaults;
  const joins = faults - bridgeFaults;
  const times: number[] = [];
  let effects = new LocalEffects(graph.nodeCount, from, to);
  for (let round = 0; round < rounds; round += 1) {
    const start = performance.now();
    effects = new LocalEffects(graph.nodeCount, from, to);
    let changed = 0;
    for (let join = 0; join < joins; join += 1) if (effects.opened(join).is !== 'none') changed += 1;
    for (let pair = 0; pair < bridgeFaults; pair += 1) {
      const cavity = pair % (cavityCount - 1);
      if (effects.joined(cavity, cavity + 1).is !== 'none') changed += 1;
    }
    times.push(performance.now() - start);
    if (changed === 0) throw new Error('no fault has an effect');
  }
  const anew: number[] = [];
  for (let index = 0; index < sampleSize; index += 1) {
    const join = Math.floor((index * joins) / sampleSize);
    const start = performance.now();
    const labels = netLabels(graph, 1, graph.nodeCount, (edge) => edge !== join);
    anew.push(performance.now() - start);
    checkAgreement(effects, join, labels);
  }
  return {
    faults,
    localMs: middle(times),
    anewMs: middle(anew) * faults,
    sample: sampleSize,
  };
}

function checkAgreement(effects: LocalEffects, join: number, labels: Int32Array): void {
  const effect = effects.opened(join);
  const byEffect = new Map<number, number>();
  for (let node = 0; node < labels.length; node += 1) {
    const order = effects.order[node] as number;
    const below = effect.is === 'split' && order >= effect.first && order < effect.last;
    const net = below ? -1 : (effects.net[node] as number);
    const known = byEffect.get(net);
    if (known === undefined) byEffect.set(net, labels[node] as number);
    else if (known !== labels[node]) throw new Error(`the two ways differ on join ${join}`);
  }
  if (byEffect.size !== new Set(labels).size) throw new Error(`the two ways differ on join ${join}`);
}

function middle(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN;
}

/** Cavities first, then wire ends, then splices; each wire sits in a random cavity or in a splice. */
function makeGraph(wireCount: number, groundWires: number): WiringGraph {
  let seed = 20_241_125;
  const below = (limit: number): number => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((seed / 4_294_967_296) * limit);
  };
  const splices = Math.ceil(groundWires / 7) + 1;
  const graph = new WiringGraph(cavityCount + wireCount * 2 + splices);
  const cavities = Array.from({ length: cavityCount }, (_, index) => index);
  for (let index = cavityCount - 1; index > 0; index -= 1) {
    const other = below(index + 1);
    [cavities[index], cavities[other]] = [cavities[other] ?? 0, cavities[index] ?? 0];
  }
  let next = 0;
  const spliceNode = (index: number): number => cavityCount + wireCount * 2 + index;
  const add = (kind: EdgeKind, a: number, b: number): number => graph.add(kind, a, b, 0, 0);
  for (let wire = 0; wire < wireCount; wire += 1) {
    const ends = [cavityCount + wire * 2, cavityCount + wire * 2 + 1] as const;
    add('conductor', ends[0], ends[1]);
    for (const [side, end] of ends.entries()) {
      if (side === 1 && wire < groundWires) add('joint', end, spliceNode(Math.floor(wire / 7)));
      else {
        add('seat', end, cavities[next] ?? 0);
        next += 1;
      }
    }
  }
  // Splices hang on one another as a tree, as the branches of a ground do.
  for (let index = 1; groundWires > 0 && index < splices; index += 1)
    add('joint', spliceNode(index), spliceNode(Math.floor((index - 1) / 3)));
  return graph;
}

/** What a checklist of a large harness costs. */
export interface ChecklistFigures {
  /** Cavities and studs that a step seats, pulls or attaches something at. */
  readonly reworkedPlaces: number;
  readonly faults: number;
  readonly short: number;
  readonly bound: number;
  readonly seconds: number;
}

/**
 * Makes the checklist of each variant of a kit, unplugged, and gives the longest.
 *
 * @param text - the kit file, with no table beside it
 */
export function longestChecklistSeconds(text: string): number {
  const { value } = readKit({ name: 'kit.yaml', text }, () => null);
  if (value === null) throw new Error('the kit cannot be read');
  return Math.max(
    ...value.variants.map(({ job, otherWork }) => {
      const start = performance.now();
      makeChecklist(job, { stage: { is: 'unplugged' }, otherWork: otherWork?.() ?? new Map() });
      return (performance.now() - start) / 1000;
    }),
  );
}

/**
 * Makes the checklist of a kit on a harness of the model, unplugged.
 *
 * @param wireCount - 5,000 wires
 * @param stepCount - 1,200 steps rework about 200 cavities
 */
export function checklistFigures(wireCount: number, stepCount: number): ChecklistFigures {
  const job = makeKit(wireCount, stepCount, 1).variants[0]?.job;
  if (job === undefined) throw new Error('the model kit has no variant');
  const places = job.steps.flatMap(({ action }) =>
    action.kind === 'insert' || action.kind === 'withdraw' || action.kind === 'attach' ? [action.place] : [],
  );
  const start = performance.now();
  const { table, short } = makeChecklist(job, { stage: { is: 'unplugged' } });
  return {
    reworkedPlaces: new Set(places).size,
    faults: table.list.faults.length,
    short: short.checks.length,
    bound: short.bound,
    seconds: (performance.now() - start) / 1000,
  };
}
