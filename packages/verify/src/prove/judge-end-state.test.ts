import { describe, expect, it } from 'vitest';
import { asFound, bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf } from '../../../../tests/support/verdict-of.ts';

const device = (name: string, more = ''): readonly string[] => [
  `${name}: { cavities: 1..1, into: ${name}D${more} }`,
  `${name}D: { device: yes, cavities: 1..1, source: { 1: never } }`,
];

describe('connectors at the end', () => {
  it('are plugged as found, one finding for a pair, under the half that is no device', () => {
    const finding = findingOf(
      bench({ work: [off, 'do: unplug, connector: M', on], wanted: asFound }),
      'left-unplugged',
    );
    expect(finding).toMatchObject({
      obligation: 7,
      step: 2,
      points: ['K1'],
      culprits: [2],
      message: 'K1 is left unplugged',
      witness: { is: 'state', what: 'K1', expected: 'plugged', found: 'unplugged' },
    });
    expect(
      linesOf(
        bench({
          work: [
            off,
            'do: unplug, connector: K1',
            'do: plug, connector: K1',
            'do: unplug, connector: K1',
            on,
          ],
          wanted: asFound,
        }),
      ),
    ).toEqual(['left-unplugged@4 K1']);
  });

  it('of the kit are plugged, and no step is to blame', () => {
    const kit = bench({ bagConnectors: device('B'), work: ['do: place, device: BD'], wanted: asFound });
    expect(linesOf(kit)).toEqual(['left-unplugged@- B']);
  });

  it('of two harness halves are told by the first', () => {
    const connectors = ['X1: { cavities: 1..1, into: X2 }', 'X2: { cavities: 1..1 }'];
    expect(linesOf(bench({ connectors, work: ['do: unplug, connector: X2'], wanted: asFound }))).toEqual([
      'left-unplugged@1 X1',
    ]);
  });

  it('found unplugged may stay so', () => {
    const connectors = ['X1: { cavities: 1..1, into: X2, plugged: no }', 'X2: { cavities: 1..1 }'];
    expect(linesOf(bench({ connectors, work: ['do: fasten, wire: lamp'], wanted: asFound }))).toEqual([]);
  });

  it('are left unplugged where intent says so', () => {
    const wanted = [...asFound, 'left unplugged: X1'];
    expect(linesOf(bench({ connectors: device('X1'), work: ['do: unplug, connector: X1'], wanted }))).toEqual(
      [],
    );
    expect(
      findingOf(
        bench({ connectors: device('X1'), work: ['do: fasten, wire: lamp'], wanted }),
        'still-plugged',
      ),
    ).toMatchObject({
      obligation: 7,
      step: null,
      points: ['X1'],
      message: 'X1 shall be left unplugged and is plugged',
    });
    expect(
      linesOf(
        bench({
          connectors: device('X1'),
          work: ['do: unplug, connector: X1', 'do: plug, connector: X1'],
          wanted,
        }),
      )[0],
    ).toMatch(/^still-plugged@2 X1/);
    expect(
      linesOf(
        bench({
          connectors: device('X1'),
          work: ['do: unplug, connector: X1'],
          wanted: [...asFound, 'left unplugged: X1D'],
        }),
      ),
    ).toEqual([]);
  });
});

describe('locks and latches at the end', () => {
  it('are closed, whoever opened them', () => {
    const own = { connectors: device('X', ', lock: closed, latch: closed') };
    expect(
      findingOf(bench({ ...own, work: ['do: open lock, connector: X'], wanted: asFound }), 'lock-left-open'),
    ).toMatchObject({
      obligation: 7,
      step: 1,
      points: ['X secondary lock'],
      message: 'X secondary lock is left open',
      witness: { is: 'state', expected: 'closed', found: 'open' },
    });
    expect(linesOf(bench({ ...own, work: ['do: open latch, connector: X'], wanted: asFound }))).toEqual([
      'lock-left-open@1 X position latch',
    ]);
    expect(
      linesOf(
        bench({
          ...own,
          work: ['do: open lock, connector: X', 'do: close lock, connector: X'],
          wanted: asFound,
        }),
      ),
    ).toEqual([]);
    expect(
      linesOf(
        bench({ connectors: device('X', ', lock: open'), work: ['do: fasten, wire: lamp'], wanted: asFound }),
      ),
    ).toEqual(['lock-left-open@- X secondary lock']);
  });

  it('of a pair left unplugged: the latch stays open, the lock does not', () => {
    const own = { connectors: device('X', ', lock: closed, latch: closed') };
    const wanted = [...asFound, 'left unplugged: X'];
    expect(
      linesOf(bench({ ...own, work: ['do: open latch, connector: X', 'do: unplug, connector: X'], wanted })),
    ).toEqual([]);
    expect(
      linesOf(
        bench({
          ...own,
          work: ['do: open latch, connector: X', 'do: unplug, connector: X', 'do: open lock, connector: X'],
          wanted,
        }),
      ),
    ).toEqual(['lock-left-open@3 X secondary lock']);
  });
});

describe('supplies at the end', () => {
  it('are on again, each of them', () => {
    const supplies = '{ battery: { at: BAT }, second: { at: G2 } }';
    const kit = bench({ supplies, work: [off, 'do: disconnect, supply: second', on], wanted: asFound });
    expect(findingOf(kit, 'supply-left-off')).toMatchObject({
      obligation: 7,
      step: 2,
      points: ['second'],
      message: 'second is left disconnected',
      witness: { is: 'state', what: 'second', expected: 'connected', found: 'disconnected' },
    });
    expect(linesOf(bench({ work: [off, on, off], wanted: asFound }))).toEqual(['supply-left-off@3 battery']);
  });
});

describe('parts at the end', () => {
  const parts = ['TIE: { is: tie }', 'P: { is: plug }'];
  const tie = 'do: fasten, wire: lamp, with: TIE';

  it('are used, every one', () => {
    expect(linesOf(bench({ parts, bagParts: 'TIE: 2', work: [tie, tie], wanted: asFound }))).toEqual([]);
    expect(
      findingOf(bench({ parts, bagParts: 'TIE: 3', work: [tie], wanted: asFound }), 'part-unused'),
    ).toMatchObject({
      obligation: 7,
      step: null,
      points: ['TIE'],
      message: 'TIE stays in the bag: 3 there, 1 used',
      witness: { is: 'count', part: 'TIE', inBag: 3, used: 1 },
    });
    expect(
      linesOf(bench({ parts, bagParts: 'TIE: 0, P: 1', work: ['do: fasten, wire: lamp'], wanted: asFound })),
    ).toEqual(['part-unused@- P']);
  });

  it('are in the bag when they are asked for', () => {
    expect(
      findingOf(
        bench({
          parts,
          bagParts: 'TIE: 1',
          work: [tie, 'do: prove dead, at: G2', tie, tie],
          wanted: asFound,
        }),
        'part-missing',
      ),
    ).toMatchObject({
      obligation: 7,
      step: 3,
      culprits: [3],
      message: 'TIE runs out: 1 in the bag, 3 needed',
      witness: { is: 'count', part: 'TIE', inBag: 1, used: 3 },
    });
    expect(linesOf(bench({ parts, work: [tie], wanted: asFound }))).toEqual(['part-missing@1 TIE']);
  });

  it('that came out may go in again, but not before', () => {
    const connectors = ['X: { cavities: 1..2, blanked: 1, source: { 1..2: never } }'];
    const out = 'do: remove plug, cavity: K5:1';
    const plugIn = (cavity: string): string => `do: fit plug, cavity: ${cavity}, with: P`;
    const wanted = [...asFound, 'changed: [K5:1, K5:2, X:2]'];
    expect(
      linesOf(
        bench({ parts, connectors, bagParts: 'P: 1', work: [plugIn('K5:1'), out, plugIn('K5:2')], wanted }),
      ),
    ).toEqual([]);
    expect(
      linesOf(
        bench({ parts, connectors, bagParts: 'P: 1', work: [plugIn('K5:1'), plugIn('K5:2'), out], wanted }),
      ),
    ).toEqual(['part-missing@2 P']);
  });

  it('are kit wires and kit devices as well', () => {
    expect(
      findingOf(
        bench({
          bagWires: ['b: { from: A, to: B, size: 1 mm2 }'],
          work: ['do: fasten, wire: lamp'],
          wanted: asFound,
        }),
        'part-unused',
      ),
    ).toMatchObject({
      points: ['b'],
      witness: { is: 'count', part: 'b', inBag: 1, used: 0 },
    });
    expect(
      linesOf(
        bench({
          bagWires: ['b: { from: A, to: B, size: 1 mm2, from terminal: T }'],
          work: ['do: fasten, wire: lamp'],
          wanted: asFound,
        }),
      ),
    ).toEqual(['part-unused@- b']);
    const finding = findingOf(
      bench({
        bagConnectors: ['BD: { device: yes, cavities: 1..1, source: { 1: never } }'],
        work: ['do: fasten, wire: lamp'],
        wanted: asFound,
      }),
      'part-unused',
    );
    expect(finding).toMatchObject({
      points: ['BD'],
      witness: { is: 'count', part: 'BD', inBag: 1, used: 0 },
    });
  });
});

describe('jumpers at the end', () => {
  it('are off again', () => {
    const fit = 'do: fit jumper, between: [K5:1, K5:2], as: LOOP, serves: lamp';
    expect(linesOf(bench({ work: [fit, 'do: remove jumper, jumper: LOOP'], wanted: asFound }))).toEqual([]);
    expect(linesOf(bench({ work: [fit], wanted: asFound }))).toEqual([
      'jumper-left@1 LOOP <- wrong-connection@1 K5:1, K5:2',
    ]);
    expect(findingOf(bench({ work: [fit], wanted: asFound }), 'jumper-left')).toMatchObject({
      obligation: 7,
      message: 'jumper LOOP is still fitted',
      witness: { is: 'state', what: 'LOOP', expected: 'removed', found: 'still fitted' },
    });
  });
});
