/*
 * The kit file as plain data, in the written form. User text is a key of Maps only. These types are the oracle's own
 * reading of the file form: nothing here is shared with the program.
 */

/** Dry, or wet where water or road dirt reaches. */
export type ZoneText = 'dry' | 'wet';

/** What a place says of itself as a source. */
export type SourceText = 'always' | 'switched' | 'driven' | 'never';

/** One row of the catalogue of part kinds. */
export type PartRow = {
  is: 'terminal' | 'seal' | 'plug' | 'splice' | 'tap' | 'cover' | 'tube' | 'fuse' | 'jumper' | 'tie' | 'tape';
  size?: string;
  wires?: string;
  ring?: 'yes';
  insulation?: string;
  ends?: string;
  tube?: 'built in' | 'separate' | 'none';
  zone?: ZoneText;
  run?: string;
  branch?: string;
};

/** What joins two pins inside a device. */
export type ElementRow = {
  is: 'load' | 'switch' | 'diode' | 'fuse' | 'bridge';
  from: string;
  to: string;
  name?: string;
  fitted?: 'no';
};

/** A connector or device. */
export type ConnectorRow = {
  cavities: string[];
  device?: 'yes';
  into?: string;
  pairing?: Map<string, string>;
  plugged?: 'no';
  accepts?: string[];
  sealed?: 'yes';
  blanked?: string[];
  blocked?: string[];
  lock?: 'closed' | 'open';
  latch?: 'closed' | 'open';
  zone?: ZoneText;
  source?: Map<string, SourceText>;
  elements?: ElementRow[];
};

/** A conductor. */
export type WireRow = {
  from: string;
  to: string;
  size?: string;
  insulation?: string;
  colour?: string;
  length?: string;
  'from terminal'?: string;
  'to terminal'?: string;
  'from seal'?: string;
  'to seal'?: string;
  zone?: ZoneText;
  flex?: 'yes';
};

/** A stud. */
export type StudRow = { chassis?: 'yes'; holds?: string; source?: SourceText; zone?: ZoneText };

/** A splice that is there as found or comes made in the bag. */
export type SpliceRow = { with?: string; sealed?: 'no'; zone?: ZoneText };

/** The rows that the stock harness and the bag have in common. */
export type HarnessRows = {
  connectors?: Map<string, ConnectorRow>;
  studs?: Map<string, StudRow>;
  splices?: Map<string, SpliceRow>;
  wires?: Map<string, WireRow>;
  zone?: ZoneText;
};

/** The harness as found. */
export type StockRows = HarnessRows & {
  supplies?: Map<string, { at: string[] }>;
  boundaries?: Map<string, { source?: SourceText; distinct?: 'yes' }>;
};

/** What the kit brings. */
export type BagRows = HarnessRows & { parts?: Map<string, string> };

/** One rework step. */
export type StepRow =
  | { do: 'disconnect' | 'reconnect'; supply: string }
  | { do: 'prove dead'; at: string }
  | {
      do: 'unplug' | 'plug' | 'open lock' | 'close lock' | 'open latch' | 'close latch';
      connector: string;
    }
  | { do: 'cut'; wire: string; at: string; leaves: [string, string]; zone?: ZoneText }
  | { do: 'strip' | 'remove seal' | 'detach'; end: string }
  | { do: 'slide tube' | 'fit seal' | 'cover'; end: string; with: string }
  | { do: 'join'; ends: string[]; with: string; as: string; zone?: ZoneText }
  | { do: 'seal'; joint: string }
  | { do: 'tap'; run: string; at: string; branch: string; with: string; as: string; zone?: ZoneText }
  | { do: 'remove tap'; tap: string }
  | { do: 'fit terminal'; ends: string[]; with: string; seal?: string }
  | { do: 'withdraw' | 'remove plug'; cavity: string }
  | { do: 'insert'; end: string; cavity: string }
  | { do: 'attach'; end: string; stud: string }
  | { do: 'tie back'; end: string; with?: string }
  | { do: 'fasten'; wire: string; with?: string }
  | { do: 'fit plug'; cavity: string; with: string }
  | { do: 'fit fuse'; fuse: string; with: string }
  | { do: 'remove fuse'; fuse: string }
  | { do: 'place'; device: string }
  | { do: 'interpose'; at: string; near: string; far: string }
  | { do: 'fit jumper'; between: [string, string]; as: string; serves: string; with?: string }
  | { do: 'remove jumper'; jumper: string }
  | { do: 'remove off-cut'; wire: string };

/** What the designer wants. */
export type WantedRows = {
  circuits?: Map<string, string[]>;
  additions?: Map<string, { to: string; add?: string[]; take?: string[] }>;
  moves?: { from: string; to: string }[];
  retired?: ({ wire: string } | { cavity: string })[];
  stubs?: { of: string; at: string; is: 'live' | 'dead'; why?: string }[];
  apart?: string[][];
  'left unplugged'?: string[];
  interposed?: { at: string; near: string; far: string }[];
  deviations?: { allows: string; at?: string; by: string; why: string }[];
};

/** A kit of one variant. */
export type KitDocument = {
  kit: string;
  revision: string;
  rules?: string[];
  parts?: Map<string, PartRow>;
  stock: StockRows;
  bag?: BagRows;
  work: StepRow[];
  wanted: WantedRows;
};
