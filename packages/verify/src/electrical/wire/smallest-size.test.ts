import { describe, expect, test } from 'vitest';
import { publishedAbycCells } from './published-abyc-cells.test-data.ts';
import { type SizeQuestion, smallestSize } from './smallest-size.ts';

const millimetresPerFoot = 304.8;
const boat: SizeQuestion = { family: 'abyc-e11', limitVolt: 0.36, ampere: 0, lengthMm: 0, temperatureC: 20 };

describe('smallestSize on published tables', () => {
  test.each(publishedAbycCells)(
    '12 V, 3 %%: %d A over %d ft out and back take %s AWG',
    (ampere, feet, awg) => {
      const answer = smallestSize({ ...boat, ampere, lengthMm: feet * millimetresPerFoot });
      expect(answer.kind).toBe('found');
      expect(answer.size.label).toBe(`${awg} AWG`);
    },
  );

  test('the table has 75 cells to test', () => {
    expect(publishedAbycCells).toHaveLength(75);
  });

  test('10 A over 11 ft out and 10 ft back, 12 V, 3 %: 10 AWG', () => {
    // Marine catalogue 2022 p. 52, wire size example: 6271 circular mils wanted.
    const answer = smallestSize({ ...boat, ampere: 10, lengthMm: 21 * millimetresPerFoot });
    expect(answer.size.label).toBe('10 AWG');
    expect((answer.volt / 0.36) * 9343).toBeCloseTo(6271, 0);
  });

  test('28 V, 20 A continuous over 50 ft, 1 V allowed: 8 AWG, which loses 0.70 V, since 10 AWG would lose 1.26 V', () => {
    // FAA AC 43.13-1B CHG 1 p. 11-26, example 1, with the resistances of table 11-9.
    const question: SizeQuestion = {
      family: 'ac4313-table-11-9',
      limitVolt: 1,
      ampere: 20,
      lengthMm: 50 * millimetresPerFoot,
      temperatureC: 20,
    };
    expect(smallestSize(question)).toMatchObject({ kind: 'found', volt: expect.closeTo(0.7, 10) });
    expect(smallestSize(question).size.label).toBe('8 AWG');
    expect(smallestSize({ ...question, limitVolt: 1.2600001 })).toMatchObject({
      volt: expect.closeTo(1.26, 10),
    });
  });
});

describe('smallestSize', () => {
  test('a limit met exactly is met', () => {
    const question: SizeQuestion = { ...boat, family: 'iec60228-class5', ampere: 5, lengthMm: 8000 };
    const { volt, size } = smallestSize({ ...question, limitVolt: 0.54 });
    expect(size.label).toBe('1.5 mm2');
    expect(smallestSize({ ...question, limitVolt: volt }).size.label).toBe('1.5 mm2');
    expect(smallestSize({ ...question, limitVolt: volt * (1 - 1e-9) }).size.label).toBe('2.5 mm2');
  });

  test('heat asks for more copper, except of the rule that states no temperature', () => {
    const question: SizeQuestion = { ...boat, family: 'iso6722', limitVolt: 0.51, ampere: 5, lengthMm: 8000 };
    expect(smallestSize(question).size.label).toBe('1.5 mm2');
    expect(smallestSize({ ...question, temperatureC: 60 }).size.label).toBe('2.5 mm2');
    const table = { ...boat, ampere: 5, lengthMm: 10 * millimetresPerFoot };
    expect(smallestSize({ ...table, temperatureC: 90 })).toEqual(smallestSize(table));
  });

  test('when no size is large enough, the largest comes with what it loses', () => {
    const answer = smallestSize({ ...boat, ampere: 400, lengthMm: 1e5 });
    expect(answer.kind).toBe('none-large-enough');
    expect(answer.size.label).toBe('2/0 AWG');
    expect(answer.volt).toBeGreaterThan(0.36);
  });

  test.each([
    [{ limitVolt: -1 }, 'a limit of -1 V'],
    [{ limitVolt: Number.NaN }, 'a limit of NaN V'],
    [{ ampere: -1 }, '-1 A'],
    [{ lengthMm: -1 }, 'a length of -1 mm'],
  ])('%o is refused', (change, message) => {
    expect(() => smallestSize({ ...boat, ...change })).toThrow(message);
  });
});
