import { Rework } from '@loomproof/netlist';
import { traceCavity } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { asFound, bench } from '../support/bench-kit.ts';
import { jobOf } from '../support/kit-text.ts';
import { linesOf, verdictOf } from '../support/verdict-of.ts';

/** The lamp wire of the bench with a tap on it as found, from which a side lamp at K5:1 is fed. */
function tapped(work: readonly string[], wanted: readonly string[], extra = ''): string {
  return bench({
    splices: `}\n  taps: { TAP1: { on: lamp, at: 30 cm from K1:2, with: TAP, zone: dry }`,
    wires: [`side: { from: TAP1, to: K5:1, size: 0.5 mm2, colour: GY, length: 20 cm }`, extra].filter(
      Boolean,
    ),
    bagParts: `CAP: ${work.filter((row) => row.includes('CAP')).length}`,
    work: ['do: disconnect, supply: battery', ...work, 'do: reconnect, supply: battery'],
    wanted,
  });
}

const unplug = ['do: unplug, connector: K1'];
const plug = ['do: plug, connector: K1'];

describe('a tap that is there as found', () => {
  it('joins its branch to the run before and after', () => {
    const text = tapped(['do: fasten, wire: lamp'], ['circuits: { lamp: [K1:2, K2:1, K5:1] }']);
    expect(linesOf(text)).toEqual([]);
    expect(verdictOf(text).verdict).toBe('proved');
    const proof = verdictOf(text).circuits[0]?.proof?.hops() ?? [];
    expect(new Set(proof.map((hop) => hop.made))).toEqual(new Set(['stock']));
    expect(proof.filter((hop) => hop.from === 'TAP1' || hop.to === 'TAP1')).toHaveLength(3);
    const trace = traceCavity(new Rework(jobOf(text)), 'K5:1');
    expect([...(trace?.before.places ?? [])].sort()).toEqual(['K1:2', 'K2:1', 'L:1', 'M:2']);
  });

  it('makes a circuit that leaves its branch out an input error', () => {
    const text = tapped(['do: fasten, wire: lamp'], asFound);
    expect(() => verdictOf(text)).toThrow(/K5:1/);
  });

  it('is not passed through unseen: taking it off opens its branch and leaves a wound', () => {
    const found = linesOf(tapped(['do: remove tap, tap: TAP1'], ['circuits: { horn: [K1:3, K3:1] }']));
    expect(found.map((line) => line.split(' ')[0])).toMatchInlineSnapshot(`
      [
        "net-split@2",
        "bare-end-live@3",
      ]
    `);
  });

  it('comes off for good with its wound and its branch covered, where intent says so', () => {
    const work = [
      ...unplug,
      'do: remove tap, tap: TAP1',
      'do: cover, end: TAP1, with: CAP',
      'do: withdraw, cavity: K5:1',
      'do: remove off-cut, wire: side',
      ...plug,
    ];
    const wanted = ['circuits: { lamp: [K1:2, K2:1] }', 'retired: [{ wire: side }, { cavity: K5:1 }]'];
    expect(linesOf(tapped(work, wanted))).toEqual([]);
  });

  it('is on a run that intent must name before it comes off, though no net changes', () => {
    const text = (more: string): string =>
      tapped(
        ['do: remove tap, tap: TAP1', 'do: cover, end: TAP1, with: CAP', 'do: remove off-cut, wire: side'],
        ['circuits: { horn: [K1:3, K3:1] }', 'retired: [{ wire: side }]', more].filter(Boolean),
      ).replace('from: TAP1, to: K5:1,', 'from: TAP1, to: A, to cover: CAP,');
    expect(linesOf(text('')).map((line) => line.split(' ')[0])).toEqual(['touched-unnamed@2']);
    expect(linesOf(text('changed: [lamp]'))).toEqual([]);
  });

  it('goes with the piece it is on when the run is cut on either side of it', () => {
    const cut = (at: string): readonly string[] => [
      ...unplug,
      `do: cut, wire: lamp, at: ${at}, leaves: [near, far]`,
      'do: cover, end: near@cut, with: CAP',
      'do: cover, end: far@cut, with: CAP',
      ...plug,
    ];
    const wanted = (side: string, stubs: string): readonly string[] => [
      `additions: { side: { to: K1:2, take: [${side}] } }`,
      `stubs: [${stubs}]`,
    ];
    const live = '{ of: lamp, at: K1:2, is: live }';
    expect(
      linesOf(tapped(cut('50 cm from K1:2'), wanted('K2:1', `${live}, { of: lamp, at: K2:1, is: live }`))),
    ).toEqual([]);
    expect(
      linesOf(
        tapped(cut('20 cm from K1:2'), [
          'additions: { low: { to: K2:1, take: [K1:2] } }',
          `stubs: [${live}, { of: lamp, at: K2:1, is: live }]`,
        ]),
      ),
    ).toEqual([]);
  });
});

describe('a stub that is there as found', () => {
  const stub = (cover: string): string => `old: { from: K5:2, to: A, to cover: ${cover}, size: 0.5 mm2 }`;

  it('stands where intent says so, and only then', () => {
    const wanted = ['circuits: { lamp: [K1:2, K2:1, K5:1] }'];
    const said = [...wanted, 'stubs: [{ of: old, at: K5:2, is: dead }]'];
    expect(linesOf(tapped(['do: fasten, wire: lamp'], said, stub('CAP')))).toEqual([]);
    expect(
      linesOf(tapped(['do: fasten, wire: lamp'], wanted, stub('CAP'))).map((line) => line.split(' ')[0]),
    ).toMatchInlineSnapshot(`
      [
        "stub-undeclared@-",
      ]
    `);
    expect(
      linesOf(tapped(['do: fasten, wire: lamp'], said, stub('none'))).map((line) => line.split(' ')[0]),
    ).toMatchInlineSnapshot(`
      [
        "bare-end@-",
      ]
    `);
  });
});
