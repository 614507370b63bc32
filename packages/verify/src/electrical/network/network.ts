/** An ordinary resistance: a conductor, a contact, a filament. `ohm` is greater than zero. */
export interface Resistor {
  readonly kind: 'resistor';
  readonly from: number;
  readonly to: number;
  readonly ohm: number;
}

/** Two nodes that are one piece of metal: a closed switch, a splice without stated resistance. */
export interface Joint {
  readonly kind: 'joint';
  readonly from: number;
  readonly to: number;
}

/** A battery or supply: `from` is its negative pole, `to` its positive; `ohm` in series may be zero. */
export interface VoltageSource {
  readonly kind: 'voltage-source';
  readonly from: number;
  readonly to: number;
  readonly volt: number;
  readonly ohm: number;
}

/** Drives `ampere` through itself out of `from` into `to`; a constant load has `from` at its supply side. */
export interface CurrentSource {
  readonly kind: 'current-source';
  readonly from: number;
  readonly to: number;
  readonly ampere: number;
}

/**
 * A diode in two straight pieces: anode `from`, cathode `to`. It blocks while the voltage from anode to cathode
 * is below `forwardVolt` (zero or more), and above it is `forwardVolt` with `onOhm` (greater than zero) in series.
 */
export interface Diode {
  readonly kind: 'diode';
  readonly from: number;
  readonly to: number;
  readonly forwardVolt: number;
  readonly onOhm: number;
}

/** One branch of a network. A positive current flows through it out of `from` and into `to`. */
export type NetworkElement = Resistor | Joint | VoltageSource | CurrentSource | Diode;

/** A direct-current network. Nodes are the integers from 0 up to `nodeCount`; voltages count against `reference`. */
export interface Network {
  readonly nodeCount: number;
  readonly reference: number;
  readonly elements: readonly NetworkElement[];
}
