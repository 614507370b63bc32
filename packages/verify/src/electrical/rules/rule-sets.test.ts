import { describe, expect, test } from 'vitest';
import { standardSizes } from '../wire/standard-sizes.ts';
import { bladeFuses } from './blade-fuses.ts';
import { limitInVolt } from './limit-in-volt.ts';
import { overcurrentRules } from './overcurrent-rules.ts';
import { ruleSets } from './rule-sets.ts';
import { type VoltageDropLimit, voltageDropLimits } from './voltage-drop-limits.ts';

function limit(id: string): VoltageDropLimit {
  const found = voltageDropLimits.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no limit ${id}`);
  return found;
}

describe('what was published', () => {
  test('every value names its source, and only a value from memory is unconfirmed', () => {
    for (const { source, confirmed } of [...voltageDropLimits, ...overcurrentRules, ...bladeFuses]) {
      expect(source.length).toBeGreaterThan(5);
      expect(source.startsWith('from memory')).toBe(!confirmed);
    }
  });

  test('each id names one limit and one rule', () => {
    for (const list of [voltageDropLimits, overcurrentRules]) {
      expect(new Set(list.map(({ id }) => id)).size).toBe(list.length);
    }
  });

  test('each rule set holds what it lists, with sizes to choose from', () => {
    expect(ruleSets.map(({ id }) => id)).toEqual(['small-craft', 'aircraft']);
    expect(ruleSets.map(({ dropLimits }) => dropLimits.length)).toEqual([4, 10]);
    expect(ruleSets.map((set) => set.overcurrentRules.length)).toEqual([7, 1]);
    for (const { sizeFamilies, ampacityTables } of ruleSets) {
      expect(ampacityTables.length).toBeGreaterThan(0);
      for (const family of sizeFamilies) expect(standardSizes(family).length).toBeGreaterThan(0);
    }
  });
});

describe('limitInVolt', () => {
  test('3 % of 12 V are 0.36 V, of 24 V 0.72 V', () => {
    // "Wire size charts", tables IX and X from ABYC E-11; ISO 10133:2012 for the same 3 %.
    expect(['V1', 'V3'].map((id) => limitInVolt(limit(id), 12, 5))).toEqual([0.36, 0.36]);
    expect(limitInVolt(limit('V1'), 24, 5)).toBeCloseTo(0.72, 12);
  });

  test('a limit in volts holds for its own system only', () => {
    expect(limitInVolt(limit('V7'), 28, 5)).toBe(1);
    expect(limitInVolt(limit('V7'), 14, 5)).toBeNull();
  });

  test('5 milliohm of ground return are 0.1 V at 20 A', () => {
    // FAA handbook text, flight-mechanic.com: 0.005 ohm is satisfactory.
    expect(limitInVolt(limit('V14'), 28, 20)).toBeCloseTo(0.1, 12);
  });

  test.each([
    [0, 1],
    [Number.NaN, 1],
    [12, -1],
    [12, Number.POSITIVE_INFINITY],
  ])('%d V and %d A are refused', (volt, ampere) => {
    expect(() => limitInVolt(limit('V1'), volt, ampere)).toThrow('verify/limitInVolt');
  });
});

describe('bladeFuses', () => {
  test('within a type each rating and each colour occurs once', () => {
    for (const type of ['medium-or-miniature', 'high-current']) {
      const fuses = bladeFuses.filter((fuse) => fuse.type === type);
      expect(fuses.length).toBeGreaterThan(9);
      expect(new Set(fuses.map(({ ampere }) => ampere)).size).toBe(fuses.length);
      expect(new Set(fuses.map(({ colour }) => colour)).size).toBe(fuses.length);
    }
  });

  test.each([
    // "Fuse colors" (DIN 72581), fuselayouts.com, and "Automotive fuse ID: color chart", onallcylinders.com.
    [5, 'tan (light brown)'],
    [10, 'red'],
    [15, 'blue'],
    [20, 'yellow'],
    [30, 'green'],
  ])('%d A is %s', (ampere, colour) => {
    const fuse = bladeFuses.find((one) => one.type === 'medium-or-miniature' && one.ampere === ampere);
    expect(fuse).toMatchObject({ colour, confirmed: true });
  });
});
