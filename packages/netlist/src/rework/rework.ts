import { type FlatHarness, flatHarness, homeKinds } from '../harness/flat-harness.ts';
import type { Job, LockState, Step, StepAction } from '../harness/job.ts';
import { type Conducts, netLabels } from '../harness/nets.ts';
import { oppositeCavities } from '../harness/opposite-cavities.ts';
import { beforeWork, WiringGraph } from '../harness/wiring-graph.ts';
import { InvariantError } from '../invariant-error.ts';
import { FittedParts } from './fitted-parts.ts';
import type { BreachReason, RefusalReason, StepOutcome, Touch } from './step-outcome.ts';

/** How a wire end is made ready: a fresh cut face, or stripped for a crimp. */
export type EndPreparation = 'cut' | 'stripped';

/** The state of a splice, tap or jumper. A removed tap leaves a wound that only a cover closes. */
export type JointState = 'absent' | 'crimped' | 'sealed' | 'wound' | 'covered wound' | 'removed';

const noEnds: readonly number[] = [];

interface Stations {
  readonly nodes: number[];
  readonly edges: number[];
}

/** Where a mark falls on a piece: where a mistake left out marks before it, there are fewer than were counted. */
function placeAmong({ edges }: Stations, after: number): number {
  return Math.min(after, edges.length - 1);
}

/**
 * The harness while it is worked on. `apply` does one step; everything else asks about the state after the last one.
 * Edges of the graph remember which step made and which ended them, so earlier states can still be walked.
 */
export class Rework {
  readonly job: Job;
  readonly graph: WiringGraph;
  /** Ordinal of the last step done; 0 before the first. */
  ordinal = beforeWork;
  readonly supplyOn: boolean[];
  readonly plugged: boolean[];
  readonly lock: LockState[];
  readonly latch: LockState[];
  /** The connector that each faces now, or -1. */
  readonly counterpart: number[];
  /** Facing cavity of each place now, or -1. */
  readonly facing: Int32Array;
  readonly placed: boolean[];
  readonly plug: FittedParts;
  /** Terminal in each cavity, or -1. Studs hold many and are not in this list. */
  readonly seated: Int32Array;
  readonly terminalPlace: Int32Array;
  readonly terminalThere: Uint8Array;
  readonly endTerminal: Int32Array;
  readonly endJoint: Int32Array;
  readonly endThere: Uint8Array;
  /** The piece that each end belongs to now. */
  readonly endPiece: Int32Array;
  /** 1 for each end that is stripped, or was when something was crimped on it. */
  readonly #endStripped: Uint8Array;
  readonly endCover: FittedParts;
  readonly endSeal: FittedParts;
  /** The tube that was slid on each end that has one. */
  readonly endTube = new Map<number, string>();
  readonly endTied: Uint8Array;
  readonly pieceThere: Uint8Array;
  readonly jointState: JointState[];
  readonly jointCover: FittedParts;
  readonly tapPiece: Int32Array;
  readonly fuseFitted: boolean[];
  readonly partsTaken = new Map<string, number>();
  readonly partsRecovered = new Map<string, number>();
  readonly ringsOnStud = new Map<number, number>();
  /** Ordinal of the last step on each end that a step was done on. */
  readonly lastStepOnEnd = new Map<number, number>();
  /** Ordinal of the step that left an end hanging free, where a step did. */
  readonly freedAt = new Map<number, number>();
  /** Ordinal of the first step that found none of a part left. */
  readonly partsShortAt = new Map<string, number>();
  /** The fuse that was fitted last, by element, where it is not the one as found. */
  readonly fuseFittedPart = new Map<number, string>();
  /** The ends of each terminal that a step has fitted; the others keep those they had. */
  readonly #fittedEnds = new Map<number, number[]>();
  /** The ends of each joint that a step was done on; the others keep those they had. */
  readonly #jointEnds = new Map<number, readonly number[]>();
  readonly #stations = new Map<number, Stations>();
  readonly #conductorEdge: Int32Array;
  readonly #jumperEdge = new Map<number, number>();
  readonly #flat: FlatHarness;
  /** Taps by their node. */
  readonly #jointOfNode = new Map<number, number>();

  constructor(job: Job) {
    this.job = job;
    this.#flat = flatHarness(job);
    this.graph = new WiringGraph(job.nodeCount, this.#flat.mostJoins);
    this.supplyOn = job.supplies.map(() => true);
    this.plugged = job.connectors.map((one) => one.plugged);
    this.lock = job.connectors.map((one) => one.lock);
    this.latch = job.connectors.map((one) => one.latch);
    this.counterpart = job.connectors.map((one) => one.counterpart);
    this.placed = job.connectors.map((one) => one.origin === 'stock');
    this.facing = job.facing.slice();
    // A plug whose kind was not said is still a plug.
    this.plug = new FittedParts(this.#flat.plug);
    this.seated = new Int32Array(job.places.length).fill(-1);
    this.terminalPlace = new Int32Array(job.terminals.length).fill(-1);
    this.terminalThere = new Uint8Array(job.terminals.length);
    this.endTerminal = new Int32Array(job.ends.length).fill(-1);
    this.endJoint = new Int32Array(job.ends.length).fill(-1);
    this.endThere = new Uint8Array(job.ends.length);
    this.endPiece = new Int32Array(job.ends.length).fill(-1);
    this.#endStripped = new Uint8Array(job.ends.length);
    this.endCover = new FittedParts(this.#flat.endCover);
    this.endSeal = new FittedParts(this.#flat.endSeal);
    this.endTied = new Uint8Array(job.ends.length);
    this.pieceThere = new Uint8Array(job.pieces.length);
    this.jointState = this.#flat.jointState.slice();
    this.jointCover = new FittedParts(this.#flat.jointCover);
    this.tapPiece = new Int32Array(job.joints.length).fill(-1);
    this.fuseFitted = job.elements.map((element) => element.fitted);
    this.#conductorEdge = new Int32Array(job.pieces.length).fill(-1);
    this.#assemble();
  }

  #assemble(): void {
    const { job, graph } = this;
    const { wireEnds, endNode, endHome, endHomeAt, endHomeTerminal, terminalNode } = this.#flat;
    for (let at = 0; at < wireEnds.length; at += 1) {
      const end = wireEnds[at] as number;
      const index = at >> 1;
      if ((at & 1) === 0) {
        this.pieceThere[index] = 1;
        const other = wireEnds[at + 1] as number;
        if (job.tapsAsFound.has(index)) this.#conductorEdge[index] = -1;
        else
          this.#conductorEdge[index] = graph.add(
            'conductor',
            endNode[end] as number,
            endNode[other] as number,
            index,
            beforeWork,
          );
      }
      this.endThere[end] = 1;
      this.endPiece[end] = index;
      const home = endHome[end] as number;
      if (home === homeKinds.cut) continue;
      if (home === homeKinds.joint) {
        this.#attachToJoint(end, endHomeAt[end] as number, beforeWork);
        continue;
      }
      if (home === homeKinds.stripped) this.#endStripped[end] = 1;
      const terminal = endHomeTerminal[end] as number;
      if (terminal < 0) continue;
      this.endTerminal[end] = terminal;
      this.#endStripped[end] = 1;
      graph.add('crimp', endNode[end] as number, terminalNode[terminal] as number, terminal, beforeWork);
      if (this.terminalThere[terminal] === 1) continue;
      this.terminalThere[terminal] = 1;
      if (home === homeKinds.place) this.#seat(terminal, endHomeAt[end] as number, beforeWork);
    }
    for (const [wire, taps] of job.tapsAsFound) this.#threadTaps(wire, taps);
    for (const [index, connector] of job.connectors.entries()) {
      if (connector.counterpart < 0) continue;
      const brings = connector.device || job.connectors[connector.counterpart]?.device === true;
      const end = connector.firstPlace + connector.placeCount;
      for (let place = connector.firstPlace; place < end; place += 1) {
        const other = this.facing[place] ?? -1;
        if (other <= place) continue;
        if (brings || ((this.seated[place] ?? -1) >= 0 && (this.seated[other] ?? -1) >= 0))
          graph.add('mate', place, other, index, beforeWork);
      }
    }
  }

  /** Lets a run go through the taps that are on it as found. */
  #threadTaps(wire: number, taps: readonly number[]): void {
    const [first = 0, last = 0] = this.job.pieces[wire]?.ends ?? [];
    const marks = taps.map((joint) => this.#flat.jointNode[joint] ?? 0);
    const nodes = [this.#endNode(first), ...marks, this.#endNode(last)];
    const edges = nodes
      .slice(1)
      .map((node, at) => this.graph.add('conductor', nodes[at] ?? 0, node, wire, beforeWork));
    this.#stations.set(wire, { nodes, edges });
    for (const [at, joint] of taps.entries()) {
      this.tapPiece[joint] = wire;
      this.#jointOfNode.set(marks[at] ?? 0, joint);
    }
  }

  #endNode(end: number): number {
    return this.#flat.endNode[end] ?? 0;
  }

  #terminalNode(terminal: number): number {
    return this.#flat.terminalNode[terminal] ?? 0;
  }

  #isDevice(place: number): boolean {
    return this.#flat.devicePin[place] === 1;
  }

  /** Whether a contact is fitted at a place; a device brings its own. */
  hasContact(place: number): boolean {
    return (this.seated[place] ?? -1) >= 0 || this.#isDevice(place);
  }

  /** A mate conducts only where both contacts are fitted; a device pin and the cavity that faces it are one place. */
  #mate(place: number, other: number, step: number): void {
    const joins =
      this.#isDevice(place) || this.#isDevice(other) || (this.hasContact(place) && this.hasContact(other));
    if (!joins || this.graph.find('mate', place, other) >= 0) return;
    this.graph.add('mate', place, other, this.job.places[place]?.connector ?? 0, step);
  }

  #unmate(place: number, step: number): void {
    const other = this.facing[place] ?? -1;
    if (other < 0 || this.#isDevice(place) || this.#isDevice(other)) return;
    const edge = this.graph.find('mate', place, other);
    if (edge >= 0) this.graph.end(edge, step);
  }

  #seat(terminal: number, place: number, step: number): void {
    this.terminalPlace[terminal] = place;
    this.graph.add('seat', this.#terminalNode(terminal), place, terminal, step);
    if (this.#flat.cavity[place] !== 1) {
      this.ringsOnStud.set(place, (this.ringsOnStud.get(place) ?? 0) + 1);
      return;
    }
    this.seated[place] = terminal;
    const other = this.facing[place] ?? -1;
    if (other >= 0 && step !== beforeWork) this.#mate(place, other, step);
  }

  #unseat(terminal: number, step: number): void {
    const place = this.terminalPlace[terminal] ?? -1;
    if (place < 0) return;
    for (const end of this.endsOf(terminal)) this.freedAt.set(end, step);
    const edge = this.graph.find('seat', this.#terminalNode(terminal), place);
    if (edge >= 0) this.graph.end(edge, step);
    this.terminalPlace[terminal] = -1;
    if (this.#flat.cavity[place] === 1) {
      this.seated[place] = -1;
      this.#unmate(place, step);
    } else this.ringsOnStud.set(place, (this.ringsOnStud.get(place) ?? 1) - 1);
  }

  #attachToJoint(end: number, joint: number, step: number): void {
    this.endJoint[end] = joint;
    this.#endStripped[end] = 1;
    if (step !== beforeWork) this.#jointEnds.set(joint, [...this.endsIn(joint), end]);
    this.graph.add('joint', this.#endNode(end), this.#flat.jointNode[joint] ?? 0, joint, step);
  }

  #stationsOf(piece: number): Stations {
    let stations = this.#stations.get(piece);
    if (stations === undefined) {
      const ends = this.job.pieces[piece]?.ends ?? [0, 0];
      stations = { nodes: ends.map((end) => this.#endNode(end)), edges: [this.#conductorEdge[piece] ?? -1] };
      this.#stations.set(piece, stations);
    }
    return stations;
  }

  /** The ends crimped in a terminal now. */
  endsOf(terminal: number): readonly number[] {
    return this.#fittedEnds.get(terminal) ?? this.job.terminals[terminal]?.ends ?? noEnds;
  }

  /** The ends in a joint now: those as found first, then in the order in which they came. */
  endsIn(joint: number): readonly number[] {
    return this.#jointEnds.get(joint) ?? this.#flat.jointEnds[joint] ?? noEnds;
  }

  /** How an end is made ready. */
  preparationOf(end: number): EndPreparation {
    return this.#endStripped[end] === 1 ? 'stripped' : 'cut';
  }

  /** Whether an end hangs free: there, in no joint, and in no terminal that sits somewhere. */
  isFree(end: number): boolean {
    if (this.endThere[end] !== 1 || (this.endJoint[end] ?? -1) >= 0) return false;
    const terminal = this.endTerminal[end] ?? -1;
    return terminal < 0 || (this.terminalPlace[terminal] ?? -1) < 0;
  }

  /** The ends that hang free, in order. */
  freeEnds(): readonly number[] {
    const free: number[] = [];
    for (let end = 0; end < this.endThere.length; end += 1) if (this.isFree(end)) free.push(end);
    return free;
  }

  /** Whether metal lies open at an end. */
  isBare(end: number): boolean {
    return this.isFree(end) && this.endCover.at(end) === null;
  }

  /** Taps along a piece, in order from its first end. */
  jointsOn(piece: number): readonly number[] {
    const nodes = this.#stations.get(piece)?.nodes.slice(1, -1) ?? [];
    return nodes.map((node) => this.#jointOfNode.get(node) ?? -1);
  }

  /** Whether an edge conducts as things are plugged right now. */
  readonly conductsNow: Conducts = (edge) =>
    this.graph.kindOf(edge) !== 'mate' || this.plugged[this.graph.whatOf(edge)] === true;

  /** The label of each place's net as things stand after a step, in a view that the caller gives. */
  labels(time: number, conducts: Conducts | null): Int32Array {
    return netLabels(this.graph, time, this.job.places.length, conducts);
  }

  /** Does one step. A refused step changes nothing. */
  apply(step: Step): StepOutcome {
    this.ordinal += 1;
    const breaches: BreachReason[] = [];
    const touches: Touch[] = [];
    const refused = this.#do(step.action, breaches, touches);
    return { refused, breaches, touches };
  }

  #take(part: string | null): void {
    if (part === null) return;
    const taken = (this.partsTaken.get(part) ?? 0) + 1;
    this.partsTaken.set(part, taken);
    const there = (this.job.bag.get(part) ?? 0) + (this.partsRecovered.get(part) ?? 0);
    if (taken > there && !this.partsShortAt.has(part)) this.partsShortAt.set(part, this.ordinal);
  }

  #recover(part: string | null): void {
    if (part !== null && part !== '') this.partsRecovered.set(part, (this.partsRecovered.get(part) ?? 0) + 1);
  }

  #do(action: StepAction, breaches: BreachReason[], touches: Touch[]): RefusalReason | null {
    const now = this.ordinal;
    switch (action.kind) {
      case 'disconnect':
      case 'reconnect': {
        const on = action.kind === 'reconnect';
        if (this.supplyOn[action.supply] === on) return 'already so';
        this.supplyOn[action.supply] = on;
        return null;
      }
      case 'prove dead':
        return null;
      case 'unplug':
        return this.#unplug(action.connector, touches);
      case 'plug':
        return this.#plugIn(action.connector, breaches, touches);
      case 'open lock':
      case 'close lock':
        return this.#turn(
          this.lock,
          action.connector,
          action.kind === 'open lock' ? 'open' : 'closed',
          'no lock',
          touches,
        );
      case 'open latch':
      case 'close latch':
        return this.#turn(
          this.latch,
          action.connector,
          action.kind === 'open latch' ? 'open' : 'closed',
          'no latch',
          touches,
        );
      case 'cut':
        return this.#cut(action, touches);
      case 'strip': {
        const refused = this.#workable(action.end);
        if (refused !== null) return refused;
        if ((this.endTerminal[action.end] ?? -1) >= 0) return 'has terminal';
        if (this.#endStripped[action.end] === 1) return 'already stripped';
        this.#endStripped[action.end] = 1;
        this.#touchEnd(action.end, touches);
        return null;
      }
      case 'slide tube': {
        const refused = this.#workable(action.end);
        if (refused !== null) return refused;
        if ((this.endTerminal[action.end] ?? -1) >= 0) return 'has terminal';
        this.endTube.set(action.end, action.part);
        this.#take(action.part);
        this.#touchEnd(action.end, touches);
        return null;
      }
      case 'join':
        return this.#join(action.ends, action.joint, breaches, touches);
      case 'seal':
        return this.#sealJoint(action.joint);
      case 'tap':
        return this.#tap(action, breaches, touches);
      case 'remove tap':
        return this.#removeTap(action.joint, touches);
      case 'fit terminal':
        return this.#fitTerminal(action, breaches, touches);
      case 'withdraw': {
        const terminal = this.seated[action.place] ?? -1;
        if (terminal < 0) return 'nothing there';
        const refused = this.#openFor(action.place, breaches);
        if (refused !== null) return refused;
        this.#unseat(terminal, now);
        for (const end of this.endsOf(terminal)) this.#touchEnd(end, touches);
        touches.push({ what: 'terminal', index: terminal });
        return null;
      }
      case 'insert':
        return this.#insert(action.end, action.place, breaches, touches);
      case 'attach':
        return this.#attach(action.end, action.place, breaches, touches);
      case 'detach': {
        const terminal = this.endTerminal[action.end] ?? -1;
        const place = this.terminalPlace[terminal] ?? -1;
        if (place < 0 || this.job.places[place]?.kind !== 'stud') return 'not there';
        this.#unseat(terminal, now);
        this.#touchEnd(action.end, touches);
        touches.push({ what: 'terminal', index: terminal });
        return null;
      }
      case 'cover':
        return this.#cover(action.end, action.joint, action.part, touches);
      case 'tie back': {
        if (this.endThere[action.end] !== 1) return 'not there';
        if (!this.isFree(action.end)) return 'not free';
        this.endTied[action.end] = 1;
        this.#take(action.part);
        return null;
      }
      case 'fasten':
        if (this.pieceThere[action.piece] !== 1) return 'not there';
        this.#take(action.part);
        return null;
      case 'fit plug': {
        if (this.job.places[action.place]?.blocked === true) return 'blocked';
        if ((this.seated[action.place] ?? -1) >= 0) return 'occupied';
        if (this.plug.at(action.place) !== null) return 'already so';
        this.plug.fit(action.place, action.part);
        this.#take(action.part);
        touches.push({ what: 'place', index: action.place });
        return null;
      }
      case 'remove plug': {
        const plug = this.plug.at(action.place);
        if (plug === null) return 'nothing there';
        this.plug.fit(action.place, null);
        this.#recover(plug);
        touches.push({ what: 'place', index: action.place });
        return null;
      }
      case 'fit seal': {
        if (this.endThere[action.end] !== 1) return 'not there';
        if (!this.isFree(action.end)) return 'not free';
        // A wire seal does not pass over a crimped terminal.
        if ((this.endTerminal[action.end] ?? -1) >= 0) return 'has terminal';
        if (this.endSeal.at(action.end) !== null) return 'already so';
        this.endSeal.fit(action.end, action.part);
        this.#take(action.part);
        touches.push({ what: 'seal', index: action.end });
        return null;
      }
      case 'remove seal': {
        if (this.endThere[action.end] !== 1) return 'not there';
        if (!this.isFree(action.end)) return 'not free';
        if ((this.endTerminal[action.end] ?? -1) >= 0) return 'has terminal';
        if (this.endSeal.at(action.end) === null) return 'nothing there';
        this.#recover(this.endSeal.at(action.end));
        this.endSeal.fit(action.end, null);
        touches.push({ what: 'seal', index: action.end });
        return null;
      }
      case 'fit fuse':
      case 'remove fuse': {
        const fit = action.kind === 'fit fuse';
        if (this.fuseFitted[action.element] === fit) return 'already so';
        this.fuseFitted[action.element] = fit;
        if (action.kind === 'fit fuse') {
          this.#take(action.part);
          this.fuseFittedPart.set(action.element, action.part);
        }
        touches.push({ what: 'element', index: action.element });
        return null;
      }
      case 'place':
        if (this.placed[action.connector] === true) return 'already so';
        this.placed[action.connector] = true;
        return null;
      case 'interpose':
        return this.#interpose(action.connector, action.near, action.far, touches);
      case 'fit jumper': {
        if (this.jointState[action.joint] !== 'absent') return 'already so';
        this.jointState[action.joint] = 'crimped';
        this.#jumperEdge.set(
          action.joint,
          this.graph.add('jumper', action.places[0], action.places[1], action.joint, now),
        );
        this.#take(action.part);
        return null;
      }
      case 'remove jumper': {
        const edge = this.#jumperEdge.get(action.joint);
        if (edge === undefined || this.jointState[action.joint] !== 'crimped') return 'nothing there';
        this.graph.end(edge, now);
        this.jointState[action.joint] = 'removed';
        return null;
      }
      case 'remove off-cut':
        return this.#removeOffCut(action.piece);
      default:
        throw new InvariantError('netlist/Rework', `unknown step ${JSON.stringify(action)}`);
    }
  }

  #touchEnd(end: number, touches: Touch[]): void {
    this.lastStepOnEnd.set(end, this.ordinal);
    touches.push({ what: 'wire', index: this.job.ends[end]?.wire ?? 0 });
  }

  /** Why nothing can be crimped on or done to an end, or null. */
  #workable(end: number): RefusalReason | null {
    if (this.endThere[end] !== 1) return 'not there';
    if (!this.isFree(end)) return 'not free';
    return this.endCover.at(end) === null ? null : 'covered';
  }

  #turn(
    locks: LockState[],
    connector: number,
    wanted: LockState,
    none: RefusalReason,
    touches: Touch[],
  ): RefusalReason | null {
    if (locks[connector] === 'none') return none;
    if (locks[connector] === wanted) return 'already so';
    // A position latch holds a connector in its other half, so there must be one in it.
    if (locks === this.latch && wanted === 'closed' && this.plugged[connector] !== true) return 'not plugged';
    locks[connector] = wanted;
    touches.push({ what: 'connector', index: connector });
    return null;
  }

  #unplug(connector: number, touches: Touch[]): RefusalReason | null {
    const other = this.counterpart[connector] ?? -1;
    if (other < 0) return 'no counterpart';
    if (this.plugged[connector] !== true) return 'not plugged';
    if (this.latch[connector] === 'closed' || this.latch[other] === 'closed') return 'latched';
    this.plugged[connector] = false;
    this.plugged[other] = false;
    touches.push({ what: 'connector', index: connector }, { what: 'connector', index: other });
    return null;
  }

  #plugIn(connector: number, breaches: BreachReason[], touches: Touch[]): RefusalReason | null {
    const other = this.counterpart[connector] ?? -1;
    if (other < 0) return 'no counterpart';
    if (this.plugged[connector] === true) return 'already plugged';
    if (this.lock[connector] === 'open' || this.lock[other] === 'open')
      breaches.push('plugged with lock open');
    if (this.#needsPlacing(connector) || this.#needsPlacing(other)) breaches.push('not placed');
    this.plugged[connector] = true;
    this.plugged[other] = true;
    touches.push({ what: 'connector', index: connector }, { what: 'connector', index: other });
    return null;
  }

  #needsPlacing(connector: number): boolean {
    return this.job.connectors[connector]?.device === true && this.placed[connector] !== true;
  }

  #cut(action: Extract<StepAction, { kind: 'cut' }>, touches: Touch[]): RefusalReason | null {
    if (this.pieceThere[action.piece] !== 1) return 'not there';
    const { job, graph } = this;
    const now = this.ordinal;
    const stations = this.#stationsOf(action.piece);
    const wire = job.pieces[action.piece]?.wire ?? 0;
    const after = placeAmong(stations, action.after);
    graph.end(stations.edges[after] ?? -1, now);
    const [left, right] = action.newEnds;
    for (const end of action.newEnds) {
      this.endThere[end] = 1;
      this.#endStripped[end] = 0;
      this.lastStepOnEnd.set(end, now);
      this.freedAt.set(end, now);
    }
    const leftNodes = [...stations.nodes.slice(0, after + 1), this.#endNode(left)];
    const rightNodes = [this.#endNode(right), ...stations.nodes.slice(after + 1)];
    const leftEdge = graph.add(
      'conductor',
      leftNodes[leftNodes.length - 2] ?? 0,
      this.#endNode(left),
      wire,
      now,
    );
    const rightEdge = graph.add('conductor', this.#endNode(right), rightNodes[1] ?? 0, wire, now);
    this.#stations.set(action.leaves[0], {
      nodes: leftNodes,
      edges: [...stations.edges.slice(0, after), leftEdge],
    });
    this.#stations.set(action.leaves[1], {
      nodes: rightNodes,
      edges: [rightEdge, ...stations.edges.slice(after + 1)],
    });
    this.pieceThere[action.piece] = 0;
    for (const piece of action.leaves) {
      this.pieceThere[piece] = 1;
      for (const end of job.pieces[piece]?.ends ?? []) this.endPiece[end] = piece;
      for (const joint of this.jointsOn(piece)) this.tapPiece[joint] = piece;
    }
    touches.push({ what: 'wire', index: wire });
    return null;
  }

  #join(
    ends: readonly number[],
    joint: number,
    breaches: BreachReason[],
    touches: Touch[],
  ): RefusalReason | null {
    const refused = this.#readyForCrimp(ends);
    if (refused !== null) return refused;
    const part = this.job.parts.get(this.job.joints[joint]?.part ?? '');
    if (part?.is === 'splice' && ends.length > part.ends) breaches.push('too many ends');
    if (ends.some((end) => this.job.wires[this.job.ends[end]?.wire ?? -1]?.flex === true))
      breaches.push('in flex zone');
    for (const end of ends) {
      this.#attachToJoint(end, joint, this.ordinal);
      this.#touchEnd(end, touches);
    }
    this.jointState[joint] = 'crimped';
    this.#take(this.job.joints[joint]?.part ?? null);
    return null;
  }

  #readyForCrimp(ends: readonly number[]): RefusalReason | null {
    for (const [index, end] of ends.entries()) {
      const refused = this.#workable(end);
      if (refused !== null) return refused;
      if (ends.indexOf(end) !== index) return 'not free';
      if ((this.endTerminal[end] ?? -1) >= 0) return 'has terminal';
      if (this.#endStripped[end] !== 1) return 'not stripped';
    }
    return null;
  }

  #sealJoint(joint: number): RefusalReason | null {
    if (this.jointState[joint] === 'sealed') return 'already so';
    if (this.jointState[joint] !== 'crimped') return 'nothing there';
    const part = this.job.parts.get(this.job.joints[joint]?.part ?? '');
    if (
      part?.is === 'splice' &&
      part.tube !== 'built in' &&
      !this.endsIn(joint).some((end) => this.endTube.has(end))
    )
      return 'no tube';
    this.jointState[joint] = 'sealed';
    return null;
  }

  #tap(
    action: Extract<StepAction, { kind: 'tap' }>,
    breaches: BreachReason[],
    touches: Touch[],
  ): RefusalReason | null {
    if (this.pieceThere[action.piece] !== 1) return 'not there';
    const refused = this.#workable(action.branch);
    if (refused !== null) return refused;
    if ((this.endTerminal[action.branch] ?? -1) >= 0) return 'has terminal';
    const wire = this.job.pieces[action.piece]?.wire ?? 0;
    if (this.job.wires[wire]?.flex === true) breaches.push('in flex zone');
    const now = this.ordinal;
    const stations = this.#stationsOf(action.piece);
    const node = this.job.joints[action.joint]?.node ?? 0;
    const at = placeAmong(stations, action.after);
    const [before, after] = [stations.nodes[at] ?? 0, stations.nodes[at + 1] ?? 0];
    this.graph.end(stations.edges[at] ?? -1, now);
    const first = this.graph.add('conductor', before, node, wire, now);
    const second = this.graph.add('conductor', node, after, wire, now);
    stations.nodes.splice(at + 1, 0, node);
    stations.edges.splice(at, 1, first, second);
    this.tapPiece[action.joint] = action.piece;
    this.#jointOfNode.set(node, action.joint);
    this.#attachToJoint(action.branch, action.joint, now);
    this.#touchEnd(action.branch, touches);
    touches.push({ what: 'wire', index: wire });
    this.jointState[action.joint] = 'crimped';
    this.#take(this.job.joints[action.joint]?.part ?? null);
    return null;
  }

  #removeTap(joint: number, touches: Touch[]): RefusalReason | null {
    if (this.jointState[joint] !== 'crimped' && this.jointState[joint] !== 'sealed') return 'nothing there';
    // A tap of the kit has touched its wires when it was made.
    if (this.job.joints[joint]?.origin === 'stock') {
      const run = this.job.pieces[this.tapPiece[joint] ?? -1]?.wire ?? 0;
      touches.push({ what: 'wire', index: run });
      for (const end of this.endsIn(joint)) this.#touchEnd(end, touches);
    }
    for (const end of this.endsIn(joint)) {
      const edge = this.graph.find('joint', this.#endNode(end), this.job.joints[joint]?.node ?? 0);
      if (edge >= 0) this.graph.end(edge, this.ordinal);
      this.endJoint[end] = -1;
      this.#endStripped[end] = 0;
      this.lastStepOnEnd.set(end, this.ordinal);
      this.freedAt.set(end, this.ordinal);
    }
    this.#jointEnds.set(joint, noEnds);
    this.jointState[joint] = 'wound';
    return null;
  }

  #fitTerminal(
    action: Extract<StepAction, { kind: 'fit terminal' }>,
    breaches: BreachReason[],
    touches: Touch[],
  ): RefusalReason | null {
    const refused = this.#readyForCrimp(action.ends);
    if (refused !== null) return refused;
    const terminal = this.job.terminals[action.terminal];
    const part = this.job.parts.get(terminal?.part ?? '');
    if (part?.is === 'terminal' && action.ends.length > part.wires) breaches.push('too many wires');
    this.terminalThere[action.terminal] = 1;
    for (const end of action.ends) {
      this.endTerminal[end] = action.terminal;
      const ends = this.#fittedEnds.get(action.terminal);
      if (ends === undefined) this.#fittedEnds.set(action.terminal, [...(terminal?.ends ?? []), end]);
      else ends.push(end);
      this.graph.add('crimp', this.#endNode(end), terminal?.node ?? 0, action.terminal, this.ordinal);
      this.#touchEnd(end, touches);
    }
    this.#take(terminal?.part ?? null);
    const first = action.ends[0];
    if (action.seal !== null && first !== undefined) {
      this.endSeal.fit(first, action.seal);
      this.#take(action.seal);
    }
    return null;
  }

  /** Whether a cavity can be got at: not locked; working in a plugged connector is against the rule. */
  #openFor(place: number, breaches: BreachReason[]): RefusalReason | null {
    const connector = this.job.places[place]?.connector ?? -1;
    if (this.lock[connector] === 'closed') return 'locked';
    if (this.plugged[connector] === true) breaches.push('worked while plugged');
    return null;
  }

  /** Why the terminal on an end cannot be put anywhere, or null. */
  #loose(end: number): RefusalReason | null {
    if (this.endThere[end] !== 1) return 'not there';
    const terminal = this.endTerminal[end] ?? -1;
    if (terminal < 0) return 'no terminal';
    if ((this.terminalPlace[terminal] ?? -1) >= 0) return 'not free';
    return this.endsOf(terminal).some((one) => this.endCover.at(one) !== null) ? 'covered' : null;
  }

  /** Puts the terminal on an end into a cavity or onto a stud. */
  #put(end: number, place: number, touches: Touch[]): void {
    const terminal = this.endTerminal[end] ?? -1;
    this.#seat(terminal, place, this.ordinal);
    for (const one of this.endsOf(terminal)) this.#touchEnd(one, touches);
    touches.push({ what: 'terminal', index: terminal }, { what: 'place', index: place });
  }

  /** Whether the terminal on an end is a ring, where its kind was said. */
  #isRing(end: number): boolean | null {
    const part = this.job.parts.get(this.job.terminals[this.endTerminal[end] ?? -1]?.part ?? '');
    return part?.is === 'terminal' ? part.ring : null;
  }

  #insert(end: number, place: number, breaches: BreachReason[], touches: Touch[]): RefusalReason | null {
    const loose = this.#loose(end);
    if (loose !== null) return loose;
    if (this.#isRing(end) === true || this.#isDevice(place)) return 'wrong terminal';
    if (this.job.places[place]?.blocked === true) return 'blocked';
    if ((this.seated[place] ?? -1) >= 0) return 'occupied';
    if (this.plug.at(place) !== null) return 'plug in cavity';
    const refused = this.#openFor(place, breaches);
    if (refused !== null) return refused;
    this.#put(end, place, touches);
    return null;
  }

  #attach(end: number, stud: number, breaches: BreachReason[], touches: Touch[]): RefusalReason | null {
    const loose = this.#loose(end);
    if (loose !== null) return loose;
    if (this.#isRing(end) === false) return 'wrong terminal';
    const holds = this.job.places[stud]?.holds ?? null;
    if (holds !== null && (this.ringsOnStud.get(stud) ?? 0) >= holds) breaches.push('too many rings');
    this.#put(end, stud, touches);
    return null;
  }

  #cover(end: number, joint: number, part: string, touches: Touch[]): RefusalReason | null {
    if (joint >= 0) {
      if (this.jointState[joint] !== 'wound') return 'nothing there';
      this.jointState[joint] = 'covered wound';
      this.jointCover.fit(joint, part);
    } else {
      if (this.endThere[end] !== 1) return 'not there';
      if (!this.isFree(end)) return 'not free';
      if (this.endCover.at(end) !== null) return 'already so';
      this.endCover.fit(end, part);
      this.#touchEnd(end, touches);
    }
    this.#take(part);
    return null;
  }

  #interpose(connector: number, near: number, far: number, touches: Touch[]): RefusalReason | null {
    const other = this.counterpart[connector] ?? -1;
    if (other < 0) return 'no counterpart';
    if (this.plugged[connector] === true) return 'still attached';
    if ((this.counterpart[near] ?? -1) >= 0 || (this.counterpart[far] ?? -1) >= 0) return 'already plugged';
    const now = this.ordinal;
    const range = this.job.connectors[connector];
    for (
      let place = range?.firstPlace ?? 0;
      place < (range?.firstPlace ?? 0) + (range?.placeCount ?? 0);
      place += 1
    ) {
      const facing = this.facing[place] ?? -1;
      if (facing < 0) continue;
      const edge = this.graph.find('mate', place, facing);
      if (edge >= 0) this.graph.end(edge, now);
      this.facing[place] = -1;
      this.facing[facing] = -1;
    }
    for (const [a, b] of [
      [connector, near],
      [far, other],
    ] as const) {
      this.counterpart[a] = b;
      this.counterpart[b] = a;
      this.plugged[a] = true;
      this.plugged[b] = true;
      this.#face(a, b, now);
    }
    touches.push({ what: 'connector', index: connector }, { what: 'connector', index: other });
    return null;
  }

  /** Lets the cavities of two halves face each other by their labels. */
  #face(a: number, b: number, step: number): void {
    for (const [place, other] of oppositeCavities(this.job, a, b)) {
      this.facing[place] = other;
      this.facing[other] = place;
      this.#mate(place, other, step);
    }
  }

  #removeOffCut(piece: number): RefusalReason | null {
    if (this.pieceThere[piece] !== 1) return 'not there';
    const ends = this.job.pieces[piece]?.ends ?? [0, 0];
    const attached = ends.some(
      (end) => !this.isFree(end) || this.endsOf(this.endTerminal[end] ?? -1).length > 1,
    );
    const tapped = this.jointsOn(piece).some(
      (joint) => this.jointState[joint] === 'crimped' || this.jointState[joint] === 'sealed',
    );
    if (attached || tapped) return 'still attached';
    for (const edge of this.#stationsOf(piece).edges) this.graph.end(edge, this.ordinal);
    for (const joint of this.jointsOn(piece)) this.jointState[joint] = 'removed';
    for (const end of ends) this.endThere[end] = 0;
    this.pieceThere[piece] = 0;
    return null;
  }
}
