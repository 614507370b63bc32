import { expect, test } from 'vitest';
import { codeFrame, widestFrame } from './code-frame.ts';

function frameOf(text: string, part: string): { line: string; carets: string } {
  const start = text.indexOf(part);
  return codeFrame({ source: { name: 'a.csv', text }, start, end: start + part.length });
}

test('carets stand below the span', () => {
  expect(frameOf('first\nW1;X1;01-Feb\nlast', '01-Feb')).toEqual({
    line: 'W1;X1;01-Feb',
    carets: '      ^^^^^^',
  });
});

test('an empty span at the end of a line gets one caret behind it', () => {
  const source = { name: 'a', text: 'ab\r\ncd' };
  expect(codeFrame({ source, start: 2, end: 2 })).toEqual({ line: 'ab', carets: '  ^' });
  expect(codeFrame({ source, start: 6, end: 6 })).toEqual({ line: 'cd', carets: '  ^' });
});

test('a span over several lines is marked on its first line', () => {
  const source = { name: 'a', text: 'ab\ncd' };
  expect(codeFrame({ source, start: 1, end: 5 })).toEqual({ line: 'ab', carets: ' ^' });
});

test('tabs, wide characters, combining marks and escapes do not move the caret', () => {
  expect(frameOf('a\tX', 'X')).toEqual({ line: 'a    X', carets: '     ^' });
  expect(frameOf('赤青X', 'X')).toEqual({ line: '赤青X', carets: '    ^' });
  expect(frameOf('赤青X', '青')).toEqual({ line: '赤青X', carets: '  ^^' });
  expect(frameOf('e\u0301X', 'X')).toEqual({ line: 'e\u0301X', carets: ' ^' });
  expect(frameOf('\u001bX', 'X')).toEqual({ line: '\\u{1b}X', carets: '      ^' });
  expect(frameOf('a\u202eX', '\u202e')).toEqual({ line: 'a\\u{202e}X', carets: ' ^^^^^^^^' });
});

test('a line of exactly the widest size is shown whole and one more column is cut', () => {
  const fits = `${'a'.repeat(widestFrame - 1)}X`;
  expect(frameOf(fits, 'X').line).toBe(fits);
  const tooWide = `${'a'.repeat(widestFrame)}X`;
  const cut = frameOf(tooWide, 'X');
  expect(cut.line.length).toBeLessThanOrEqual(widestFrame);
  expect(cut.line.startsWith('…')).toBe(true);
  expect(cut.line[cut.carets.indexOf('^')]).toBe('X');
});

test('a span wider than the frame fills it', () => {
  const { line, carets } = frameOf(`ab${'X'.repeat(500)}cd`, 'X'.repeat(500));
  expect(line).toBe(`…${'X'.repeat(widestFrame - 2)}…`);
  expect(carets).toBe(` ${'^'.repeat(widestFrame - 2)}`);
});

test('both sides are cut around a span in the middle of a long line', () => {
  const { line, carets } = frameOf(`${'a'.repeat(1000)}X${'b'.repeat(1000)}`, 'X');
  expect(line).toBe(`…${'a'.repeat(40)}X${'b'.repeat(67)}…`);
  expect(carets).toBe(`${' '.repeat(41)}^`);
});
