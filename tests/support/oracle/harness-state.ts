import type { HarnessFacts, Zone } from './harness-facts.ts';

/** One end of a conductor piece: crimped in a terminal, joined, or free and then cut or stripped. */
export type WireEnd = {
  readonly name: string;
  /** The name after the `@` as it was first written. */
  readonly label: string;
  readonly wire: string;
  readonly zone: Zone;
  held: Terminal | Joint | null;
  ready: 'cut' | 'stripped';
  cover: string | null;
  seal: string | null;
  readonly tubes: string[];
};

/** A contact with the wires crimped in it; several at one cavity are a double crimp. */
export type Terminal = {
  readonly name: string;
  part: string | null;
  readonly ends: WireEnd[];
  at: string | null;
  /** Whether a step crimped it, and whether a step seated it. */
  readonly madeByStep: boolean;
  seatedByStep: boolean;
  /** Where it sat before the work. */
  readonly home: string | null;
  readonly isTerminal: true;
};

/** A splice, a tap or a test jumper. */
export type Joint = {
  readonly name: string;
  readonly is: 'splice' | 'tap' | 'jumper';
  readonly part: string | null;
  readonly zone: Zone;
  readonly fromKit: boolean;
  readonly ends: WireEnd[];
  readonly between: readonly string[];
  cover: string | null;
  state: 'crimped' | 'sealed' | 'wound' | 'covered wound' | 'removed';
  readonly isTerminal: false;
};

/** A point along a conductor, in millimetres from its first original end: one of the ends, or a tap. */
export type Station = {
  readonly at: number;
  readonly labels: readonly string[];
  readonly is: WireEnd | Joint;
};

/** A conductor, or what a cut left of one. */
export type Piece = { readonly name: string; readonly wire: string; stations: Station[] };

/** The harness at one moment of the work. */
export type HarnessState = {
  readonly facts: HarnessFacts;
  readonly pieces: Map<string, Piece>;
  readonly offCuts: Piece[];
  readonly terminals: Terminal[];
  readonly joints: Map<string, Joint>;
  /** Cavities that hold a plug, with the part name, or an empty text for one as found. */
  readonly plugs: Map<string, string>;
  readonly plugged: Set<string>;
  readonly locks: Map<string, 'open' | 'closed'>;
  readonly latches: Map<string, 'open' | 'closed'>;
  readonly placed: Set<string>;
  readonly on: Set<string>;
  readonly fuses: Map<string, boolean>;
  readonly interposed: { at: string; near: string; far: string }[];
  /** Parts taken for the work and parts that came out of the harness, in that order; as found, a plug has no name. */
  readonly partsLog: { readonly part: string; readonly is: 'taken' | 'came out' }[];
};

/** The zone of an end that hangs where its wire comes to a place: wet when either is, else what one of them says. */
function worstZone(wire: Zone, place: Zone): Zone {
  return wire === 'wet' || place === 'wet' ? 'wet' : (wire ?? place);
}

/** How long a wire is taken to be where nothing was said; longer than any mark. */
const unknownLength = 1_000_000;

/** The harness and the bag before the first step. */
export function stateBefore(facts: HarnessFacts): HarnessState {
  const joints = new Map<string, Joint>();
  for (const [name, splice] of facts.splices) {
    joints.set(name, {
      name,
      is: 'splice',
      part: splice.with,
      zone: splice.zone,
      cover: null,
      fromKit: splice.fromKit,
      ends: [],
      between: [],
      state: splice.sealed ? 'sealed' : 'crimped',
      isTerminal: false,
    });
  }
  const terminals: Terminal[] = [];
  const pieces = new Map<string, Piece>();
  for (const [name, wire] of facts.wires) {
    const ends = (['from', 'to'] as const).map((side): WireEnd => {
      const label = wire.row[side];
      const place = facts.places.get(label);
      const end: WireEnd = {
        name: `${name}@${label}`,
        label,
        wire: name,
        zone: worstZone(wire.zone, place?.zone ?? null),
        held: null,
        ready: 'cut',
        cover: null,
        seal: wire.row[`${side} seal`] ?? null,
        tubes: [],
      };
      const part = wire.row[`${side} terminal`] ?? null;
      const joint = joints.get(label);
      if (place !== undefined && (!wire.fromKit || place.fromKit)) {
        const there = place.is === 'cavity' ? terminals.find((one) => one.at === label) : undefined;
        crimp(terminals, end, part, label, there);
      } else if (joint !== undefined && (!wire.fromKit || joint.fromKit)) {
        end.held = joint;
        joint.ends.push(end);
      } else if (part !== null) crimp(terminals, end, part, null, undefined);
      return end;
    });
    const length = wire.row.length === undefined ? unknownLength : Number.parseFloat(wire.row.length);
    const [first, last] = ends as [WireEnd, WireEnd];
    pieces.set(name, {
      name,
      wire: name,
      stations: [
        { at: 0, labels: [first.label], is: first },
        { at: length, labels: [last.label], is: last },
      ],
    });
  }
  const connectors = [...facts.connectors.values()];
  const blanked = connectors.flatMap((one) => (one.row.blanked ?? []).map((label) => `${one.name}:${label}`));
  return {
    facts,
    pieces,
    offCuts: [],
    terminals,
    joints,
    plugs: new Map(blanked.map((address) => [address, ''])),
    plugged: new Set(connectors.filter((one) => one.pluggedAtFirst).map((one) => one.name)),
    locks: new Map(
      connectors.flatMap((one) => (one.row.lock === undefined ? [] : [[one.name, one.row.lock]])),
    ),
    latches: new Map(
      connectors.flatMap((one) => (one.row.latch === undefined ? [] : [[one.name, one.row.latch]])),
    ),
    placed: new Set(),
    on: new Set(facts.supplies.keys()),
    fuses: new Map(
      facts.elements.flatMap((one) => (one.row.is === 'fuse' ? [[one.name, one.row.fitted !== 'no']] : [])),
    ),
    interposed: [],
    partsLog: [],
  };
}

/** Crimps an end into a new terminal, or into the one that is there already. */
function crimp(
  terminals: Terminal[],
  end: WireEnd,
  part: string | null,
  at: string | null,
  there: Terminal | undefined,
): Terminal {
  if (there !== undefined) {
    there.part ??= part;
    there.ends.push(end);
    end.held = there;
    return there;
  }
  const made: Terminal = {
    name: `terminal of ${end.name}`,
    part,
    ends: [end],
    at,
    madeByStep: false,
    seatedByStep: false,
    home: at,
    isTerminal: true,
  };
  end.held = made;
  terminals.push(made);
  return made;
}

/** The terminal seated in a cavity, if any. */
export function terminalIn(state: HarnessState, cavity: string): Terminal | undefined {
  return state.terminals.find((one) => one.at === cavity);
}

/** The two ends of a piece, the one nearer to the wire's first end first. */
export function endsOf(piece: Piece): readonly WireEnd[] {
  const { stations } = piece;
  return [stations[0], stations[stations.length - 1]].flatMap((one) =>
    one !== undefined && 'label' in one.is ? [one.is] : [],
  );
}

/** The end written `PIECE@LABEL`. */
export function findEnd(state: HarnessState, text: string): WireEnd | undefined {
  const split = text.lastIndexOf('@');
  const piece = state.pieces.get(text.slice(0, split));
  const label = text.slice(split + 1);
  const last = (piece?.stations.length ?? 0) - 1;
  const found = piece?.stations.find(
    (one, index) => (index === 0 || index === last) && one.labels.includes(label),
  );
  return found !== undefined && 'label' in found.is ? found.is : undefined;
}

/** Whether a kit wire is still in one piece with neither end put anywhere, so that it might as well be in the bag. */
export function isUnused(state: HarnessState, wire: string): boolean {
  const piece = state.pieces.get(wire);
  if (state.facts.wires.get(wire)?.fromKit !== true || piece === undefined || piece.stations.length > 2)
    return false;
  return endsOf(piece).every(
    (end) => end.held === null || (end.held.isTerminal && end.held.at === null && end.held.ends.length === 1),
  );
}
