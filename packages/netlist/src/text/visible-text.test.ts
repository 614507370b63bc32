import fc from 'fast-check';
import { expect, test } from 'vitest';
import { visibleText } from './visible-text.ts';

test('escapes, controls, bidirectional and invisible characters are written out', () => {
  expect(visibleText('\u001b[31m')).toBe('\\u{1b}[31m');
  expect(visibleText('a\u202eb')).toBe('a\\u{202e}b');
  expect(visibleText('X1\u200b')).toBe('X1\\u{200b}');
  expect(visibleText('1\u00a0mm')).toBe('1\\u{a0}mm');
  expect(visibleText('\n\r\t\0\u009b')).toBe('\\n\\r\\t\\u{0}\\u{9b}');
  expect(visibleText('\ufff9a\u0600')).toBe('\\u{fff9}a\\u{600}');
  expect(visibleText('\ud800')).toBe('\\u{d800}');
});

test('readable text in any script stays as it is', () => {
  const text = 'Bremslicht hinten 0,5 mm² 赤/青 é e\u0301 😀 \\';
  expect(visibleText(text)).toBe(text);
});

test('nothing below the space, no C1 control and no bidirectional control is ever left', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      for (const character of visibleText(text)) {
        const code = character.codePointAt(0) ?? 0;
        expect(code < 0x20 || (code >= 0x7f && code < 0xa0)).toBe(false);
        expect(code >= 0x202a && code <= 0x202e).toBe(false);
        expect(code >= 0x2066 && code <= 0x2069).toBe(false);
      }
    }),
  );
});
