import type { StepAction } from '@loomproof/netlist';

/** What must be looked at before a step, or null when the step is no hold point of its own. */
export function holdBefore(action: StepAction): string | null {
  switch (action.kind) {
    case 'cut':
      return 'Before the cut: is it the right wire? Let a second person look, or measure a second time.';
    case 'tap':
      return 'Before the tap: is it the right wire? Let a second person look, or measure a second time.';
    case 'close lock':
      return 'Before the lock is closed: every terminal seated, each pulled lightly, none stands out.';
    case 'seal':
      return 'Before sealing: both wires show in the crimp, and a firm pull does not move them.';
    case 'reconnect':
      return 'Before power: all readings taken, jumpers counted out, no tool left behind.';
    default:
      return null;
  }
}
