import { describe, expect, test } from 'vitest';
import { ampacity } from './ampacity.ts';
import { ac4313Ampacity, cfr183Table5, engineSpace105 } from './ampacity-tables.ts';

describe('ampacity', () => {
  // Cells read in 33 CFR 183.425 table 5.
  test.each([
    ['18', 60, 10],
    ['16', 105, 25],
    ['10', 90, 55],
    ['8', 75, 65],
    ['1/0', 105, 285],
    ['0', 105, 285],
    ['4/0', 200, 510],
  ])('33 CFR 183.425 table 5: %s AWG at %d degrees carries %d A', (awg, insulationC, ampere) => {
    expect(ampacity(cfr183Table5, awg, insulationC, 'any')).toBe(ampere);
  });

  // Cells read in FAA AC 43.13-1B CHG 1 table 11-9.
  test.each([
    ['24', 105, 2.5],
    ['10', 150, 26],
    ['4/0', 200, 395],
  ])('AC 43.13-1B table 11-9: %s AWG at %d degrees carries %d A', (awg, insulationC, ampere) => {
    expect(ampacity(ac4313Ampacity, awg, insulationC, 'any')).toBe(ampere);
  });

  test('outside an engine space 105 degree insulation carries what the regulation says, inside 85 % of it', () => {
    // Two independent texts: "Wire heat ratings" table E against 33 CFR 183.425 table 5.
    expect(engineSpace105.rows).toHaveLength(15);
    for (const { awg } of engineSpace105.rows) {
      const outside = ampacity(engineSpace105, awg, 105, 'outside-engine-space') ?? Number.NaN;
      expect(ampacity(cfr183Table5, awg, 105, 'any')).toBe(outside);
      const inside = ampacity(engineSpace105, awg, 105, 'inside-engine-space') ?? Number.NaN;
      // Printed in whole amperes.
      expect(Math.abs(inside - 0.85 * outside)).toBeLessThanOrEqual(0.5);
    }
  });

  test('in every table a thicker conductor and a hotter insulation never carry less', () => {
    for (const table of [cfr183Table5, engineSpace105, ac4313Ampacity]) {
      for (const [index, row] of table.rows.entries()) {
        expect(row.ampere).toHaveLength(table.columns.length);
        for (const [column, ampere] of row.ampere.entries()) {
          expect(ampere).toBeGreaterThan(table.rows[index - 1]?.ampere[column] ?? 0);
          const cooler = table.columns[column - 1];
          if (cooler?.place === 'any') expect(ampere).toBeGreaterThanOrEqual(row.ampere[column - 1] ?? 0);
        }
      }
    }
  });

  test('an insulation between two columns takes the cooler one', () => {
    expect(ampacity(cfr183Table5, '16', 100, 'any')).toBe(ampacity(cfr183Table5, '16', 90, 'any'));
    expect(ampacity(cfr183Table5, '16', 250, 'any')).toBe(35);
  });

  test('what the table does not hold is null', () => {
    expect(ampacity(cfr183Table5, '16', 59, 'any')).toBeNull();
    expect(ampacity(cfr183Table5, '20', 105, 'any')).toBeNull();
    expect(ampacity(cfr183Table5, '1.5', 105, 'any')).toBeNull();
    expect(ampacity(cfr183Table5, '16', 105, 'inside-engine-space')).toBeNull();
    expect(ampacity(engineSpace105, '16', 105, 'any')).toBeNull();
  });
});
