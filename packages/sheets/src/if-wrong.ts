import type { StepAction } from '@loomproof/netlist';

/** What to look at and to leave alone when a step went wrong, sentence by sentence; the repairs come after it. */
export function ifWrong(action: StepAction): readonly string[] {
  switch (action.kind) {
    case 'cut':
      return [
        'Leave power off, and let the ends touch nothing, until it is joined again.',
        'A miss by less than the length of a splice leaves no room for one: stop and have the new steps proved.',
      ];
    case 'tap':
      return [
        'A tap that comes off leaves a wound in the insulation. Never set the new one into the same spot: go 30 mm further on.',
      ];
    case 'insert':
      return [
        'Take a terminal out only with the right tool and with the secondary lock open. Look at its spring before it goes in again; a bent one is replaced.',
        'Never let the lock hold a terminal that does not stay by itself. A seal that was cut or rolled is replaced.',
      ];
    case 'withdraw':
      return [
        'It does not come: the secondary lock is not open, or the tool is the wrong one. Do not pull harder.',
      ];
    case 'close lock':
      return [
        'The lock will not close: a terminal stands out. Do not force it. Find the proud one, push it home to its click, try again.',
        'It still will not: open it, take out the terminal put in last, look for a bent spring or one turned round.',
      ];
    case 'join':
      return [
        'A wire slides in the crimp: stop. A splice that is cut out makes the wires shorter. Where they no longer reach, or no steps for it are given here, stop and have the new steps proved before power.',
      ];
    case 'fit terminal':
      return [
        'A strand stands out or the crimp is loose: cut the terminal off, strip afresh and use a new one.',
      ];
    default:
      return [];
  }
}
