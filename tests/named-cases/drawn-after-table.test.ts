import { describe, expect, it } from 'vitest';
import { complaintsOf } from '../support/kit-text.ts';
import { changed, judged, linesOf } from '../support/verdict-of.ts';

/** The designer also gives the pin table as drawn after the work: a second witness beside the steps. */
const kit = `
kit: lamp wire renewed
revision: A
parts:
  T: { is: terminal, size: 0.5..1 mm2 }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..3, into: M, accepts: [T] }
    M: { device: yes, cavities: 1..3, source: { 1: never, 2..3: driven } }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2, colour: RD }
bag:
  zone: dry
  connectors:
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    lamp: { from: A, to: K2:1, size: 0.5 mm2, colour: GY, from terminal: T }
work:
  - { do: disconnect, supply: battery }
  - { do: unplug, connector: K1 }
  - { do: insert, end: lamp@A, cavity: K1:2 }
  - { do: plug, connector: K1 }
  - { do: place, device: L }
  - { do: plug, connector: K2 }
  - { do: reconnect, supply: battery }
wanted:
  circuits: { lamp: [K1:2, K2:1] }
  after table: after.csv
`;
const table = `wire,from,to,size,colour
main,BAT,K1:1,2.5 mm2,RD
lamp,K1:2,K2:1,0.5 mm2,GY
`;
const drawn = (text: string): ReadonlyMap<string, string> => new Map([['after.csv', text]]);

describe('the table drawn after the work', () => {
  it('agrees with the work', () => {
    expect(judged(kit, drawn(table))).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('differs in a size: row and wire are named', () => {
    const verdict = linesOf(kit, drawn(changed(table, '0.5 mm2', '0.75 mm2')));
    expect(verdict).toEqual(['drawing-differs@- lamp']);
  });

  it('differs in a colour', () => {
    expect(linesOf(kit, drawn(changed(table, 'mm2,GY', 'mm2,GN')))).toEqual(['drawing-differs@- lamp']);
  });

  it('differs in a net: the step is named that put the wire where it is', () => {
    expect(judged(kit, drawn(changed(table, 'K1:2', 'K1:3')))).toMatchObject({
      verdict: 'refuted',
      findings: ['drawing-differs@3'],
    });
  });

  it('differs where it leaves out a wire', () => {
    expect(judged(kit, drawn('wire,from,to\nlamp,K1:2,K2:1\n'))).toMatchObject({
      verdict: 'refuted',
      findings: ['drawing-differs@-'],
    });
  });

  it('is one cause with the work where the work is what is wrong', () => {
    const wrong = changed(kit, 'end: lamp@A, cavity: K1:2', 'end: lamp@A, cavity: K1:3');
    expect(judged(wrong, drawn(table))).toMatchObject({
      verdict: 'refuted',
      findings: ['wrong-connection@3'],
    });
  });

  it('is an input error where it is not there or names what nobody knows', () => {
    expect(complaintsOf(kit)).toEqual([
      '32:16 no-table: the table `after.csv` cannot be read (name a CSV file beside the kit file)',
    ]);
    expect(complaintsOf(kit, drawn(changed(table, 'K2:1', 'K9:1'))).join()).toContain('K9');
  });
});
