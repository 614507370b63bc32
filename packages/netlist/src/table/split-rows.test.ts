import { expect, test } from 'vitest';
import { type SplitRow, splitRows } from './split-rows.ts';

function split(text: string, mostCells = 9): readonly SplitRow[] {
  return [...splitRows(text, ';', mostCells)];
}

test('a byte order mark and a last line end make no cell and no row', () => {
  const rows = split('\ufeffa;b\r\nc;d\r\n');
  expect(rows.map((row) => row.cells.map((cell) => cell.text))).toEqual([
    ['a', 'b'],
    ['c', 'd'],
  ]);
  expect(rows[0]).toMatchObject({ start: 1, end: 4 });
});

test('a quoted cell may have blanks around it, delimiters, line breaks and doubled quotes in it', () => {
  const [row] = split(' "a;\n""b""" ;c');
  expect(row?.cells).toEqual([
    { text: 'a;\n"b"', start: 2, end: 10, verbatim: false, fault: null },
    { text: 'c', start: 13, end: 14, verbatim: true, fault: null },
  ]);
});

test('a quote within an unquoted cell is itself', () => {
  expect(split('5" hose;b')[0]?.cells.map((cell) => cell.text)).toEqual(['5" hose', 'b']);
});

test('text after a closing quote is a fault of its cell only', () => {
  const rows = split('"a"b;c\nd;e');
  expect(rows[0]?.cells[0]).toMatchObject({ text: '"a"b', fault: 'text after quote' });
  expect(rows[0]?.cells[1]).toMatchObject({ text: 'c', fault: null });
  expect(rows).toHaveLength(2);
});

test('a quote that is never closed takes the rest', () => {
  const rows = split('a;"b\nc;d');
  expect(rows).toHaveLength(1);
  expect(rows[0]?.cells[1]).toMatchObject({ text: 'b\nc;d', fault: 'open quote' });
});

test('a row with more cells than are looked at ends the reading', () => {
  const rows = split('a;b;c;d\ne', 2);
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ tooWide: true });
  expect(split('a;b\ne', 2)).toHaveLength(2);
});
