import {
  appendTo,
  beforeWork,
  type Conducts,
  flatHarness,
  type Job,
  type Rework,
  reachedFrom,
  type StepKind,
} from '@loomproof/netlist';
import { assembledPlugged } from './assembled-view.ts';
import type { Expectation } from './expected-partition.ts';
import type { RawFinding } from './finding.ts';
import type { Names } from './names.ts';
import type { WorkRun } from './run-work.ts';
import type { StatedNet } from './stated-nets.ts';

/** Obligation 3 besides nets: nothing that intent does not name was worked on or is different now. */
export function judgeFrame(
  rework: Rework,
  expectation: Expectation,
  run: WorkRun,
  view: Conducts,
  names: Names,
): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const named = namedThings(rework, expectation, view);
  const kinds = new Map(job.steps.map((step) => [step.number, step.action.kind]));
  const touch = (what: string, key: string, name: string, keys: readonly string[]): void => {
    const steps = run.touched.get(key) ?? [];
    findings.push({
      kind: 'touched-unnamed',
      step: steps[0] ?? null,
      points: [name],
      witness: { is: 'touch', what, name, steps },
      culprits: steps,
      keys: [key, ...keys],
    });
  };
  for (const key of run.touched.keys()) {
    const [what = '', number = '0'] = key.split(':');
    const index = Number(number);
    if (what === 'wire') {
      const wire = job.wires[index];
      if (
        wire === undefined ||
        wire.origin === 'kit' ||
        named.wires(index) ||
        onlyPassedThrough(rework, index, run, kinds)
      )
        continue;
      touch(
        'wire',
        key,
        wire.name,
        wire.ends.map((end) => `node:${job.ends[end]?.node ?? -1}`),
      );
    } else if (what === 'seal') {
      const end = job.ends[index];
      if (
        end === undefined ||
        job.wires[end.wire]?.origin === 'kit' ||
        named.wires(end.wire) ||
        rework.endSeal.at(index) === end.seal
      )
        continue;
      touch('seal', key, end.name, [`wire:${end.wire}`]);
    } else if (what === 'place') {
      const place = job.places[index];
      const changed =
        (rework.plug.at(index) !== null) !== (place?.blanked ?? false) ||
        seatedNow(rework, index) !== seatedBefore(rework, index);
      if (place === undefined || place.origin === 'kit' || named.place(index) || !changed) continue;
      touch('cavity', key, place.address, [`node:${index}`]);
    } else if (what === 'element') {
      const element = job.elements[index];
      // A fuse is named by what is wanted of either of its pins.
      const byPin =
        element !== undefined && [element.from, element.to].some((pin) => named.place(pin) || named.net(pin));
      if (
        element === undefined ||
        byPin ||
        job.wanted.changed.elements.has(index) ||
        !fuseChanged(rework, index)
      )
        continue;
      if (job.connectors[element.connector]?.origin === 'kit') continue;
      touch('fuse', key, element.name, []);
    }
  }
  findings.push(...mateFindings(rework, run));
  return [...findings, ...idleKitWires(rework, expectation, view, names)];
}

/** Opened only to pass through: taken out and put back, uncut and as it was. */
function onlyPassedThrough(
  rework: Rework,
  wire: number,
  run: WorkRun,
  kinds: ReadonlyMap<number, StepKind>,
): boolean {
  const { job } = rework;
  if (rework.pieceThere[wire] !== 1) return false;
  if (rework.jointsOn(wire).some((joint) => job.joints[joint]?.before !== rework.jointState[joint]))
    return false;
  for (const end of job.wires[wire]?.ends ?? []) {
    const home = job.ends[end]?.home;
    if (home === undefined || rework.endSeal.at(end) !== job.ends[end]?.seal) return false;
    if (home.kind === 'joint' && rework.endJoint[end] !== home.joint) return false;
    if (home.kind === 'place') {
      const terminal = rework.endTerminal[end] ?? -1;
      if (terminal !== home.terminal || rework.terminalPlace[terminal] !== home.place) return false;
    }
  }
  return !(run.touched.get(`wire:${wire}`) ?? []).some((number) => {
    const kind = kinds.get(number);
    return kind === 'cut' || kind === 'tap' || kind === 'strip' || kind === 'join';
  });
}

function seatedNow(rework: Rework, place: number): number {
  return rework.job.places[place]?.kind === 'stud'
    ? (rework.ringsOnStud.get(place) ?? 0)
    : (rework.seated[place] ?? -1);
}

function seatedBefore({ job, graph }: Rework, place: number): number {
  const seated: number[] = [];
  for (let half = graph.firstHalf(place); half >= 0; half = graph.nextHalf(half)) {
    const edge = half >> 1;
    if (graph.kindOf(edge) === 'seat' && graph.aliveAt(edge, beforeWork)) seated.push(graph.whatOf(edge));
  }
  return job.places[place]?.kind === 'stud' ? seated.length : (seated[0] ?? -1);
}

function namedThings(
  rework: Rework,
  expectation: Expectation,
  view: Conducts,
): { wires(wire: number): boolean; place(place: number): boolean; net(node: number): boolean } {
  const { job } = rework;
  const { wanted } = job;
  const places = new Set<number>([...wanted.retiredPlaces, ...wanted.changed.places]);
  for (const circuit of wanted.circuits) for (const place of circuit.places) places.add(place);
  for (const one of wanted.additions)
    for (const place of [one.to, ...one.add, ...one.take]) places.add(place);
  for (const move of wanted.moves) places.add(move.from).add(move.to);
  for (const place of [...places]) {
    const other = expectation.facing[place] ?? -1;
    if (other >= 0) places.add(other);
  }
  const onNamedNet = namedNets(rework, places, view);
  const stated = statedPlaces(job, expectation, (net) => !net.byMove);
  const stubs = new Set(wanted.stubs.map((stub) => stub.wire));
  // The terminal of a retired wire may be taken out, so the cavities at its ends are named with it.
  for (const wire of wanted.retiredWires) {
    for (const end of job.wires[wire]?.ends ?? []) {
      const home = job.ends[end]?.home;
      if (home?.kind === 'place') places.add(home.place);
    }
  }
  return {
    wires: (wire) => {
      if (wanted.retiredWires.has(wire) || wanted.changed.wires.has(wire) || stubs.has(wire)) return true;
      const node = job.ends[job.wires[wire]?.ends[0] ?? -1]?.node ?? -1;
      return onNamedNet(node);
    },
    place: (place) => places.has(place) || stated[place] === 1,
    net: onNamedNet,
  };
}

/**
 * Whether a node was on the net of one of some places before the first step. Only nets that are asked for are walked, and
 * no node of them twice.
 */
function namedNets(rework: Rework, places: Iterable<number>, view: Conducts): (node: number) => boolean {
  const { graph, job } = rework;
  const answers = new Uint8Array(job.nodeCount);
  for (const place of places) answers[place] = isNamed;
  return (node) => {
    if (node < 0) return false;
    const seen = graph.beginSearch();
    const { queue } = seen;
    seen.mark(node, 0);
    queue[0] = node;
    let count = 1;
    let answer: number = isNotNamed;
    for (let at = 0; at < count; at += 1) {
      const here = queue[at] as number;
      if (answers[here] !== 0) {
        answer = answers[here] as number;
        break;
      }
      for (let half = graph.firstHalf(here); half >= 0; half = graph.nextHalf(half)) {
        const next = graph.otherEnd(half);
        if (seen.has(next) || !graph.aliveAt(half >> 1, beforeWork) || !view(half >> 1)) continue;
        seen.mark(next, 0);
        queue[count] = next;
        count += 1;
      }
    }
    for (let at = 0; at < count; at += 1) answers[queue[at] as number] = answer;
    return answer === isNamed;
  };
}

/** What {@link namedNets} knows of a node. */
const isNamed = 1;
const isNotNamed = 2;

/** 1 for each place of a stated net, and for the empty half that follows it into its net where `bringsHalf` says so. */
function statedPlaces(
  job: Job,
  expectation: Expectation,
  bringsHalf: (net: StatedNet) => boolean,
): Uint8Array {
  const stated = new Uint8Array(job.places.length);
  const facing = new Map(expectation.follows);
  for (const net of expectation.stated) {
    const brings = facing.size > 0 && bringsHalf(net);
    for (const place of net.places) {
      stated[place] = 1;
      const half = brings ? facing.get(place) : undefined;
      if (half !== undefined) stated[half] = 1;
    }
  }
  return stated;
}

/** Kit conductors that serve no stated net: with the leaves that end at no place pruned, nothing of them is left. */
function idleKitWires(
  rework: Rework,
  expectation: Expectation,
  view: Conducts,
  names: Names,
): readonly RawFinding[] {
  const { job, graph } = rework;
  const findings: RawFinding[] = [];
  const { wireOfKit } = flatHarness(job);
  const serving = new Uint8Array(graph.edgeCount);
  const stated = statedPlaces(job, expectation, () => true);
  // The first piece of a wire has its number; those that cuts leave come after the wires.
  const cutPieces = new Map<number, number[]>();
  for (let piece = job.wires.length; piece < job.pieces.length; piece += 1)
    appendTo(cutPieces, job.pieces[piece]?.wire ?? -1, piece);
  for (let index = 0; index < job.wires.length; index += 1) {
    if (wireOfKit[index] !== 1 || isUnusedKitWire(rework, index)) continue;
    const wire = job.wires[index];
    if (wire === undefined) continue;
    if (joinsStatedPlaces(rework, index, stated)) continue;
    const edges = aliveEdgesOf(rework, index, [index, ...(cutPieces.get(index) ?? [])]);
    if (edges.length === 0 || edges.some((edge) => serving[edge] === serves)) continue;
    if (edges.every((edge) => serving[edge] === notJudged))
      markServing(rework, stated, view, graph.fromOf(edges[0] ?? 0), serving);
    if (edges.some((edge) => serving[edge] === serves)) continue;
    findings.push({
      kind: 'kit-wire-idle',
      step: null,
      points: [wire.name],
      witness: { is: 'touch', what: 'kit wire', name: wire.name, steps: [] },
      culprits: [],
      keys: [
        ...wire.ends.flatMap((end) => [`node:${job.ends[end]?.node ?? -1}`, `end:${end}`]),
        ...reachedPlaces(rework, wire.ends[0], view),
        `idle:${names.end(wire.ends[0])}`,
      ],
    });
  }
  return findings;
}

/** Whether a wire that was never cut leads from one place to another one, on a stated net: then it is not idle. */
function joinsStatedPlaces(rework: Rework, wire: number, stated: Uint8Array): boolean {
  if (rework.pieceThere[wire] !== 1) return false;
  const [a, b] = (rework.job.wires[wire]?.ends ?? []).map(
    (end) => rework.terminalPlace[rework.endTerminal[end] ?? -1] ?? -1,
  );
  if (a === undefined || b === undefined || a < 0 || b < 0 || a === b) return false;
  return stated[a] === 1 || stated[b] === 1;
}

function reachedPlaces(rework: Rework, end: number, view: Conducts): readonly string[] {
  const node = rework.job.ends[end]?.node ?? 0;
  return reachedFrom(rework.graph, rework.ordinal, node, view)
    .filter((one) => one < rework.job.places.length)
    .map((one) => `node:${one}`);
}

function aliveEdgesOf(rework: Rework, wire: number, pieces: readonly number[]): readonly number[] {
  const { graph, job } = rework;
  const edges: number[] = [];
  const seen = new Set<number>();
  const open = pieces.flatMap((piece) =>
    rework.pieceThere[piece] === 1
      ? (job.pieces[piece]?.ends ?? []).map((end) => job.ends[end]?.node ?? 0)
      : [],
  );
  for (let at = 0; at < open.length; at += 1) {
    const node = open[at] as number;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (
        graph.kindOf(edge) !== 'conductor' ||
        graph.whatOf(edge) !== wire ||
        !graph.aliveAt(edge, rework.ordinal) ||
        seen.has(edge)
      )
        continue;
      seen.add(edge);
      edges.push(edge);
      open.push(graph.otherEnd(half));
    }
  }
  return edges;
}

/** What {@link markServing} says of an edge. */
const notJudged = 0;
const idle = 1;
const serves = 2;
const beingJudged = 3;

function markServing(
  rework: Rework,
  onStatedNet: Uint8Array,
  view: Conducts,
  start: number,
  serving: Uint8Array,
): void {
  const { graph, job, ordinal } = rework;
  const nodes = reachedFrom(graph, ordinal, start, view);
  const stated = nodes.some((node) => node < job.places.length && onStatedNet[node] === 1);
  const degree = graph.beginSearch();
  for (const node of nodes) {
    let count = 0;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (!graph.aliveAt(edge, ordinal) || !view(edge)) continue;
      serving[edge] = beingJudged;
      count += 1;
    }
    degree.mark(node, count);
  }
  const leaves = nodes.filter((node) => node >= job.places.length && degree.valueOf(node) === 1);
  for (let at = 0; at < leaves.length; at += 1) {
    const node = leaves[at] as number;
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half)) {
      const edge = half >> 1;
      if (serving[edge] !== beingJudged) continue;
      serving[edge] = idle;
      const other = graph.otherEnd(half);
      const left = degree.valueOf(other) - 1;
      degree.mark(other, left);
      if (left === 1 && other >= job.places.length) leaves.push(other);
    }
  }
  const places = nodes.filter((node) => node < job.places.length).length;
  for (const node of nodes)
    for (let half = graph.firstHalf(node); half >= 0; half = graph.nextHalf(half))
      if (serving[half >> 1] === beingJudged) serving[half >> 1] = stated && places > 1 ? serves : idle;
}

/** A kit wire that was left in the bag: whole, and both its ends still loose and by themselves. */
export function isUnusedKitWire(rework: Rework, wire: number): boolean {
  const { job } = rework;
  if (job.wires[wire]?.origin !== 'kit' || rework.pieceThere[wire] !== 1 || rework.jointsOn(wire).length > 0)
    return false;
  return (job.wires[wire]?.ends ?? []).every(
    (end) => rework.isFree(end) && rework.endsOf(rework.endTerminal[end] ?? -1).length < 2,
  );
}

/** Another rating, or one that cannot be compared, is a change; the same fuse put back is not. */
function fuseChanged(rework: Rework, element: number): boolean {
  const { job } = rework;
  const before = job.elements[element];
  if (before === undefined) return false;
  if (before.fitted !== rework.fuseFitted[element]) return true;
  const part = job.parts.get(rework.fuseFittedPart.get(element) ?? '');
  return part?.is === 'fuse' && (part.ratingAmps === null || part.ratingAmps !== before.ratingAmps);
}

/** Pairs that are mated otherwise than as found and as intent says. */
function mateFindings(rework: Rework, run: WorkRun): readonly RawFinding[] {
  const { job } = rework;
  const findings: RawFinding[] = [];
  const wanted = job.connectors.map((connector) => connector.counterpart);
  const groups = job.wanted.interposed.map(({ connector, near, far }) => {
    const other = job.connectors[connector]?.counterpart ?? -1;
    for (const [a, b] of [
      [connector, near],
      [far, other],
    ] as const) {
      wanted[a] = b;
      if (b >= 0) wanted[b] = a;
    }
    return [connector, near, far, other];
  });
  const reported = new Set<number>();
  for (let index = 0; index < job.connectors.length; index += 1) {
    const connector = job.connectors[index];
    if (connector === undefined) continue;
    if (rework.counterpart[index] === wanted[index] || reported.has(index)) continue;
    const group = groups.find((one) => one.includes(index)) ??
      interposedWith(rework, index) ?? [index, rework.counterpart[index] ?? -1, wanted[index] ?? -1];
    for (const one of group) reported.add(one);
    const step =
      job.steps.find(
        ({ action }) =>
          action.kind === 'interpose' &&
          [action.connector, action.near, action.far].some((one) => group.includes(one)),
      )?.number ?? null;
    findings.push(
      mateChanged(
        rework,
        group,
        step,
        connector.name,
        nameOf(rework, wanted[index]),
        nameOf(rework, rework.counterpart[index]),
      ),
    );
  }
  const plugged = assembledPlugged(job);
  for (let index = 0; index < job.connectors.length; index += 1) {
    const connector = job.connectors[index];
    if (connector === undefined) continue;
    if (connector.counterpart < index || rework.counterpart[index] !== connector.counterpart) continue;
    if (plugged[index] !== false || rework.plugged[index] !== true) continue;
    const steps = run.touched.get(`connector:${index}`) ?? [];
    findings.push(
      mateChanged(
        rework,
        [index, connector.counterpart],
        steps[steps.length - 1] ?? null,
        connector.name,
        'unplugged as found',
        'plugged',
      ),
    );
  }
  return findings;
}

/** The connectors of the step that put an adapter where a connector was mated, asked for or not. */
function interposedWith(rework: Rework, index: number): readonly number[] | null {
  const { job } = rework;
  for (const { action } of job.steps) {
    if (action.kind !== 'interpose') continue;
    const group = [
      action.connector,
      action.near,
      action.far,
      job.connectors[action.connector]?.counterpart ?? -1,
    ];
    if (group.includes(index)) return group;
  }
  return null;
}

function nameOf(rework: Rework, connector: number | undefined): string {
  return rework.job.connectors[connector ?? -1]?.name ?? 'nothing';
}

function mateChanged(
  rework: Rework,
  group: readonly number[],
  step: number | null,
  what: string,
  expected: string,
  found: string,
): RawFinding {
  const keys: string[] = [];
  for (const index of group) {
    const connector = rework.job.connectors[index];
    if (connector === undefined) continue;
    keys.push(`connector:${index}`);
    for (let place = connector.firstPlace; place < connector.firstPlace + connector.placeCount; place += 1)
      keys.push(`node:${place}`);
  }
  return {
    kind: 'mate-changed',
    step,
    points: [what],
    witness: { is: 'state', what, expected, found },
    culprits: step === null ? [] : [step],
    keys,
  };
}
