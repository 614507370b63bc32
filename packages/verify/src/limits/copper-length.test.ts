import { expect, it } from 'vitest';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

/** A second lamp on a tap one metre along a feed of four metres. */
const kit = (at: string): string => `
kit: lamp on a tap
revision: A
electrical:
  limits: own
  own limits: { source: test, drop: 10 %, lead to protector: 10 m }
  material: copper
  strands: formula
  temperature: 20 C
  joints: 0 ohm
parts:
  TAP: { is: tap, run: 0.5..4 mm2, branch: 0.5..4 mm2, zone: dry }
  R: { is: terminal, size: 0.5..4 mm2, ring: yes }
stock:
  zone: dry
  supplies: { battery: { at: BAT, return: GND, volts: 12 V } }
  studs: { BAT: { source: always }, GND: { source: never } }
  connectors:
    K1: { cavities: 1..2, into: L1 }
    L1: { device: yes, cavities: 1..2, elements: [{ is: load, name: first, from: 1, to: 2, power: 12 W, volts: 12 V }] }
  wires:
    run: { from: BAT, to: K1:1, size: 1 mm2, length: 4 m, capacity: 9 A }
    back: { from: K1:2, to: GND, size: 1 mm2, length: 4 m, capacity: 9 A }
bag:
  zone: dry
  connectors:
    K2: { cavities: 1..2, into: L2 }
    L2: { device: yes, cavities: 1..2, elements: [{ is: load, name: second, from: 1, to: 2, power: 24 W, volts: 12 V }] }
  wires:
    branch: { from: A, to: K2:1, size: 1 mm2, length: 2 m, capacity: 9 A }
    own return: { from: K2:2, to: ring, size: 1 mm2, length: 3 m, capacity: 9 A, to terminal: R }
  parts: { TAP: 1 }
work:
  - { do: disconnect, supply: battery }
  - { do: tap, run: run, at: ${at}, branch: branch@A, with: TAP, as: T1 }
  - { do: attach, end: own return@ring, stud: GND }
  - { do: place, device: L2 }
  - { do: plug, connector: K2 }
  - { do: reconnect, supply: battery }
wanted:
  additions:
    feed: { to: BAT, add: [K2:1] }
    return: { to: GND, add: [K2:2] }
  powered: { second: always }
`;

it.each([
  ['1 m from BAT', 1],
  ['1 m from K1:1', 3],
])('a tap %s shares only the metal up to it', (at, shared) => {
  const verdict = verdictOf(kit(at));
  expect(verdict.findings.map((one) => one.message)).toEqual([]);
  const drops = verdict.judgement.electrical?.limits.drops ?? [];
  const row = (name: string): (typeof drops)[number] | undefined => drops.find((one) => one.circuit === name);
  // Annealed copper is 1/58 ohm mm2/m (the International Annealed Copper Standard). 1 A and 2 A share the first part, each has the rest alone.
  const ohm = 1 / 58;
  expect(row('first')?.dropVolt).toBeCloseTo(ohm * (shared * 3 + (4 - shared) * 1 + 4 * 1), 5);
  expect(row('second')?.dropVolt).toBeCloseTo(ohm * (shared * 3 + 2 * 2 + 3 * 2), 5);
  expect(row('first')?.lengthMm).toBe(8000);
  expect(row('second')?.lengthMm).toBe(shared * 1000 + 5000);
});

it('names the two pieces of a tapped wire apart, and what each takes', () => {
  const drops = verdictOf(kit('1 m from BAT')).judgement.electrical?.limits.drops ?? [];
  const wires = drops.map(({ circuit, parts }) => [
    circuit,
    ...parts.flatMap(({ what, volts }) =>
      what.startsWith('wire ') ? [`${what}: ${(58 * volts).toFixed(3)}`] : [],
    ),
  ]);
  expect(wires).toEqual([
    [
      'first',
      'wire run from run@BAT to T1: 3.000',
      'wire run from T1 to run@K1:1: 3.000',
      'wire back: 4.000',
    ],
    ['second', 'wire run from run@BAT to T1: 3.000', 'wire branch: 4.000', 'wire own return: 6.000'],
  ]);
});
