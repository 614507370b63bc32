import type { StepAction } from '@loomproof/netlist';

const proveAgain =
  'Add these steps to the kit file and have it proved again before power: a repair is work like any other.';

/** What to do when a step went wrong, sentence by sentence; none where nothing can be spoiled. */
export function ifWrong(action: StepAction): readonly string[] {
  switch (action.kind) {
    case 'cut':
      return [
        'Wrong wire cut: leave power off and cover both ends at once.',
        'Repair: strip both ends, slide a tube on if the splice needs one, join, pull, seal.',
        proveAgain,
      ];
    case 'tap':
      return [
        'Wrong wire tapped, or the blade missed the copper: take the tap off. It leaves a wound, never whole insulation.',
        'Repair: cover the wound with a sleeve that suits the place; never set the second tap into the same spot.',
        proveAgain,
      ];
    case 'insert':
      return [
        'Wrong cavity: open the secondary lock, free the terminal with the right tool and look at its spring before it goes in again; a bent one is replaced.',
        'The terminal slides back out: it was not in to its stop, or it sits turned round. Never hold it with the lock.',
        'A seal that was cut or rolled is replaced. An opened cavity of a sealed connector gets a plug.',
        proveAgain,
      ];
    case 'withdraw':
      return [
        'Wrong terminal out: put it back into the cavity that this page names, after a look at its spring.',
        'It does not come: the secondary lock is not open, or the tool is the wrong one. Do not pull harder.',
        proveAgain,
      ];
    case 'close lock':
      return [
        'The lock will not close: a terminal stands out. Do not force it. Find the proud one, push it home to its click, try again.',
        'It still will not: open it, take out the terminal put in last, look for a bent spring or one turned round.',
      ];
    case 'join':
      return [
        'A wire slides in the crimp: cut the splice out, strip afresh and crimp with the right die.',
        proveAgain,
      ];
    case 'fit terminal':
      return [
        'A strand stands out or the crimp is loose: cut the terminal off, strip afresh and use a new one.',
      ];
    default:
      return [];
  }
}
