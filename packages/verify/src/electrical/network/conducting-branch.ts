import type { NetworkElement } from './network.ts';

/** A branch with resistance, as current = siemens * (volts from - volts to + volt). */
export interface ConductingBranch {
  readonly siemens: number;
  /** Volts that the branch adds in the direction from `from` to `to`. */
  readonly volt: number;
}

/**
 * Reads an element as a branch with resistance; a diode is read as conducting.
 *
 * @param element - any element.
 * @returns the branch, or null for an element without resistance and for a current source.
 */
export function conductingBranch(element: NetworkElement): ConductingBranch | null {
  switch (element.kind) {
    case 'resistor':
      return { siemens: 1 / element.ohm, volt: 0 };
    case 'voltage-source':
      return element.ohm > 0 ? { siemens: 1 / element.ohm, volt: element.volt } : null;
    case 'diode':
      return { siemens: 1 / element.onOhm, volt: -element.forwardVolt };
    case 'joint':
    case 'current-source':
      return null;
  }
}
