import fc from 'fast-check';
import { expect, test } from 'vitest';
import { codeFrame, widestFrame } from './code-frame.ts';

const pieces = fc.array(fc.constantFrom('a', ';', '😀', 'é', '赤', '\t', '\u001b', '\u202e', '\n', '\r\n'), {
  maxLength: 400,
});

test('the marked letter stands above the caret, whatever surrounds it', () => {
  fc.assert(
    fc.property(pieces, pieces, (before, after) => {
      const text = `${before.join('')}Q${after.join('')}`;
      const start = text.indexOf('Q');
      const { line, carets } = codeFrame({ source: { name: 'a', text }, start, end: start + 1 });
      expect(carets.trimStart()).toBe('^');
      // The only wide characters of the generator are these two, each of two columns.
      const columns = line.replace(/😀|赤/gu, '__');
      expect(columns[carets.length - 1]).toBe('Q');
      expect(columns.length).toBeLessThanOrEqual(widestFrame);
    }),
  );
});
