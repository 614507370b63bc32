import { expect, test } from 'vitest';
import { awgToMm2 } from './awg-to-mm2.ts';
import { parseRange } from './parse-range.ts';

test.each([
  ['0.5..1.5 mm2', 'mm2', 0.5, 1.5],
  ['1,5 mm²..0,5 mm²', 'mm2', 0.5, 1.5],
  ['0.5 mm2 .. 1.5', 'mm2', 0.5, 1.5],
  ['0.5 - 1.5 mm2', 'mm2', 0.5, 1.5],
  ['0.5–1.5 mm2', 'mm2', 0.5, 1.5],
  ['0.5…1.5 mm2', 'mm2', 0.5, 1.5],
  ['0.5 to 1.5 mm2', 'mm2', 0.5, 1.5],
  ['22..18 AWG', 'mm2', awgToMm2(22), awgToMm2(18)],
  ['18..22 AWG', 'mm2', awgToMm2(22), awgToMm2(18)],
  ['AWG 22..18', 'mm2', awgToMm2(22), awgToMm2(18)],
  ['AWG 2..4/0', 'mm2', awgToMm2(2), awgToMm2(-3)],
  ['22 AWG..1.5 mm2', 'mm2', awgToMm2(22), 1.5],
  ['1.2..2.1 mm', 'mm', 1.2, 2.1],
  ['1 cm..20 mm', 'mm', 10, 20],
  ['1..1 mm', 'mm', 1, 1],
] as const)('%j is a range in %s from %f to %f', (raw, unit, min, max) => {
  expect(parseRange(raw)).toEqual({ ok: true, value: { unit, min, max, raw } });
});

test.each([
  ['', '`` is not a range'],
  ['0.5 mm2', '`0.5 mm2` is not a range'],
  ['..1.5 mm2', '`..1.5 mm2` is not a range'],
  ['0.5..', '`0.5..` is not a range'],
  ['1..2..3 mm', '`1..2..3 mm` is not a range'],
  ['0.5..1.5', 'range `0.5..1.5` has no unit that is known'],
  ['0.5..1.5 kg', 'range `0.5..1.5 kg` has no unit that is known'],
  ['0.5 mm..1.5 mm2', 'range `0.5 mm..1.5 mm2` begins with one kind of unit and ends with another'],
  ['22..50 AWG', 'gauge `50` is outside 4/0 to 40'],
  ['x..1 mm', 'range `x..1 mm` has no unit that is known'],
  ['0..1 mm2', 'a conductor of `0 mm2` is not possible'],
  ['1'.repeat(81), `\`${'1'.repeat(60)}…\` is too long for a range`],
])('%j is refused', (raw, problem) => {
  expect(parseRange(raw)).toMatchObject({ ok: false, problem });
});
