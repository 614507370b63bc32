import type { Face } from '../face/index.ts';
import type { Span } from '../text/index.ts';
import type { Colour, Size } from '../value/index.ts';
import type { WireMaterial, WireStrands } from './wire-data.ts';

export type { WireMaterial, WireStrands };

/** Where a thing comes from: the machine as found, or the kit's bag. */
export type Origin = 'stock' | 'kit';

/** Whether current can come out of a place; `unknown` where nothing was said, and unknown counts as live. */
export type SourceClass = 'always' | 'switched' | 'driven' | 'never' | 'unknown';

/** Dry, wet, or not said. */
export type Zone = 'dry' | 'wet' | 'unknown';

/** A lock that is not there is `none`. */
export type LockState = 'closed' | 'open' | 'none';

/** An inclusive range of numbers: square millimetres for sizes, millimetres for insulation. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** What a part is and what it fits; null where the catalogue does not say. Strip lengths are those of the part's maker. */
export type Part =
  | {
      readonly is: 'terminal';
      readonly name: string;
      readonly size: Range | null;
      readonly wires: number;
      readonly ring: boolean;
      readonly stripMm: number | null;
    }
  | { readonly is: 'seal'; readonly name: string; readonly insulation: Range | null }
  | { readonly is: 'plug' | 'jumper' | 'tie' | 'tape'; readonly name: string }
  | { readonly is: 'fuse'; readonly name: string; readonly ratingAmps: number | null }
  | {
      readonly is: 'splice';
      readonly name: string;
      readonly size: Range | null;
      readonly ends: number;
      readonly tube: 'built in' | 'separate' | 'none';
      readonly zone: Zone;
      readonly stripMm: number | null;
    }
  | {
      readonly is: 'tap';
      readonly name: string;
      readonly run: Range | null;
      readonly branch: Range | null;
      readonly zone: Zone;
    }
  | {
      readonly is: 'cover' | 'tube';
      readonly name: string;
      readonly size: Range | null;
      readonly zone: Zone;
    };

/**
 * A place: a cavity position, a stud or a boundary. Its index in {@link Job.places} is also its node in the graph.
 */
export interface Place {
  readonly address: string;
  readonly kind: 'cavity' | 'stud' | 'boundary';
  /** Index of the connector, or -1. */
  readonly connector: number;
  readonly label: string;
  readonly origin: Origin;
  readonly source: SourceClass;
  readonly chassis: boolean;
  /** Studs: the most rings it may carry, or null when not said. */
  readonly holds: number | null;
  readonly zone: Zone;
  readonly blocked: boolean;
  readonly blanked: boolean;
  /** Boundaries: declared to join no other boundary beyond the model. */
  readonly distinct: boolean;
}

/** A connector or device with its cavities, which are consecutive places. */
export interface Connector {
  readonly name: string;
  readonly origin: Origin;
  readonly device: boolean;
  readonly firstPlace: number;
  readonly placeCount: number;
  /** The other half, or -1. */
  readonly counterpart: number;
  /** Whether the pair is plugged before the first step. */
  readonly plugged: boolean;
  readonly accepts: ReadonlySet<string> | null;
  readonly sealed: boolean;
  readonly lock: LockState;
  readonly latch: LockState;
  readonly zone: Zone;
  /** Where its cavities are, or null when the kit file does not say. */
  readonly face: Face | null;
  readonly span: Span | null;
}

/** A conductor as found or as it comes out of the bag. Its index is also the index of its first piece. */
export interface Wire {
  readonly name: string;
  readonly origin: Origin;
  readonly size: Size | null;
  readonly insulationMm: number | null;
  readonly colour: Colour | null;
  readonly lengthMm: number | null;
  readonly material: WireMaterial | null;
  readonly strands: WireStrands | null;
  /** Of the conductor at work, and that its insulation bears, in degrees Celsius. */
  readonly temperatureC: number | null;
  readonly insulationC: number | null;
  /** Amperes that its own data sheet allows. */
  readonly capacityAmps: number | null;
  readonly zone: Zone;
  readonly flex: boolean;
  /** Insulation to take off at the two ends, where the row itself says it; else the terminal or splice does. */
  readonly stripMm: readonly [number | null, number | null];
  /** Its two ends in {@link Job.ends}, `from` first. */
  readonly ends: readonly [number, number];
  readonly span: Span | null;
}

/** A wire, or what a cut leaves of one. */
export interface Piece {
  readonly name: string;
  readonly wire: number;
  readonly ends: readonly [number, number];
}

/** One end of a piece; an original end keeps its home name for ever. */
export interface WireEnd {
  /** As a person writes it: `ajar@K10:9`, or `stub@cut`. */
  readonly name: string;
  readonly node: number;
  readonly wire: number;
  /** Where it sits before the first step. */
  readonly home:
    | { readonly kind: 'place'; readonly place: number; readonly terminal: number }
    | { readonly kind: 'joint'; readonly joint: number }
    | {
        readonly kind: 'free';
        readonly stripped: boolean;
        readonly terminal: number;
        /** What covers it, or null. */
        readonly cover: string | null;
      }
    | { readonly kind: 'cut' };
  /** The seal on the wire at this end before the first step. */
  readonly seal: string | null;
}

/** A terminal: one contact that may hold several wires. Occupancy counts terminals. */
export interface Terminal {
  readonly node: number;
  /** Part name, or null for a stock terminal whose kind was not said. */
  readonly part: string | null;
  /** Ends crimped in it before the first step (none for one that a step fits). */
  readonly ends: readonly number[];
  readonly place: number;
}

/** A splice or a tap. */
export interface Joint {
  readonly name: string;
  readonly node: number;
  readonly kind: 'splice' | 'tap' | 'jumper';
  readonly part: string | null;
  readonly origin: Origin;
  readonly zone: Zone;
  /** Whether it exists before the first step, and if so sealed or not; of a tap that was taken off, its wound. */
  readonly before: 'absent' | 'crimped' | 'sealed' | 'wound' | 'covered wound';
  /** What covers the wound of a tap before the first step, or null. */
  readonly cover: string | null;
}

/** What joins two pins inside a device. It never makes a net; it carries current, and so can make a stub live. */
export interface DeviceElement {
  readonly kind: 'load' | 'switch' | 'diode' | 'fuse' | 'bridge' | 'coil' | 'drive';
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly connector: number;
  readonly fitted: boolean;
  /** Ohms at work and, for a filament, cold; null when not said. */
  readonly ohm: number | null;
  readonly coldOhm: number | null;
  /** Watts of a load, and the volts at which they are meant. */
  readonly watts: number | null;
  readonly volts: number | null;
  /** Forward drop of a diode in volts. */
  readonly dropVolts: number | null;
  /** Rating of a fuse in amperes. */
  readonly ratingAmps: number | null;
  /** Amperes between which the load of a drive must lie. */
  readonly leastAmps: number | null;
  readonly mostAmps: number | null;
  readonly critical: boolean;
  /** Volts below which a load does nothing; null when neither it nor the kit says. */
  readonly unlitVolts: number | null;
  /** The coil that works a switch, or -1. */
  readonly workedBy: number;
  /** Whether a worked switch is closed while its coil is off. */
  readonly restClosed: boolean;
}

/** A source with the places it feeds. Sources are a set, each on or off. */
export interface Supply {
  readonly name: string;
  readonly places: readonly number[];
  /** The place of its negative pole, or -1 when not said. */
  readonly returnPlace: number;
  readonly volts: number | null;
  /** Ohms inside it. */
  readonly ohm: number | null;
}

/** Kinds of joint with an allowance of their own. */
export type JointKind = 'crimp' | 'contact' | 'splice' | 'stud';

/** A loss that may be allowed: a part of the supply voltage or volts. */
export type DropAllowance =
  | { readonly unit: 'percent'; readonly value: number }
  | { readonly unit: 'volt'; readonly value: number };

/** Electrical data that hold for the whole kit; null where nothing is said, and nothing is assumed then. */
export interface ElectricalData {
  readonly limits: 'small-craft' | 'aircraft' | 'own' | null;
  readonly own: {
    readonly source: string;
    readonly drop: DropAllowance | null;
    readonly criticalDrop: DropAllowance | null;
    /** Percent of its rating that a fuse may carry for long. */
    readonly fuseLoadPercent: number | null;
    readonly leadMm: number | null;
  } | null;
  /** Ohms that one joint of each kind adds. */
  readonly jointOhm: ReadonlyMap<JointKind, number>;
  /** Whether the kit file gives any electrical datum, so that obligations 9 and 10 are claimed. */
  readonly claimed: boolean;
}

/** What a special circuit is, since each kind of it is dangerous or easily disturbed in its own way. */
export type SpecialKind = 'restraint system' | 'safety loop' | 'bus pair' | 'sensor' | 'high voltage';

/** A circuit that nobody touches or probes without a release. */
export interface SpecialCircuit {
  readonly name: string;
  readonly is: SpecialKind;
  readonly wires: readonly number[];
  readonly released: { readonly by: string; readonly document: string } | null;
  readonly stubLimitMm: number | null;
  readonly lengthLimitMm: number | null;
  /** Elements at its two ends. */
  readonly terminators: readonly number[];
}

/** One way in which a load is meant to be powered: all these switches and drives on, and all those off. */
export interface PoweredWhen {
  readonly on: readonly string[];
  readonly off: readonly string[];
}

/** A position along a wire, in millimetres from one original end of it. */
export interface Position {
  readonly fromEnd: 0 | 1;
  readonly mm: number;
}

/** What each rework step does, with every name already resolved. */
export type StepAction =
  | { readonly kind: 'disconnect' | 'reconnect'; readonly supply: number }
  | { readonly kind: 'prove dead'; readonly place: number }
  | {
      readonly kind: 'unplug' | 'plug' | 'open lock' | 'close lock' | 'open latch' | 'close latch';
      readonly connector: number;
    }
  | {
      readonly kind: 'cut';
      readonly piece: number;
      /** Index in the piece's stations after which the cut falls. */
      readonly after: number;
      readonly leaves: readonly [number, number];
      readonly newEnds: readonly [number, number];
      readonly zone: Zone;
    }
  | { readonly kind: 'strip'; readonly end: number }
  | { readonly kind: 'slide tube'; readonly end: number; readonly part: string }
  | { readonly kind: 'join'; readonly ends: readonly number[]; readonly joint: number }
  | { readonly kind: 'seal'; readonly joint: number }
  | {
      readonly kind: 'tap';
      readonly piece: number;
      readonly after: number;
      readonly branch: number;
      readonly joint: number;
    }
  | { readonly kind: 'remove tap'; readonly joint: number }
  | {
      readonly kind: 'fit terminal';
      readonly ends: readonly number[];
      readonly terminal: number;
      readonly seal: string | null;
    }
  | { readonly kind: 'withdraw' | 'remove plug'; readonly place: number }
  | { readonly kind: 'insert'; readonly end: number; readonly place: number }
  | { readonly kind: 'attach'; readonly end: number; readonly place: number }
  | { readonly kind: 'detach' | 'remove seal'; readonly end: number }
  | { readonly kind: 'cover'; readonly end: number; readonly joint: number; readonly part: string }
  | { readonly kind: 'tie back'; readonly end: number; readonly part: string | null }
  | { readonly kind: 'fasten'; readonly piece: number; readonly part: string | null }
  | { readonly kind: 'fit plug'; readonly place: number; readonly part: string }
  | { readonly kind: 'fit seal'; readonly end: number; readonly part: string }
  | { readonly kind: 'fit fuse'; readonly element: number; readonly part: string }
  | { readonly kind: 'remove fuse'; readonly element: number }
  | { readonly kind: 'place'; readonly connector: number }
  | { readonly kind: 'interpose'; readonly connector: number; readonly near: number; readonly far: number }
  | {
      readonly kind: 'fit jumper';
      readonly joint: number;
      readonly places: readonly [number, number];
      readonly part: string | null;
    }
  | { readonly kind: 'remove jumper'; readonly joint: number }
  | { readonly kind: 'remove off-cut'; readonly piece: number };

/** The kinds of rework step that a kit file may hold. */
export type StepKind = StepAction['kind'];

/** A rework step with its number in the written list; numbers do not shift between variants. */
export interface Step {
  readonly number: number;
  readonly action: StepAction;
  readonly note: string | null;
  readonly caution: string | null;
  readonly hold: string | null;
  readonly span: Span | null;
}

/** A net that the designer states: a circuit, or an addition to a net that was there. */
export interface StatedCircuit {
  readonly name: string;
  readonly places: readonly number[];
  readonly span: Span | null;
}

/** An addition to the net that a place had before, or places taken away from it. */
export interface StatedAddition {
  readonly name: string;
  readonly to: number;
  readonly add: readonly number[];
  readonly take: readonly number[];
  readonly span: Span | null;
}

/** An end that is meant to stay, attached to a place, live or dead. */
export interface StatedStub {
  readonly wire: number;
  readonly place: number;
  readonly live: boolean;
  readonly span: Span | null;
}

/** A rule knowingly not kept, with who allowed it and why. */
export interface Deviation {
  readonly allows: string;
  readonly at: string | null;
  readonly by: string;
  readonly why: string;
  readonly span: Span | null;
}

/** A declared pairing of two variants along one axis. */
export interface Agreement {
  readonly axis: string;
  readonly between: readonly [string, string];
  readonly pairs: ReadonlyMap<string, string>;
  readonly differ: readonly string[];
  readonly span: Span | null;
}

/** One row of the pin table as drawn after the work. */
export interface DrawnRow {
  readonly wire: string;
  readonly from: number;
  readonly to: number;
  readonly size: Size | null;
  readonly colour: Colour | null;
  readonly span: Span | null;
}

/** Everything that the designer states. Places are indices into {@link Job.places}. */
export interface Wanted {
  readonly circuits: readonly StatedCircuit[];
  readonly additions: readonly StatedAddition[];
  readonly moves: readonly { readonly from: number; readonly to: number; readonly span: Span | null }[];
  readonly retiredWires: ReadonlySet<number>;
  readonly retiredPlaces: ReadonlySet<number>;
  readonly stubs: readonly StatedStub[];
  /** By load: the ways in which it is meant to be powered; none is never. What is not in it is as it was before. */
  readonly powered: ReadonlyMap<number, readonly PoweredWhen[]>;
  /** Names of supplies and drives that may be joined. */
  readonly mayTie: readonly ReadonlySet<string>[];
  readonly apart: readonly { readonly places: readonly number[]; readonly span: Span | null }[];
  readonly leftUnplugged: ReadonlySet<number>;
  readonly interposed: readonly { readonly connector: number; readonly near: number; readonly far: number }[];
  readonly deviations: readonly Deviation[];
  /** What may change though no net of it is named: wires, places and elements. */
  readonly changed: {
    readonly wires: ReadonlySet<number>;
    readonly places: ReadonlySet<number>;
    readonly elements: ReadonlySet<number>;
  };
  readonly agree: Agreement | null;
  /** Joints that the drawn table names, and its rows; null when no table was given. */
  readonly drawn: readonly DrawnRow[] | null;
}

/**
 * One variant of a kit with every name resolved: the harness before, the steps and what is wanted. Nodes of the graph
 * are numbered once: places first, then the rest, including ends, terminals and joints that later steps bring.
 */
export interface Job {
  readonly kit: string;
  readonly revision: string;
  readonly variant: string;
  readonly places: readonly Place[];
  readonly connectors: readonly Connector[];
  readonly wires: readonly Wire[];
  readonly pieces: readonly Piece[];
  readonly ends: readonly WireEnd[];
  readonly terminals: readonly Terminal[];
  readonly joints: readonly Joint[];
  readonly elements: readonly DeviceElement[];
  readonly supplies: readonly Supply[];
  readonly electrical: ElectricalData;
  readonly special: readonly SpecialCircuit[];
  /** Where on its wire each cut end and each tap lies, by node. */
  readonly positions: ReadonlyMap<number, Position>;
  /** By wire: the taps that are on it before the first step, in order from its first end. */
  readonly tapsAsFound: ReadonlyMap<number, readonly number[]>;
  readonly nodeCount: number;
  /** Other half of a cavity by the declared pairing, or -1; one entry a place. */
  readonly facing: Int32Array;
  readonly parts: ReadonlyMap<string, Part>;
  readonly bag: ReadonlyMap<string, number>;
  readonly oneSplicePerSegment: boolean;
  readonly steps: readonly Step[];
  readonly wanted: Wanted;
}
