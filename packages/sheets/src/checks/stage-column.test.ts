import { readReadings } from '@loomproof/verify';
import { expect, it } from 'vitest';
import { circuitKit } from '../../../../tests/support/circuit-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { stageColumn } from './stage-column.ts';

const job = jobOf(circuitKit(2, [{ from: 0, to: 1, is: 'is: load, resistance: 10 ohm' }]));
const number = (name: string): number => job.connectors.findIndex((one) => one.name === name);

it.each([
  [{ is: 'bench' } as const, 'bench', []],
  [{ is: 'in place', pulled: new Set<number>() } as const, 'in place', []],
  [
    { is: 'in place', pulled: new Set([number('SPARE'), number('K0')]) } as const,
    'in place without SPARE, K0',
    ['SPARE', 'K0'],
  ],
])('writes what is plugged in words that the reader of readings knows: %o', (stage, words, unplugged) => {
  expect(stageColumn(stage, job)).toBe(words);
  const { value } = readReadings({ name: 'r', text: `from,to,reading,stage\na,b,open,"${words}"\n` });
  expect(value?.[0]?.stage).toEqual({ is: 'said', stage: stage.is, unplugged });
});
