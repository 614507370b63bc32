import { expect, test } from 'vitest';
import { processorTime } from '../../../../tests/support/processor-time.ts';
import { makeDiagnostic } from './make-diagnostic.ts';
import { renderDiagnostic } from './render-diagnostic.ts';

const source = { name: 'before.csv', text: 'wire;from\nW1;X1:2-Jan\n' };

test('a diagnostic reads as code, place, source line, carets, notes and help', () => {
  const diagnostic = makeDiagnostic({
    code: 'TABLE_DATE',
    message: 'cavity `2-Jan` looks like a date',
    span: { source, start: 16, end: 21 },
    related: [{ message: 'the column begins here', span: { source, start: 5, end: 9 } }],
    help: 'format the column as text',
  });
  expect(renderDiagnostic(diagnostic)).toBe(
    [
      'error[TABLE_DATE]: cavity `2-Jan` looks like a date',
      ' --> before.csv:2:7',
      '  |',
      '2 | W1;X1:2-Jan',
      '  |       ^^^^^',
      'note: the column begins here',
      ' --> before.csv:1:6',
      '  |',
      '1 | wire;from',
      '  |      ^^^^',
      'help: format the column as text',
    ].join('\n'),
  );
});

test('a warning without place and help is one line', () => {
  expect(renderDiagnostic(makeDiagnostic({ code: 'C', message: 'm', severity: 'warning' }))).toBe(
    'warning[C]: m',
  );
});

test('nothing hidden in name, message, help or source reaches the terminal raw', () => {
  const evil = '\u001b]0;x\u0007\u202e\u0000\r';
  const text = renderDiagnostic(
    makeDiagnostic({
      code: 'C',
      message: evil,
      help: evil,
      span: { source: { name: evil, text: evil }, start: 0, end: 1 },
    }),
  );
  expect([...text].filter((character) => /[\p{Cc}\p{Cf}]/u.test(character) && character !== '\n')).toEqual(
    [],
  );
});

test('a line of ten megabytes renders in bounded time and space', () => {
  const big = { name: 'big.csv', text: `${'x'.repeat(5_000_000)}Q${'y'.repeat(5_000_000)}` };
  const message = 'z'.repeat(1_000_000);
  const diagnostic = makeDiagnostic({
    code: 'C',
    message,
    span: { source: big, start: 5_000_000, end: 10_000_001 },
  });
  const taken = processorTime();
  const text = renderDiagnostic(diagnostic);
  expect(taken()).toBeLessThan(2_000);
  expect(text.length).toBeLessThan(3_000);
  expect(text).toContain('Q');
});
