import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Colour } from './colour.ts';
import { colourCodes } from './colour-names.ts';
import { formatColour } from './format-colour.ts';
import { parseColour } from './parse-colour.ts';
import { sameColour } from './same-colour.ts';

const colours = fc
  .uniqueArray(fc.constantFrom(...colourCodes), { minLength: 1, maxLength: 4 })
  .map((codes): Colour => ({ codes, raw: 'as it was' }));

test('every colour is read back from its formatted text', () => {
  fc.assert(
    fc.property(colours, (colour) => {
      const parsed = parseColour(formatColour(colour));
      expect(parsed).toMatchObject({ ok: true, value: { codes: colour.codes } });
    }),
  );
});

test('separator and case do not change a colour', () => {
  fc.assert(
    fc.property(
      colours,
      fc.constantFrom('/', '-', ' ', '', '_', ' / '),
      fc.boolean(),
      (colour, separator, lower) => {
        const text = colour.codes.join(separator);
        expect(parseColour(lower ? text.toLowerCase() : text)).toMatchObject({
          ok: true,
          value: { codes: colour.codes },
        });
      },
    ),
  );
});

test('two colours are the same exactly when their codes are, in order', () => {
  fc.assert(
    fc.property(colours, colours, (a, b) => {
      expect(sameColour(a, { ...a, raw: 'other' })).toBe(true);
      expect(sameColour(a, b)).toBe(a.codes.join() === b.codes.join());
    }),
  );
});

test('any text is either read or refused with a reason, and never thrown at', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (raw) => {
      const parsed = parseColour(raw);
      if (parsed.ok) expect(parsed.value.raw).toBe(raw);
      else expect(parsed.problem).not.toBe('');
    }),
  );
});
