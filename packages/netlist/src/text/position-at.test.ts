import { expect, test } from 'vitest';
import { positionAt } from './position-at.ts';

test('each of the three line ends starts a new line', () => {
  const source = { name: 'a', text: 'a\nb\r\nc\rd' };
  expect(positionAt(source, source.text.indexOf('d'))).toEqual({ line: 4, column: 1 });
});

test('an offset outside the text is moved to its end', () => {
  const source = { name: 'a', text: 'ab\ncd' };
  expect(positionAt(source, 99)).toEqual({ line: 2, column: 3 });
  expect(positionAt(source, -5)).toEqual({ line: 1, column: 1 });
});

test('two sources with the same name keep their own lines', () => {
  expect(positionAt({ name: 'a', text: '\n\nx' }, 2).line).toBe(3);
  expect(positionAt({ name: 'a', text: 'xxx' }, 2).line).toBe(1);
});
