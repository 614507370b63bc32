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

  it('counts the seal of a joint on one of its ends, and taking off a tap', () => {
    const taken = busKit({ released: false }).replace(
      '  - { do: place, device: MC }',
      '  - { do: remove tap, tap: T2 }\n  - { do: place, device: MC }',
    );
    // Each wire is told once, at its first step, so the run is left out of the circuit to see the tap alone.
    const only = taken
      .replace('wires: [bus high, bus low]', 'wires: [bus low]')
      .replace('is: bus pair', 'is: sensor');
    const plain = only.replace(/ {6}stub limit[\s\S]*?terminators: \[end A, end B\]\n/, '');
    const steps = verdictOf(plain).findings.filter(({ kind }) => kind === 'special-touched');
    expect(steps.map(({ step }) => step)).toEqual([3]);
  });
});
