import type { PathHop } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { pathLines } from './path-lines.ts';

function hop(by: PathHop['by'], from: string, to: string, more: Partial<PathHop> = {}): PathHop {
  return { by, from, to, name: null, colour: null, size: null, made: 'stock', ...more };
}

describe('pathLines', () => {
  it('shows places and joints alone, and the wire between them with colour, size and origin', () => {
    const path = [
      hop('seat', 'K1:1', 'terminal of w@K1:1'),
      hop('crimp', 'terminal of w@K1:1', 'w@K1:1'),
      hop('conductor', 'w@K1:1', 'w@S1', { name: 'w', colour: 'RD', size: '1 mm2' }),
      hop('joint', 'w@S1', 'S1'),
    ];
    expect(pathLines(path)).toEqual(['K1:1', '  | wire w, RD, 1 mm2, as found', 'S1']);
  });

  it('names the step of every join that a step made', () => {
    const path = [
      hop('seat', 'K1:1', 'terminal of w@a', { made: 12 }),
      hop('crimp', 'terminal of w@a', 'w@a', { made: 11 }),
      hop('conductor', 'w@a', 'w@b', { name: 'w', made: 'kit' }),
      hop('joint', 'w@b', 'TAP1', { made: 9 }),
      hop('conductor', 'TAP1', 'v@K2:1', { name: 'v' }),
      hop('crimp', 'v@K2:1', 'terminal of v@K2:1'),
      hop('seat', 'terminal of v@K2:1', 'K2:1'),
    ];
    expect(pathLines(path)).toEqual([
      'K1:1',
      '  | wire w, from the kit; in K1:1, step 12; crimped, step 11; joined in TAP1, step 9',
      'TAP1',
      '  | wire v, as found',
      'K2:1',
    ]);
  });

  it('shows mates, jumpers, elements and the chassis as ways of their own', () => {
    const path = [
      hop('mate', 'K1:1', 'D:1', { made: 4 }),
      hop('element', 'D:1', 'D:2', { name: 'F7' }),
      hop('element', 'D:2', 'D:3'),
      hop('jumper', 'D:3', 'G1', { name: 'J1', made: 5 }),
      hop('chassis', 'G1', 'G2'),
    ];
    expect(pathLines(path)).toEqual([
      'K1:1',
      '  | plugged together, step 4',
      'D:1',
      '  | through F7',
      'D:2',
      '  | through what is inside',
      'D:3',
      '  | jumper J1, step 5',
      'G1',
      '  | through the chassis',
      'G2',
    ]);
  });

  it('ends at a wire end where the path does', () => {
    const path = [hop('conductor', 'w@cut', 'w@K1:1', { name: 'w' }), hop('crimp', 'w@K1:1', 't@')];
    expect(pathLines(path)).toEqual(['w@cut', '  | wire w, as found', 't@']);
    expect(pathLines([])).toEqual([]);
  });
});
