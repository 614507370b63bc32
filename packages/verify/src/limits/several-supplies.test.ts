import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { changed, verdictOf } from '../../../../tests/support/verdict-of.ts';

const kit = readFileSync('fixtures/two-outputs/kit.yaml', 'utf8');
const supply = '    battery: { at: BP, return: GC, volts: 12 V }\n';

function electricalWords(text: string): readonly string[] {
  return verdictOf(text)
    .obligations.filter(({ obligation }) => obligation >= 9)
    .map(({ obligation, verdict }) => `${obligation} ${verdict}`);
}

function missingOf(text: string, kind: string): string {
  return (
    verdictOf(text)
      .findings.find((one) => one.kind === kind)
      ?.points.join('; ') ?? ''
  );
}

describe('a second supply that the part does not hang on', () => {
  it.each([
    ['of other volts at the same return', 'second: { at: B2, return: GC, volts: 24 V }'],
    ['with a return of its own', 'second: { at: B2, return: G2, volts: 12 V }'],
  ])('%s changes nothing', (_, second) => {
    expect(electricalWords(kit)).toEqual(['9 proved', '10 proved']);
    const two = changed(
      changed(kit, supply, `${supply}    ${second}\n`),
      '  studs:\n',
      '  studs:\n    B2: { source: always }\n    G2: { source: never }\n',
    );
    expect(electricalWords(two)).toEqual(['9 proved', '10 proved']);
  });
});

/** Lamps of a 12 V and of a 24 V system that share a return wire; the kit brings the second lamp of each. */
const mixed = (
  more: { readonly at?: string; readonly return?: string; readonly lamp?: string } = {},
): string => `
kit: lamps of two systems
revision: A
electrical:
  limits: own
  own limits: { source: test, drop: 20 %, lead to protector: 10 m }
  material: copper
  strands: formula
  temperature: 20 C
  joints: 0 ohm
parts:
  R: { is: terminal, size: 0.5..4 mm2, ring: yes }
stock:
  zone: dry
  supplies:
    low: { at: B1, return: GND, volts: 12 V }
    high: { at: B2, return: ${more.return ?? 'GND'}, volts: 24 V }
  studs: { B1: { source: always }, B2: { source: always }, GND: { source: never }, G2: { source: never }, C: { source: never } }
  connectors:
    K1: { cavities: 1..2, into: L1 }
    L1: { device: yes, cavities: 1..2, elements: [{ is: load, name: old lamp, from: 1, to: 2, power: 12 W, volts: 12 V }] }
  wires:
    feed: { from: B1, to: K1:1, size: 1 mm2, length: 2 m }
    back: { from: K1:2, to: C, size: 1 mm2, length: 1 m }
    common: { from: C, to: GND, size: 1 mm2, length: 3 m }
bag:
  zone: dry
  connectors:
    K2: { cavities: 1..2, into: L2 }
    L2: { device: yes, cavities: 1..2, elements: [{ is: load, name: new lamp, from: 1, to: 2, ${more.lamp ?? 'power: 48 W, volts: 24 V'} }] }
  wires:
    high feed: { from: ring, to: K2:1, size: 1 mm2, length: 2 m, from terminal: R }
    high back: { from: K2:2, to: ring, size: 1 mm2, length: 1 m, to terminal: R }
work:
  - { do: disconnect, supply: low }
  - { do: disconnect, supply: high }
  - { do: attach, end: high feed@ring, stud: ${more.at ?? 'B2'} }
  - { do: attach, end: high back@ring, stud: C }
  - { do: place, device: L2 }
  - { do: plug, connector: K2 }
  - { do: reconnect, supply: low }
  - { do: reconnect, supply: high }
wanted:
  additions:
    feed: { to: ${more.at ?? 'B2'}, add: [K2:1] }
    back: { to: GND, add: [K2:2] }
  powered: { new lamp: always }
`;

describe('two supply voltages at one return', () => {
  it('are solved together: each lamp loses of its own volts what both make the shared wire lose', () => {
    const verdict = verdictOf(mixed());
    expect(verdict.findings.map((one) => one.message)).toEqual([]);
    const drops = verdict.judgement.electrical?.limits.drops ?? [];
    const row = (name: string): (typeof drops)[number] | undefined =>
      drops.find((one) => one.circuit === name);
    // 1/58 ohm mm2/m (International Annealed Copper Standard); 1 A and 2 A meet in the three metres of the shared wire.
    const ohm = 1 / 58;
    expect(row('old lamp')?.dropVolt).toBeCloseTo(ohm * (3 * 1 + 3 * 3), 6);
    expect(row('new lamp')?.dropVolt).toBeCloseTo(ohm * (3 * 2 + 3 * 3), 6);
    expect(row('old lamp')?.limitVolt).toBeCloseTo(2.4, 12);
    expect(row('new lamp')?.limitVolt).toBeCloseTo(4.8, 12);
    expect(row('new lamp')?.ohm).toBeCloseTo(ohm * 6, 6);
  });

  it('let a lamp on the wrong one be found by what it takes there', () => {
    // A lamp said by its resistance takes 2 A at 24 V and 1 A at 12 V.
    const ampere = (at: string): number | null | undefined =>
      verdictOf(mixed({ at, lamp: 'resistance: 12 ohm' })).judgement.electrical?.limits.drops.find(
        (one) => one.circuit === 'new lamp',
      )?.ampere;
    expect(ampere('B2')).toBeCloseTo(2, 9);
    expect(ampere('B1')).toBeCloseTo(1, 9);
  });
});

describe('two returns that nothing joins', () => {
  it('leave what lies between them undecided, and say what is missing', () => {
    const text = mixed({ return: 'G2' });
    expect(electricalWords(text)).toEqual(['9 undecided', '10 undecided']);
    expect(missingOf(text, 'electrical-unknown')).toContain('what joins the returns');
    expect(missingOf(text, 'back-feed-unknown')).toContain('what joins the returns G2 and GND');
  });
});
