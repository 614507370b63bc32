/** What differs between two kits of {@link tapKit}. */
export interface TapKit {
  /** A second wire of the machine, as a row of the kit file. */
  readonly second?: string;
  /** The cavity that the new wire goes to. */
  readonly into?: string;
}

/**
 * A wire from X:1 to Y:1 that the work taps by a wire of the bag, which goes to X:4. Beside it one from X:2 to the chassis;
 * X:3 and Y:2 are empty. No connector has a face.
 */
export function tapKit({ second, into = 'X:4' }: TapKit = {}): string {
  return `kit: tap
revision: A
stock:
  studs: { G: { chassis: yes, source: never } }
  connectors:
    X: { cavities: 1..4 }
    Y: { cavities: 1..2 }
  wires:
    run: { from: X:1, to: Y:1, size: 1 mm2 }
    ${second ?? 'beside: { from: X:2, to: G, size: 1 mm2 }'}
bag:
  wires:
    w: { from: A, to: B, from terminal: pin, size: 1 mm2 }
parts:
  pin: { is: terminal }
  clip: { is: tap }
work:
  - { do: strip, end: w@B }
  - { do: tap, run: run, at: 50 mm from X:1, branch: w@B, with: clip, as: T }
  - { do: insert, end: w@A, cavity: ${into} }
wanted:
  circuits: { c: [X:1, Y:1, ${into}] }
`;
}
