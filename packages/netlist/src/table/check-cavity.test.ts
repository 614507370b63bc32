import { expect, test } from 'vitest';
import { checkCavity } from './check-cavity.ts';

function check(
  label: string,
  labels: readonly string[] | null,
): { code: string; help: string | null } | null {
  const fault = checkCavity(label, 'X1', labels === null ? null : new Set(labels));
  return fault === null ? null : { code: fault.code, help: fault.help };
}

test('with a list exactly its labels are right, whatever they look like', () => {
  const labels = ['1', '1E2', '01-Feb', 'NC', '-', '1.0', '__proto__'];
  for (const label of labels) expect(check(label, labels)).toBeNull();
});

test.each([
  ['01-Feb', ['1-1', '1-2', '2-1', '2-2'], 'TABLE_DATE', '`1-2` or `2-1`'],
  ['1/2/2026', ['1/2'], 'TABLE_DATE', '`1/2`'],
  ['1.00E+02', ['1E1', '1E2'], 'TABLE_SCIENTIFIC', '`1E2`'],
  ['1.0', ['01', '02'], 'TABLE_DECIMAL', '`01`'],
  ['1', ['01', '02'], 'TABLE_LEADING_ZERO', '`01`'],
  ['001', ['01', '02'], 'TABLE_LEADING_ZERO', '`01`'],
  ['a1', ['A1', 'A2'], 'TABLE_CAVITY_UNKNOWN', '`A1`'],
  ['9', ['1', '2'], 'TABLE_CAVITY_UNKNOWN', '`1` or `2`'],
  ['9', ['1', '2', '3', '4', '5'], 'TABLE_CAVITY_UNKNOWN', '`1` or `2` or `3` or `4` or others'],
  ['NC', ['1'], 'TABLE_NOT_CONNECTED', 'take the row out'],
] as const)('with a list, %s against %j is %s', (label, labels, code, help) => {
  expect(check(label, labels)).toEqual({ code, help: expect.stringContaining(help) });
});

test.each([
  ['01-Feb', 'TABLE_DATE'],
  ['2026-02-01', 'TABLE_DATE'],
  ['1E2', 'TABLE_SCIENTIFIC'],
  ['1.0', 'TABLE_DECIMAL'],
] as const)('without a list, %s is %s and the list is asked for', (label, code) => {
  expect(check(label, null)).toEqual({
    code,
    help: expect.stringContaining('list of cavity labels of connector `X1`'),
  });
});

test.each([
  ['nc', 'TABLE_NOT_CONNECTED'],
  ['-', 'TABLE_DASH'],
  ['–', 'TABLE_DASH'],
  ['Spare', 'TABLE_SPARE'],
  ['N/A', 'TABLE_NOT_APPLICABLE'],
  ['"', 'TABLE_DITTO'],
] as const)('the mark %s is no cavity but %s', (label, code) => {
  expect(check(label, null)).toMatchObject({ code });
});

test('a connector that is not known by name is not quoted', () => {
  expect(checkCavity('1E2', '', null)?.help).toContain('cavity labels of the connector,');
});

test('ordinary labels need no list', () => {
  for (const label of ['1', '01', 'A', '1-2', 'constructor']) expect(check(label, null)).toBeNull();
});
