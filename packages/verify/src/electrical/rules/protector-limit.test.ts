import { describe, expect, test } from 'vitest';
import { ac4313Table113 } from './ac4313-table-11-3.ts';
import { ampacity } from './ampacity.ts';
import { cfr183Table5 } from './ampacity-tables.ts';
import { keepsProtectorLimit, type ProtectorQuestion, protectorLimit } from './protector-limit.ts';

const ratings = [5, 7.5, 10, 15, 20, 25, 30, 35, 40];

function keeps(question: Partial<ProtectorQuestion>, rating: number): boolean | null {
  const limit = protectorLimit({
    rule: 'O4',
    ampacity: 25,
    systemVolt: 12,
    standardRatings: ratings,
    ...question,
  });
  return keepsProtectorLimit(limit, rating);
}

describe('protectorLimit', () => {
  test('16 AWG with 105 degree insulation below 50 V: 37.5 A, so that 40 A fails and 35 A passes', () => {
    // 33 CFR 183.425 table 5 (25 A) and 183.455 (150 %).
    const carried = ampacity(cfr183Table5, '16', 105, 'any') ?? Number.NaN;
    expect(protectorLimit({ rule: 'O4', ampacity: carried, systemVolt: 12, standardRatings: [] })).toEqual({
      kind: 'limit',
      ampere: 37.5,
      inclusive: true,
    });
    expect(keeps({}, 40)).toBe(false);
    expect(keeps({}, 35)).toBe(true);
    expect(keeps({}, 37.5)).toBe(true);
  });

  test('the two boat rules share out the voltages at 50 V', () => {
    // 33 CFR 183.455: below 50 V, and 50 V or more.
    expect([49.9, 50].map((systemVolt) => keeps({ rule: 'O4', systemVolt }, 35))).toEqual([true, null]);
    expect([49.9, 50].map((systemVolt) => keeps({ rule: 'O5', systemVolt }, 25))).toEqual([null, true]);
  });

  test.each(['O5', 'O6'] as const)(
    '%s allows the next rating that is made, where none is made for the capacity itself',
    (rule) => {
      // 33 CFR 183.455 at 50 V and above; 46 CFR 183.380.
      const question = { rule, systemVolt: 120 };
      expect(keeps({ ...question, ampacity: 25 }, 30)).toBe(false);
      expect(keeps({ ...question, ampacity: 22 }, 25)).toBe(true);
      expect(keeps({ ...question, ampacity: 22 }, 30)).toBe(false);
      expect(protectorLimit({ ...question, ampacity: 22, standardRatings: [20, 34] })).toMatchObject({
        ampere: 22,
      });
      expect(protectorLimit({ ...question, ampacity: 22, standardRatings: [33] })).toMatchObject({
        ampere: 33,
      });
      expect(protectorLimit({ ...question, ampacity: 22, standardRatings: [] })).toMatchObject({
        ampere: 22,
      });
    },
  );

  test('an aircraft wire carries more than its protector', () => {
    // FAA AC 43.13-1B para 11-48.
    expect([20, 24.9, 25, 30].map((rating) => keeps({ rule: 'O7', systemVolt: 28 }, rating))).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  test.each([{ ampacity: 0 }, { ampacity: Number.NaN }, { systemVolt: 0 }, { standardRatings: [10, -1] }])(
    '%o is refused',
    (change) => {
      expect(() => keeps(change, 10)).toThrow('verify/protectorLimit');
    },
  );
});

test('in the chart of AC 43.13-1B no fuse is larger than the breaker, and none falls with the gauge', () => {
  // Table 11-3, p. 11-15; three rows as read there.
  expect(ac4313Table113.rows).toHaveLength(13);
  expect(ac4313Table113.rows.filter(({ awg }) => ['20', '12', '1/0'].includes(awg))).toEqual([
    { awg: '20', breakerAmpere: 7.5, fuseAmpere: 5 },
    { awg: '12', breakerAmpere: 30, fuseAmpere: 20 },
    { awg: '1/0', breakerAmpere: null, fuseAmpere: 150 },
  ]);
  for (const [index, { breakerAmpere, fuseAmpere }] of ac4313Table113.rows.entries()) {
    const before = ac4313Table113.rows[index - 1];
    expect(fuseAmpere).toBeGreaterThanOrEqual(before?.fuseAmpere ?? 0);
    if (breakerAmpere !== null) {
      expect(breakerAmpere).toBeGreaterThanOrEqual(fuseAmpere);
      expect(breakerAmpere).toBeGreaterThan(before?.breakerAmpere ?? 0);
    }
  }
});
