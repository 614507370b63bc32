import { formatColour } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { complaintsOf, jobOf } from '../support/kit-text.ts';

/*
 * Codes of IEC 60757 and their colours, in the order of its table: GOST 28763-90, which adopts IEC 757:1983,
 * https://profsector.com/reference-data/show/25/standartnyie-bukvennyie-kodyi-oboznacheniya-tsvetov , and Wikipedia DE
 * "Farb-Kurzzeichen", https://de.m.wikipedia.org/wiki/Farb-Kurzzeichen .
 */
const codes: readonly (readonly [string, string])[] = [
  ['BK', 'black'],
  ['BN', 'brown'],
  ['RD', 'red'],
  ['OG', 'orange'],
  ['YE', 'yellow'],
  ['GN', 'green'],
  ['BU', 'blue'],
  ['VT', 'violet'],
  ['GY', 'grey'],
  ['WH', 'white'],
  ['PK', 'pink'],
  ['GD', 'gold'],
  ['TQ', 'turquoise'],
  ['SR', 'silver'],
];

function kit(colour: string): string {
  return `
kit: one wire
revision: A
stock:
  connectors: { K1: { cavities: 1..2 } }
  wires: { a: { from: K1:1, to: K1:2, colour: '${colour}' } }
work:
  - { do: fasten, wire: a }
wanted:
  retired: [{ wire: a }]
`;
}

function read(colour: string): string {
  const wire = jobOf(kit(colour)).wires[0];
  return wire?.colour == null ? 'none' : formatColour(wire.colour);
}

describe('colours of IEC 60757', () => {
  it.each(codes)('%s is %s', (code, name) => {
    expect(read(code)).toBe(code);
    expect(read(name)).toBe(code);
  });

  // Same source, rule for one item of several colours: codes joined without separator.
  it('reads codes joined without separator as one conductor of several colours', () => {
    expect(read('RDBU')).toBe('RD/BU');
    expect(read('BKRDWH')).toBe('BK/RD/WH');
  });

  // IEC 60757:2021 clause 5.1, excerpt https://freedocumentsdownload.com/?p=269 : green and yellow only as GNYE.
  it('writes green-and-yellow as GNYE', () => {
    expect(read('GNYE')).toBe('GNYE');
    expect(read('green/yellow')).toBe('GNYE');
  });

  // Same source: a plus sign stands between the cores of a cable, so it is no colour of one conductor.
  it('refuses the colours of several cores as the colour of one', () => {
    expect(complaintsOf(kit('BK+BK+BN+BU+GNYE'))).toEqual([
      '6:47 colour: `BK+BK+BN+BU+GNYE` lists the colours of several cores (give each core a row of its own)',
    ]);
  });

  // Codes of DIN 47002, from the same page as above: each stands for another colour in IEC 60757 or for none.
  it.each(['sw', 'br', 'rt', 'ge', 'gr', 'ws', 'bl', 'vi'])('refuses the older code %s', (old) => {
    expect(complaintsOf(kit(old))).toHaveLength(1);
  });
});
