import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatLength } from './format-length.ts';
import { formatRange } from './format-range.ts';
import { formatSize } from './format-size.ts';
import { parseLength } from './parse-length.ts';
import { parseRange } from './parse-range.ts';
import { parseSize } from './parse-size.ts';

const thousandths = fc.integer({ min: 1, max: 1_000_000 }).map((amount) => amount / 1_000);
const gauges = fc.oneof(
  fc.integer({ min: 1, max: 40 }).map(String),
  fc.constantFrom('0', '00', '000', '0000', '1/0', '2/0', '3/0', '4/0'),
);
const sizeTexts = fc.oneof(
  thousandths.map((mm2) => `${mm2} mm2`),
  gauges.map((gauge) => `AWG ${gauge}`),
);

test('a size is read back from its formatted text', () => {
  fc.assert(
    fc.property(sizeTexts, (raw) => {
      const first = parseSize(raw);
      if (!first.ok) throw new Error(first.problem);
      const text = formatSize(first.value);
      expect(parseSize(text)).toEqual({ ok: true, value: { ...first.value, raw: text } });
    }),
  );
});

test('the number that was written is the number that is read, with point or comma', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 0, max: 99 }), (whole, hundredths) => {
      const decimals = String(hundredths).padStart(2, '0');
      const wanted = (whole * 100 + hundredths) / 100;
      expect(parseSize(`${whole}.${decimals} mm2`)).toMatchObject({ value: { mm2: wanted } });
      expect(parseSize(`${whole},${decimals} mm2`)).toMatchObject({ value: { mm2: wanted } });
    }),
  );
});

test('a length is read back from its formatted text', () => {
  fc.assert(
    fc.property(thousandths, fc.constantFrom('mm', 'cm', 'm', 'in', 'ft'), (amount, unit) => {
      const first = parseLength(`${amount} ${unit}`);
      if (!first.ok) throw new Error(first.problem);
      expect(parseLength(formatLength(first.value))).toMatchObject({
        ok: true,
        value: { mm: first.value.mm },
      });
    }),
  );
});

test('a range is read back from its formatted text and does not depend on the order written', () => {
  const ends = fc.oneof(
    fc.tuple(thousandths, thousandths, fc.constantFrom('mm2', 'mm')),
    fc.tuple(gauges, gauges, fc.constant('AWG')),
  );
  fc.assert(
    fc.property(ends, ([from, to, unit]) => {
      const first = parseRange(`${from}..${to} ${unit}`);
      if (!first.ok) throw new Error(first.problem);
      const { raw: _, ...value } = first.value;
      expect(value.min).toBeLessThanOrEqual(value.max);
      expect(parseRange(`${to}..${from} ${unit}`)).toMatchObject({ ok: true, value });
      expect(parseRange(formatRange(first.value))).toMatchObject({ ok: true, value });
    }),
  );
});

test('any text is either read or refused with a reason, and never thrown at', () => {
  const texts = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc
      .array(fc.constantFrom('AWG', 'mm2', 'mm', '..', '0', '/', '18', ',', '.', ' ', 'e', '-'))
      .map((all) => all.join('')),
  );
  fc.assert(
    fc.property(texts, (raw) => {
      for (const parsed of [parseSize(raw), parseSize(raw, 'mm2'), parseLength(raw), parseRange(raw)]) {
        if (parsed.ok) expect(Object.values(parsed.value)).not.toContain(Number.NaN);
        else expect(parsed.problem).not.toBe('');
      }
    }),
  );
});
