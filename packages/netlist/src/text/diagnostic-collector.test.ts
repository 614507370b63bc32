import { expect, test } from 'vitest';
import { DiagnosticCollector } from './diagnostic-collector.ts';
import { makeDiagnostic } from './make-diagnostic.ts';

function fill(errors: number, warnings: number): DiagnosticCollector {
  const collector = new DiagnosticCollector(3, 'MORE');
  for (let n = 0; n < warnings; n += 1)
    collector.add(makeDiagnostic({ code: 'W', message: '', severity: 'warning' }));
  for (let n = 0; n < errors; n += 1) collector.add(makeDiagnostic({ code: 'E', message: '' }));
  return collector;
}

test.each([
  [0, 0, []],
  [1, 2, ['E', 'W', 'W']],
  [3, 0, ['E', 'E', 'E']],
])('%i errors and %i warnings within the limit are all given', (errors, warnings, codes) => {
  expect(
    fill(errors, warnings)
      .finish()
      .map((one) => one.code),
  ).toEqual(codes);
});

test('errors are kept before warnings, and what is left out is counted', () => {
  const all = fill(2, 4).finish();
  expect(all.map((one) => one.code)).toEqual(['E', 'E', 'W', 'MORE']);
  expect(all.at(-1)).toMatchObject({
    severity: 'warning',
    message: 'and 3 more not shown (errors: 0, warnings: 3)',
  });
});

test('a collector is full once further errors are only counted, whatever the warnings', () => {
  expect(fill(2, 9).isFull).toBe(false);
  expect(fill(3, 0).isFull).toBe(true);
});

test('an error that is left out keeps its severity', () => {
  const all = fill(5, 1).finish();
  expect(all.map((one) => one.code)).toEqual(['E', 'E', 'E', 'MORE']);
  expect(all.at(-1)).toMatchObject({
    severity: 'error',
    message: 'and 3 more not shown (errors: 2, warnings: 1)',
  });
  expect(fill(5, 1).hasErrors).toBe(true);
  expect(fill(0, 1).hasErrors).toBe(false);
});
