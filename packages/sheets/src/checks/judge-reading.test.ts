import { defaultBands } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { judgeReading } from './judge-reading.ts';

describe('a reading as it is typed', () => {
  it.each([
    ['1 ohm', '', { is: 'read', outcome: 'whole', ohm: 1 }],
    ['1.001 ohm', '', { is: 'read', outcome: 'between', ohm: 1.001 }],
    ['0.999 Mohm', '', { is: 'read', outcome: 'between', ohm: 999_000 }],
    ['1 Mohm', '', { is: 'read', outcome: 'open', ohm: 1e6 }],
    ['> 1 Mohm', '', { is: 'read', outcome: 'open', ohm: null }],
    ['OL', '', { is: 'read', outcome: 'open', ohm: null }],
    ['1.5 ohm', '0.5 ohm', { is: 'read', outcome: 'whole', ohm: 1 }],
    ['not reachable', '', { is: 'not reachable' }],
  ])('%s with leads "%s" is judged by the bands', (written, leads, judged) => {
    expect(judgeReading(written, leads, defaultBands)).toEqual(judged);
  });

  it.each([
    ['> 900 kohm', '', 'a higher range'],
    ['> 500 ohm', '', 'a higher range'],
    ['3 ohm', '4 ohm', 'what the leads alone read'],
  ])('%s with leads "%s" says nothing yet, and what to do', (written, leads, help) => {
    const judged = judgeReading(written, leads, defaultBands);
    expect(judged.is === 'unreadable' && judged.help).toContain(help);
  });

  it.each(['beep', '1"2', '0.3 ohm\nK1,K2,0.3 ohm', '1e3', '-1 ohm'])(
    '%j is none, and what to write is said',
    (written) => {
      const judged = judgeReading(written, '', defaultBands);
      expect(judged.is).toBe('unreadable');
      expect(judged.is === 'unreadable' && judged.help).toContain('ohm');
    },
  );
});
