import type { Conducts, Job, Rework, SpecialCircuit, StepAction } from '@loomproof/netlist';
import { asFoundView } from '../prove/assembled-view.ts';
import type { RawFinding } from '../prove/finding.ts';
import { endsByNode } from '../prove/judge-nets.ts';

/**
 * Judges that nobody touches or probes a special circuit (a restraint system, a safety loop, a bus, a sensor, high
 * voltage) unless someone released it by name and document. To it belongs the copper that is one piece with the conductors
 * named, behind splices and plugs too, up to chassis metal and the poles of supplies. A step on any of its conductors or the
 * cavities they end in counts, and so does a probe, a joint on one of its ends, a fuse of it, and a connector half in which it ends being
 * plugged, unplugged or opened.
 */
export function judgeSpecial(rework: Rework): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const view = asFoundView(rework);
  let ends: ReadonlyMap<number, number> | null = null;
  const endAt = (node: number): number => {
    ends ??= endsByNode(rework);
    return ends.get(node) ?? -1;
  };
  for (const circuit of job.special) {
    if (circuit.released !== null) continue;
    const { named, whole } = copperOf(rework, circuit, view);
    const said = new Set<string>();
    for (const { number, action } of job.steps) {
      const wire = wireOf(rework, named, action, endAt) ?? wireOf(rework, whole, action, endAt);
      if (wire === null || said.has(wire)) continue;
      said.add(wire);
      findings.push({
        kind: 'special-touched',
        step: number,
        points: [wire],
        witness: {
          is: 'state',
          what: `${circuit.is} ${circuit.name}`,
          expected: 'a release by name and document',
          found: 'none',
        },
        culprits: [number],
        keys: [],
      });
    }
  }
  return findings;
}

/** Copper of a special circuit as found. */
interface SpecialCopper {
  readonly wires: ReadonlySet<number>;
  /** Cavities and studs at which its conductors end, and those that face them, by the wire. */
  readonly places: ReadonlyMap<number, string>;
}

/** What is named of a circuit, and all that is one piece with it. */
function copperOf(
  rework: Rework,
  circuit: SpecialCircuit,
  view: Conducts,
): { readonly named: SpecialCopper; readonly whole: SpecialCopper } {
  const { job, graph } = rework;
  const wires = new Set(circuit.wires);
  const places = new Map<number, string>();
  const add = (place: number, name: string): void => {
    for (const one of [place, job.facing[place] ?? -1])
      if (one >= 0 && !places.has(one)) places.set(one, name);
  };
  const reached = new Map<number, string>();
  const queue: number[] = [];
  for (const index of circuit.wires)
    for (const end of job.wires[index]?.ends ?? []) {
      const { home, node = -1 } = job.ends[end] ?? {};
      const name = job.wires[index]?.name ?? '';
      if (home?.kind === 'place') add(home.place, name);
      if (reached.has(node)) continue;
      reached.set(node, name);
      queue.push(node);
    }
  const named = { wires: new Set(wires), places: new Map(places) };
  for (let at = 0; at < queue.length; at += 1) {
    const node = queue[at] as number;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      const next = graph.otherEnd(half);
      const what = graph.whatOf(edge);
      if (!graph.aliveAt(edge, 0) || reached.has(next) || isPole(job, next)) continue;
      if (!view(edge)) continue;
      const isConductor = graph.kindOf(edge) === 'conductor';
      const name = (isConductor ? job.wires[what]?.name : reached.get(node)) ?? '';
      if (isConductor) wires.add(what);
      if (job.places[next] !== undefined) add(next, name);
      reached.set(next, name);
      queue.push(next);
    }
  }
  return { named, whole: { wires, places } };
}

/** Whether so much hangs on a place that it belongs to no single circuit. */
function isPole({ places, supplies }: Job, node: number): boolean {
  if (places[node]?.chassis === true) return true;
  return supplies.some(({ returnPlace, places: own }) => returnPlace === node || own.includes(node));
}

/** The conductor of the circuit that a step works on or probes, or null. */
function wireOf(
  rework: Rework,
  { wires, places }: SpecialCopper,
  action: StepAction,
  endAt: (node: number) => number,
): string | null {
  const { job } = rework;
  const ofWire = (wire: number | undefined): string | null =>
    wire !== undefined && wires.has(wire) ? (job.wires[wire]?.name ?? null) : null;
  const ofEnds = (ends: readonly number[]): string | null =>
    ends.map((end) => ofWire(job.ends[end]?.wire)).find((name) => name !== null) ?? null;
  const ofConnector = (index: number): string | null => {
    const connector = job.connectors[index];
    for (let at = 0; at < (connector?.placeCount ?? 0); at += 1) {
      const name = places.get((connector?.firstPlace ?? 0) + at);
      if (name !== undefined) return name;
    }
    return null;
  };
  const ofJoint = (joint: number): string | null => {
    const { graph } = rework;
    const node = job.joints[joint]?.node ?? -1;
    const halves: number[] = [];
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) halves.push(half);
    halves.sort((a, b) => a - b);
    // A tap divides its run, so that pieces of the run end at the tap itself; its branch comes before them.
    for (const kind of ['joint', 'conductor'] as const)
      for (const half of halves) {
        if (graph.kindOf(half >> 1) !== kind) continue;
        const name =
          kind === 'joint' ? ofEnds([endAt(graph.otherEnd(half))]) : ofWire(graph.whatOf(half >> 1));
        if (name !== null) return name;
      }
    return null;
  };
  switch (action.kind) {
    case 'prove dead':
    case 'withdraw':
    case 'remove plug':
    case 'fit plug':
      return places.get(action.place) ?? null;
    case 'cut':
    case 'remove off-cut':
    case 'fasten':
      return ofWire(job.pieces[action.piece]?.wire);
    case 'tap':
      return ofWire(job.pieces[action.piece]?.wire) ?? ofEnds([action.branch]);
    case 'insert':
    case 'attach':
      return ofEnds([action.end]) ?? places.get(action.place) ?? null;
    case 'join':
    case 'fit terminal':
      return ofEnds(action.ends);
    case 'strip':
    case 'detach':
    case 'remove seal':
    case 'slide tube':
    case 'cover':
    case 'tie back':
    case 'fit seal':
      return ofEnds([action.end]);
    case 'remove tap':
    case 'seal':
      return ofJoint(action.joint);
    case 'unplug':
    case 'plug':
    case 'open lock':
    case 'close lock':
    case 'open latch':
    case 'close latch':
      return ofConnector(action.connector);
    case 'interpose':
      return ofConnector(action.connector) ?? ofConnector(action.near) ?? ofConnector(action.far);
    case 'fit fuse':
    case 'remove fuse': {
      const element = job.elements[action.element];
      return element === undefined ? null : (places.get(element.from) ?? places.get(element.to) ?? null);
    }
    case 'fit jumper':
      return action.places.map((place) => places.get(place)).find((name) => name !== undefined) ?? null;
    default:
      return null;
  }
}
