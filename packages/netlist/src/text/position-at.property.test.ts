import fc from 'fast-check';
import { expect, test } from 'vitest';
import { positionAt } from './position-at.ts';

const textArbitrary = fc
  .array(fc.constantFrom('a', 'é', '😀', '\t', '\n', '\r\n', '\r', '\ufeff'), { maxLength: 40 })
  .map((parts) => parts.join(''));

/** The slow way: walk from the start of the text and count. */
function countPosition(text: string, offset: number): { line: number; column: number } {
  let line = 1;
  let column = 1;
  for (let at = 0; at < offset; at += 1) {
    const here = text[at];
    const endsLine = here === '\n' || (here === '\r' && text[at + 1] !== '\n');
    if (endsLine) {
      line += 1;
      column = 1;
    } else if (at > 0 || here !== '\ufeff') column += 1;
  }
  return { line, column };
}

test('the position of every offset is what counting from the start gives', () => {
  fc.assert(
    fc.property(textArbitrary, (text) => {
      const source = { name: 'a.csv', text };
      for (let offset = 0; offset <= text.length; offset += 1) {
        expect(positionAt(source, offset)).toEqual(countPosition(text, offset));
      }
    }),
  );
});
