import type { LossPart } from '../prove/finding.ts';

/** One circuit with what it loses on its way, out and return. */
export interface DropRow {
  /** The load. */
  readonly circuit: string;
  readonly ampere: number | null;
  /** Conductor out and return. */
  readonly lengthMm: number | null;
  /** The smallest conductor on the way, as written. */
  readonly size: string | null;
  /** Ohms of the conductors, joints and contacts on its way, out and return; a diode has none. */
  readonly ohm: number | null;
  readonly dropVolt: number | null;
  readonly limitVolt: number | null;
  readonly marginVolt: number | null;
  /** Where the limit comes from. */
  readonly source: string | null;
  /** The smallest standard size that would keep the limit if the whole way were made of it. */
  readonly smallest: string | null;
  /** Conductors, joints and elements from the supply to the load and back, with what each takes. */
  readonly parts: readonly LossPart[];
  /** How many of the parts lie ahead of the load. */
  readonly outParts: number;
  /** What is off in the state in which it loses most, as `heater relay off`; nothing where everything is on. */
  readonly state: readonly string[];
  readonly missing: readonly string[];
}

/** One conductor with the fuse ahead of it. */
export interface ProtectionRow {
  readonly conductor: string;
  readonly size: string | null;
  /** The nearest fuse towards the supply, or null. */
  readonly fuse: string | null;
  readonly ratingAmpere: number | null;
  readonly limitAmpere: number | null;
  readonly marginAmpere: number | null;
  readonly source: string | null;
  readonly missing: readonly string[];
}

/** A fuse, an output or a conductor with the current that it carries. */
export interface LoadingRow {
  readonly what: string;
  readonly is: 'fuse' | 'output' | 'conductor';
  readonly ampere: number;
  readonly leastAmpere: number | null;
  readonly mostAmpere: number | null;
  /** What is off in the state that is worst for it, as in {@link DropRow}. */
  readonly state: readonly string[];
  readonly source: string;
}

/** The whole table of limits of one variant. */
export interface LimitTable {
  readonly drops: readonly DropRow[];
  readonly protection: readonly ProtectionRow[];
  readonly loading: readonly LoadingRow[];
}
