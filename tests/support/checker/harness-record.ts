/*
 * What the checker is told of a rework: the harness with its history, as plain data. Nothing of the program is shared
 * with these files; a test writes the record and hands it over.
 */

/** Where a join comes from: as found, as the kit was made, or the number of a step as written. */
export type Made = 'stock' | 'kit' | number;

/** One copper join that ever existed, between two named points. */
export type CopperJoin = {
  readonly by: 'conductor' | 'crimp' | 'seat' | 'joint' | 'mate' | 'jumper';
  readonly from: string;
  readonly to: string;
  /** Wire or jumper name, or null. */
  readonly name: string | null;
  readonly colour: string | null;
  readonly size: string | null;
  readonly made: Made;
  /** Ordinal of the step that made it; 0 as found. */
  readonly since: number;
  /** Ordinal of the step that ended it, or null while it lasts. */
  readonly until: number | null;
  /** Millimetres of a conductor between its two points; null where that is not said. */
  readonly lengthMm: number | null;
};

/** A place with what is said of it as a source. */
export type PlaceRecord = {
  readonly address: string;
  readonly kind: 'cavity' | 'stud' | 'boundary';
  readonly connector: string | null;
  readonly source: 'always' | 'switched' | 'driven' | 'never' | 'unknown';
  /** Supplies that feed it by name. */
  readonly supplies: readonly string[];
  readonly chassis: boolean;
  /** Whether the kit brings it. */
  readonly kit: boolean;
  readonly blocked: boolean;
  readonly blanked: boolean;
};

/** A connector or device as found. */
type ConnectorRecord = {
  readonly name: string;
  readonly device: boolean;
  readonly kit: boolean;
  readonly other: string | null;
  readonly plugged: boolean;
  readonly lock: 'closed' | 'open' | 'none';
  readonly latch: 'closed' | 'open' | 'none';
  /** Whether intent leaves the pair unplugged. */
  readonly leave: boolean;
};

/** What joins two pins inside a device; a diode lets current pass from `from` to `to` only. */
export type ElementRecord = {
  readonly name: string;
  readonly kind: 'load' | 'switch' | 'diode' | 'fuse' | 'bridge' | 'coil' | 'drive';
  readonly from: string;
  readonly to: string;
  /** Whether it is in a device that the kit brings. */
  readonly kit: boolean;
  readonly fitted: boolean;
  readonly ohm: number | null;
  readonly watts: number | null;
  readonly volts: number | null;
  readonly dropVolts: number | null;
  readonly ratingAmps: number | null;
  /** Volts below which a load does nothing; 0 where nothing is said. */
  readonly unlitVolts: number;
  /** The coil that works it, or null. */
  readonly workedBy: string | null;
  readonly restClosed: boolean;
};

/** A supply with the places that it feeds. */
type FeedRecord = {
  readonly name: string;
  readonly volts: number | null;
  readonly places: readonly string[];
};

/** A conductor as the kit file describes it, for its resistance. */
type WireRecord = {
  readonly mm2: number | null;
  readonly material: string | null;
  readonly strands: string | null;
  readonly temperatureC: number | null;
};

/** A wire end with the state in which it is found or comes out of the bag. */
type EndRecord = {
  readonly name: string;
  readonly wire: string;
  readonly kitWire: boolean;
  readonly stripped: boolean;
  readonly sealed: boolean;
  /** The part that covers it, or null. */
  readonly cover: string | null;
};

/** A terminal, by the name of its point. */
type TerminalRecord = { readonly point: string; readonly ring: boolean | null };

/** One step as written, with the names it is about. */
export type StepRecord = {
  readonly number: number;
  readonly does: string;
  readonly connectors: readonly string[];
  readonly places: readonly string[];
  readonly ends: readonly string[];
  readonly joint: string | null;
  readonly supply: string | null;
  readonly fuse: string | null;
  readonly piece: string | null;
  /** The two ends of that piece. */
  readonly pieceEnds: readonly string[];
  /** The pieces and the new ends that a cut makes. */
  readonly leaves: readonly string[];
  readonly newEnds: readonly string[];
  /** Parts that it takes from the bag. */
  readonly takes: readonly string[];
};

/** The rework of one variant. */
export type HarnessRecord = {
  readonly joins: readonly CopperJoin[];
  readonly places: readonly PlaceRecord[];
  readonly connectors: readonly ConnectorRecord[];
  readonly elements: readonly ElementRecord[];
  readonly ends: readonly EndRecord[];
  readonly terminals: readonly TerminalRecord[];
  readonly supplies: readonly string[];
  readonly feeds: readonly FeedRecord[];
  readonly wires: ReadonlyMap<string, WireRecord>;
  /** Ohms that a joint of each kind adds. */
  readonly jointOhm: ReadonlyMap<string, number>;
  /** Amperes of each kind of fuse in the bag. */
  readonly fuseRatings: ReadonlyMap<string, number>;
  /** By load: the ways in which it is meant to be powered; what is not in it does as before. */
  readonly powered: ReadonlyMap<
    string,
    readonly { readonly on: readonly string[]; readonly off: readonly string[] }[]
  >;
  /** Where the current of the supplies goes back: their negative poles, or chassis metal where no pole is said. */
  readonly returns: readonly string[];
  readonly steps: readonly StepRecord[];
  /** Part name: how many are in the bag. */
  readonly bag: ReadonlyMap<string, number>;
};
