import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { faultTable } from './fault-table.ts';
import { probeProofs } from './probe-proof.ts';

const table = faultTable(jobOf(tapKit()), { stage: { is: 'unplugged' } });
const at = (name: string): number => table.points.findIndex((point) => point.name === name);
const [x1, x2, x3, x4, y1, y2, g] = ['X:1', 'X:2', 'X:3', 'X:4', 'Y:1', 'Y:2', 'G'].map(at) as [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

it('has a jumper between other points of the two nets, where each has one', () => {
  expect(probeProofs(table, [{ a: x1, b: x2, expected: 'open' }])).toEqual([
    { is: 'jumper', from: x4, to: g },
  ]);
});

it('has nothing for readings that show contact themselves, ohms among them', () => {
  const ohms = { lowOhm: 54, highOhm: 67 };
  expect(
    probeProofs(table, [
      { a: x1, b: x4, expected: 'whole' },
      { a: x1, b: x2, expected: ohms },
    ]),
  ).toEqual([null, null]);
});

it('is a look where nothing leads on from a cavity', () => {
  expect(probeProofs(table, [{ a: x3, b: y2, expected: 'open' }])).toEqual([{ is: 'look', at: [x3, y2] }]);
  expect(probeProofs(table, [{ a: y1, b: y2, expected: 'open' }])).toEqual([{ is: 'look', at: [y2] }]);
});

it('is the positive readings of the same cavities, where a net has no other point for a jumper', () => {
  const checks = [
    { a: x3, b: y2, expected: { lowOhm: 10, highOhm: 20 } },
    { a: x3, b: y2, expected: 'open' },
  ] as const;
  expect(probeProofs(table, checks)).toEqual([null, { is: 'readings', numbers: [1, 1] }]);
});
