import { describe, expect, it } from 'vitest';
import { type BusKit, busKit } from '../../../../tests/support/bus-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

function touched(kit: BusKit): readonly string[] {
  return verdictOf(busKit(kit)).findings.flatMap(({ kind, step, points, consequences }) => [
    ...(kind === 'special-touched' ? [`${points.join()} at ${step}`] : []),
    ...consequences.flatMap((one) =>
      one.kind === 'special-touched' ? [`${one.points.join()} at ${one.step}`] : [],
    ),
  ]);
}

describe('judgeSpecial', () => {
  it('lets a circuit be worked on that someone released by name and document', () => {
    expect(touched({ released: true })).toEqual([]);
  });

  it.each(['bus pair', 'restraint system', 'safety loop', 'sensor', 'high voltage'])(
    'refutes taps on the wires of a %s that nobody released',
    (is) => {
      expect(touched({ released: false, ...(is === 'bus pair' ? {} : { is }) })).toEqual([
        'bus high at 2',
        'bus low at 3',
      ]);
    },
  );

  it.each([
    ['a probe', ['{ do: prove dead, at: KB:1 }'], 'bus high at 2'],
    ['a probe on the pin behind it', ['{ do: prove dead, at: TB:2 }'], 'bus low at 2'],
    ['unplugging', ['{ do: unplug, connector: KB }', '{ do: plug, connector: KB }'], 'bus high at 2'],
    [
      'unplugging the other half',
      ['{ do: unplug, connector: TB }', '{ do: plug, connector: TB }'],
      'bus high at 2',
    ],
    ['fastening', ['{ do: fasten, wire: bus low }'], 'bus low at 2'],
  ])('counts %s as touching', (_, steps, expected) => {
    expect(touched({ released: false, steps })).toContain(expected);
    expect(touched({ steps })).toEqual([]);
  });

  it.each([
    ['taking off a tap that was found on it', 'remove tap, tap: T0', 'run'],
    ['sealing a splice that one of its ends is in', 'seal, joint: S0', 'far'],
  ])('counts %s', (_, step, wire) => {
    const text = `
kit: an old tap comes off
revision: A
parts: { TAP: { is: tap }, TUBE: { is: tube } }
stock:
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors: { K1: { cavities: 1..8 } }
  splices: { S0: { sealed: no } }
  taps: { T0: { on: run, at: 30 cm from K1:1, with: TAP } }
  wires:
    run: { from: K1:1, to: K1:2, length: 1 m }
    branch: { from: T0, to: K1:3 }
    near: { from: K1:4, to: S0 }
    far: { from: S0, to: K1:5 }
    other: { from: K1:6, to: K1:7 }
  special: { speed: { is: sensor, wires: [${wire}] } }
bag: { parts: { TUBE: 1 } }
work: [{ do: ${step} }]
wanted: { retired: [{ wire: other }] }
`;
    const all = verdictOf(text).findings.flatMap((one) => [one, ...one.consequences]);
    expect(all.filter(({ kind }) => kind === 'special-touched').map(({ points }) => points.join())).toEqual([
      wire,
    ]);
  });

  describe('a circuit of which one wire is named, that goes on behind a plug and a splice', () => {
    const work = (step: string): readonly string[] => {
      const text = `
kit: behind a plug
revision: A
stock:
  supplies: { battery: { at: BAT, return: GND } }
  studs: { BAT: { source: always }, GND: { source: never, chassis: yes } }
  splices: { S1: {} }
  connectors:
    K1: { cavities: 1..2, into: K2 }
    K2: { cavities: 1..2 }
    K3: { cavities: 1..4, into: M }
    M: { device: yes, cavities: 1..4 }
  wires:
    squib: { from: K3:1, to: K1:1 }
    beyond: { from: K2:1, to: S1 }
    far: { from: S1, to: K3:2 }
    ground: { from: S1, to: GND }
    lamp ground: { from: K3:3, to: GND }
    other: { from: K1:2, to: K3:4 }
  special: { driver: { is: restraint system, wires: squib } }
bag: { wires: { w: { from: A, to: B } } }
work: [{ do: ${step} }]
wanted: { retired: [{ wire: other }] }
`;
      const all = verdictOf(text).findings.flatMap((one) => [one, ...one.consequences]);
      return all.filter(({ kind }) => kind === 'special-touched').map(({ points }) => points.join());
    };

    it('is all one circuit up to the chassis', () => {
      expect(work('prove dead, at: K2:1')).toEqual(['squib']);
      expect(work('prove dead, at: M:2')).toEqual(['far']);
      expect(work('fasten, wire: beyond')).toEqual(['beyond']);
      expect(work('fasten, wire: ground')).toEqual(['ground']);
      expect(work('unplug, connector: K3')).toEqual(['squib']);
    });

    it('is not what else hangs on the chassis, and not the pin beside it', () => {
      expect(work('prove dead, at: GND')).toEqual([]);
      expect(work('fasten, wire: lamp ground')).toEqual([]);
      expect(work('prove dead, at: K2:2')).toEqual([]);
    });
  });
});
