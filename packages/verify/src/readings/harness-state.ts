import { type Job, type Rework, UnionFind } from '@loomproof/netlist';
import type { HarnessFault } from '../faults/fault.ts';
import { type Bands, defaultBands, isFarFromWhole } from './bands.ts';
import { type Expected, expectedText, type Prediction, rangeAround } from './expected.ts';
import { type LocalEffect, LocalEffects } from './local-effects.ts';
import { type CircuitParts, circuitParts, resistanceRange } from './resistance-range.ts';
import { isApart, type ProbePoint, type Stage } from './stage.ts';

/** What a state is made of. */
interface StateFacts {
  /** A number for each point; equal for points that are joined by metal. */
  readonly nets: Int32Array;
  /** Nets that leave the model where nobody declared that they stay apart beyond. */
  readonly boundary: ReadonlySet<number>;
  /** Devices that are plugged; null where readings are of copper only. */
  readonly parts: CircuitParts | null;
  readonly bothWays: boolean;
  readonly bands: Bands;
}

/**
 * One state of the harness, right or faulty, as two probes see it in a stage. Points are given by their index in the
 * list of probe points.
 */
export class HarnessState implements Prediction {
  /** A number for each point; equal for points that are joined by metal. */
  readonly nets: Int32Array;
  /** Whether red on `a` and red on `b` are two readings, since a diode may lie between. */
  readonly bothWays: boolean;
  readonly #boundary: ReadonlySet<number>;
  readonly #parts: CircuitParts | null;
  readonly #bands: Bands;
  readonly #known = new Map<number, Expected>();
  #signature: string | null = null;

  constructor(facts: StateFacts) {
    this.nets = facts.nets;
    this.#boundary = facts.boundary;
    this.#parts = facts.parts;
    this.bothWays = facts.bothWays;
    this.#bands = facts.bands;
  }

  /** What a meter shows between two points. */
  expected(a: number, b: number): Expected {
    const [from, to] = [this.nets[a] ?? 0, this.nets[b] ?? 0];
    if (from === to) return 'whole';
    // Beyond two boundaries that nobody declared apart, anything may join them.
    if (this.#boundary.has(from) && this.#boundary.has(to)) return 'unsure';
    if (this.#parts === null) return 'open';
    const key = a * this.nets.length + b;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = this.#throughLoads(this.#parts, from, to);
    this.#known.set(key, found);
    return found;
  }

  /** The lowest and highest ohms that a meter may show between two points, by what is said of the devices. */
  range(a: number, b: number): { readonly low: number; readonly high: number } {
    const [from, to] = [this.nets[a] ?? 0, this.nets[b] ?? 0];
    if (from === to) return { low: 0, high: 0 };
    if (this.#parts === null) return { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY };
    const { low, high } = resistanceRange(this.#parts, from, to);
    return { low, high };
  }

  /** A text that two states share when no reading of the stage tells them apart. */
  signature(): string {
    this.#signature ??= this.#sign();
    return this.#signature;
  }

  #sign(): string {
    if (this.#parts !== null) {
      const all: string[] = [];
      for (let a = 0; a < this.nets.length; a += 1)
        for (let b = this.bothWays ? 0 : a + 1; b < this.nets.length; b += 1)
          all.push(expectedText(this.expected(a, b)));
      return all.join();
    }
    const first = new Map<number, number>();
    for (const [point, net] of this.nets.entries()) if (!first.has(net)) first.set(net, point);
    return Array.from(
      this.nets,
      (net) => `${first.get(net) ?? -1}${this.#boundary.has(net) ? '?' : ''}`,
    ).join();
  }

  #throughLoads(parts: CircuitParts, from: number, to: number): Expected {
    const { low, high, throughDiode } = resistanceRange(parts, from, to);
    const bands = this.#bands;
    if (low >= bands.openOhm) return 'open';
    if (!isFarFromWhole(low, bands) || high >= bands.openOhm) return 'unsure';
    // What a meter shows of a diode depends on the meter: no more is known than that it is neither whole nor open.
    return throughDiode ? { lowOhm: bands.wholeOhm, highOhm: bands.openOhm } : rangeAround(low, high, bands);
  }
}

/**
 * A state found from all the joins of a harness.
 *
 * @param rework - the work as it was done, with or without a mistake
 * @param broken - what is broken in what came of it
 * @param stage - what is plugged
 * @param points - where probes can be put
 * @param bands - limits that tell whole from open
 */
export function harnessState(
  rework: Rework,
  broken: readonly HarnessFault[],
  stage: Stage,
  points: readonly ProbePoint[],
  bands: Bands = defaultBands,
): HarnessState {
  const { job } = rework;
  const dead = new Set<number>();
  for (const one of broken) {
    const edge = one.is === 'does not conduct' ? joinBetween(rework, one.join) : -1;
    // A mistake in the work may have left no such join; the metal of the chassis, which is no edge either, stays.
    if (edge >= 0) dead.add(edge);
  }
  const sets = new UnionFind(job.nodeCount);
  const { edges, from, to } = stageJoins(rework, stage);
  for (let join = 0; join < edges.length; join += 1)
    if (!dead.has(edges[join] as number)) sets.union(from[join] as number, to[join] as number);
  for (const one of broken) {
    if (one.is === 'bridged') sets.union(one.places[0], one.places[1]);
    if (one.is === 'bare end touches') sets.union(job.ends[one.end]?.node ?? 0, one.place);
    if (one.is === 'part bridged') bridgePart(rework, stage, one.element, sets);
  }
  return new HarnessState({
    // A point that this harness does not have is joined to nothing.
    nets: Int32Array.from(points, ({ node }, index) => (node < 0 ? -1 - index : sets.find(node))),
    boundary: new Set(looseBoundaries(rework).map((node) => sets.find(node))),
    parts: stage.is === 'in place' ? circuitParts(rework, stage, sets, broken) : null,
    bothWays: readsBothWays(job, stage),
    bands,
  });
}

/** Whether red and black exchanged may read otherwise in a stage, so that both ways are readings of their own. */
function readsBothWays({ elements }: Job, stage: Stage): boolean {
  return stage.is === 'in place' && elements.some(({ kind }) => kind === 'diode');
}

/** Pins of a part that is not plugged touch nothing that a probe reaches. */
function bridgePart(rework: Rework, stage: Stage, index: number, sets: UnionFind): void {
  const element = rework.job.elements[index];
  if (element !== undefined && stage.is === 'in place' && !isApart(rework, stage, element.connector))
    sets.union(element.from, element.to);
}

/**
 * States of one harness with one thing broken, each in a pass over the points and not over the harness. Readings of
 * copper only.
 */
export class LocalStates {
  readonly #rework: Rework;
  readonly #effects: LocalEffects;
  readonly #joinOfEdge: ReadonlyMap<number, number>;
  readonly #nets: Int32Array;
  readonly #order: Int32Array;
  readonly #loose: readonly number[];
  readonly #bands: Bands;

  constructor(rework: Rework, stage: Stage, points: readonly ProbePoint[], bands: Bands) {
    const { edges, from, to } = stageJoins(rework, stage);
    this.#rework = rework;
    this.#effects = new LocalEffects(rework.job.nodeCount, from, to);
    this.#joinOfEdge = new Map([...edges].flatMap((edge, join) => (edge < 0 ? [] : [[edge, join] as const])));
    this.#nets = Int32Array.from(points, ({ node }) => this.#effects.net[node] ?? -1);
    this.#order = Int32Array.from(points, ({ node }) => this.#effects.order[node] ?? -1);
    this.#loose = looseBoundaries(rework);
    this.#bands = bands;
  }

  /** The state with one thing broken. */
  broken(fault: HarnessFault): HarnessState {
    const effect = this.#effectOf(fault);
    const netAt = (net: number, order: number): number => {
      if (effect.is === 'split') return order >= effect.first && order < effect.last ? -1 : net;
      if (effect.is === 'joined') return net === effect.nets[1] ? effect.nets[0] : net;
      return net;
    };
    const { net, order } = this.#effects;
    return new HarnessState({
      nets: this.#nets.map((one, point) => netAt(one, this.#order[point] as number)),
      boundary: new Set(this.#loose.map((node) => netAt(net[node] as number, order[node] as number))),
      parts: null,
      bothWays: false,
      bands: this.#bands,
    });
  }

  #effectOf(fault: HarnessFault): LocalEffect {
    if (fault.is === 'bridged') return this.#effects.joined(...fault.places);
    if (fault.is === 'bare end touches')
      return this.#effects.joined(this.#rework.job.ends[fault.end]?.node ?? 0, fault.place);
    // Devices are apart wherever readings are of copper only.
    if (fault.is !== 'does not conduct') return { is: 'none' };
    return this.#effects.opened(this.#joinOfEdge.get(joinBetween(this.#rework, fault.join)) ?? -1);
  }
}

function joinBetween(rework: Rework, [a, b]: readonly [number, number]): number {
  for (const kind of ['conductor', 'crimp', 'seat', 'joint', 'mate', 'jumper'] as const) {
    const edge = rework.graph.find(kind, a, b);
    if (edge >= 0) return edge;
  }
  return -1;
}

/** Everything that joins nodes by metal in a stage; what is no edge of the graph, such as chassis, has edge -1. */
function stageJoins(
  rework: Rework,
  stage: Stage,
): { readonly edges: Int32Array; readonly from: Int32Array; readonly to: Int32Array } {
  const { job, graph, ordinal } = rework;
  const chassis = stage.is === 'bench' ? [] : chassisPlaces(job);
  const most = graph.edgeCount + chassis.length;
  const [edges, from, to] = [new Int32Array(most), new Int32Array(most), new Int32Array(most)];
  const apart = job.connectors.map((_, index) => isApart(rework, stage, index));
  let count = 0;
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (!graph.aliveAt(edge, ordinal)) continue;
    if (graph.kindOf(edge) === 'mate' && apart[graph.whatOf(edge)] === true) continue;
    edges[count] = edge;
    from[count] = graph.fromOf(edge);
    to[count] = graph.toOf(edge);
    count += 1;
  }
  for (const place of chassis.slice(1)) {
    edges[count] = -1;
    from[count] = chassis[0] ?? place;
    to[count] = place;
    count += 1;
  }
  return { edges: edges.subarray(0, count), from: from.subarray(0, count), to: to.subarray(0, count) };
}

/** Places are the same list in every job that differs by mistakes only. */
const chassisOf = new WeakMap<Job['places'], readonly number[]>();
const looseOf = new WeakMap<Job['places'], readonly number[]>();

function chassisPlaces({ places }: Job): readonly number[] {
  const known = chassisOf.get(places);
  if (known !== undefined) return known;
  const found = places.flatMap(({ chassis }, node) => (chassis ? [node] : []));
  chassisOf.set(places, found);
  return found;
}

function looseBoundaries({ job: { places } }: Rework): readonly number[] {
  const known = looseOf.get(places);
  if (known !== undefined) return known;
  const found = places.flatMap(({ kind, distinct }, node) =>
    kind === 'boundary' && !distinct ? [node] : [],
  );
  looseOf.set(places, found);
  return found;
}
