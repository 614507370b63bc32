import { expect, test } from 'vitest';
import { awgToMm2 } from './awg-to-mm2.ts';
import { parseSize } from './parse-size.ts';

test.each([
  ['0.5 mm2', 0.5],
  ['0,5mm²', 0.5],
  ['.75 mm^2', 0.75],
  ['1,5 sq mm', 1.5],
  ['2.5 MM2', 2.5],
  ['4 qmm', 4],
  ['0,500 mm2', 0.5],
  ['16sqmm', 16],
])('%j is %f mm²', (raw, mm2) => {
  expect(parseSize(raw)).toEqual({ ok: true, value: { unit: 'mm2', mm2, raw } });
});

test.each([
  ['AWG 18', 18],
  ['18 AWG', 18],
  ['18awg', 18],
  ['awg#18', 18],
  ['0 AWG', 0],
  ['00 AWG', -1],
  ['AWG 0000', -3],
  ['4/0 AWG', -3],
  ['AWG 1/0', 0],
  ['4/0', -3],
  ['40 AWG', 40],
])('%j is gauge %i', (raw, awg) => {
  expect(parseSize(raw)).toEqual({ ok: true, value: { unit: 'awg', mm2: awgToMm2(awg), awg, raw } });
});

test('a bare number is read only with a unit to fall back on', () => {
  expect(parseSize('18')).toEqual({
    ok: false,
    problem: 'size `18` has no unit',
    help: 'say which: `18 mm2` or `AWG 18`',
  });
  expect(parseSize('0.5')).toMatchObject({ help: 'say which: `0.5 mm2`' });
  expect(parseSize('0.5', 'mm2')).toMatchObject({ ok: true, value: { unit: 'mm2', mm2: 0.5 } });
  expect(parseSize('18', 'awg')).toMatchObject({ ok: true, value: { unit: 'awg', awg: 18 } });
  expect(parseSize('18 AWG', 'mm2')).toMatchObject({ ok: true, value: { unit: 'awg', awg: 18 } });
});

test.each([
  ['', 'no size is given'],
  ['0 mm2', 'a conductor of `0 mm2` is not possible'],
  ['1001 mm2', 'a conductor of `1001 mm2` is not possible'],
  ['-1 mm2', '`-1` is not a plain number'],
  ['1E2 mm2', '`1E2` is in scientific form, as spreadsheets make it'],
  ['1.00E+02', '`1.00E+02` is in scientific form, as spreadsheets make it'],
  ['1,500 mm2', 'the comma in `1,500` may be a decimal comma or may separate thousands'],
  ['1.234,5 mm2', '`1.234,5` is not a plain number'],
  ['0.5 mm', '`0.5 mm` is a length or a diameter, not a cross-section'],
  ['18 ga', '`ga` is not a unit of conductor size'],
  ['2x0.5 mm2', '`x0.5 mm2` is not a unit of conductor size'],
  ['AWG 41', 'gauge `41` is outside 4/0 to 40'],
  ['AWG 5/0', '`5/0` is not a wire gauge'],
  ['AWG 00000', '`00000` is not a wire gauge'],
  ['AWG 18.5', '`18.5` is not a wire gauge'],
  ['AWG -1', '`-1` is not a wire gauge'],
  ['thick', '`thick` is not a conductor size'],
  ['9'.repeat(41), `\`${'9'.repeat(41)}\` is too long for a size`],
])('%j is refused', (raw, problem) => {
  expect(parseSize(raw)).toMatchObject({ ok: false, problem });
});
