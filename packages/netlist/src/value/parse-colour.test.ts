import { expect, test } from 'vitest';
import { processorTime } from '../../../../tests/support/processor-time.ts';
import { parseColour } from './parse-colour.ts';

test.each([
  ['RD', 'RD'],
  [' rd ', 'RD'],
  ['RD/BU', 'RD BU'],
  ['RD-BK', 'RD BK'],
  ['BK/RD', 'BK RD'],
  ['RDBU', 'RD BU'],
  ['GNYE', 'GN YE'],
  ['gn ye', 'GN YE'],
  ['YE/GN', 'YE GN'],
  ['red', 'RD'],
  ['Red/Blue', 'RD BU'],
  ['red with black stripe', 'RD BK'],
  ['red with a black tracer', 'RD BK'],
  ['black stripe on red', 'RD BK'],
  ['Black Stripe On Red', 'RD BK'],
  ['Red With Light Blue Tracer', 'RD BU'],
  ['red with black and white stripes', 'RD BK WH'],
  ['white green', 'WH GN'],
  ['light blue', 'BU'],
  ['light-blue/red', 'BU RD'],
  ['dark blue', 'BU'],
  ['gray', 'GY'],
  ['gold', 'GD'],
  ['purple', 'VT'],
  ['BLK/WHT', 'BK WH'],
  ['tan', 'TN'],
  ['RDWHBU', 'RD WH BU'],
])('%j is %s, base first', (raw, codes) => {
  expect(parseColour(raw)).toEqual({ ok: true, value: { codes: codes.split(' '), raw } });
});

test.each([
  ['', 'no colour is given', /RD\/BU/],
  ['/', 'no colour is given', /RD/],
  ['B', 'colour `B` is not clear', /`BK` or `BN` or `BU`/],
  ['R', 'colour `R` is not clear', /`RD`/],
  ['gr', 'colour `gr` is not clear', /`GY` or `GN`/],
  ['RD/sw', 'colour `sw` is not clear', /`BK`/],
  ['mauve', 'unknown colour `mauve`', /IEC 60757/],
  ['RDXX', 'unknown colour `RDXX`', /IEC 60757/],
  ['RD/RD', '`RD/RD` names one colour twice', /base colour first/],
  ['light green', 'IEC 60757 has no code for the shade `light` of `green`', /note/],
  ['light', 'IEC 60757 has no code for the shade `light` of ``', /note/],
  ['RD WH BU BK GN', '`RD WH BU BK GN` names 5 colours, a conductor has at most 4', /RD/],
  ['BK+BN', '`BK+BN` lists the colours of several cores', /row/],
  ['black stripe', 'it is not clear which colour is the base in `black stripe`', /base/],
  ['red stripe black', 'it is not clear which colour is the base in `red stripe black`', /base/],
  ['stripe on red', 'it is not clear which colour is the base in `stripe on red`', /base/],
  ['red stripe on', 'it is not clear which colour is the base in `red stripe on`', /base/],
  ['__proto__', 'unknown colour `proto`', /IEC/],
  ['constructor', 'unknown colour `constructor`', /IEC/],
])('%j is refused', (raw, problem, help) => {
  expect(parseColour(raw)).toEqual({ ok: false, problem, help: expect.stringMatching(help) });
});

test('a text of megabytes is refused at once', () => {
  const taken = processorTime();
  expect(parseColour('RD/'.repeat(3_000_000)).ok).toBe(false);
  expect(taken()).toBeLessThan(100);
});
