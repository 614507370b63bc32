import fc from 'fast-check';
import { expect, it } from 'vitest';
import { jsonText } from './json-text.ts';

const anyText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({
    unit: fc.constantFrom(
      '\u202e',
      '\u200b',
      '\u2028',
      '\u00a0',
      '\u{e0041}',
      '\ud800',
      '\n',
      '\\',
      '"',
      'a',
    ),
  }),
);

it('means the same as the data, and shows nothing hidden', () => {
  fc.assert(
    fc.property(fc.array(fc.oneof(anyText, fc.record({ a: anyText, b: fc.integer() }))), (data) => {
      const text = jsonText(data);
      expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(data)));
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\u00a0]/u);
    }),
  );
});
