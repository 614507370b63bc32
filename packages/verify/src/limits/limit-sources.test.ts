import { describe, expect, it } from 'vitest';
import { type OneCircuitKit, oneCircuitKit } from '../../../../tests/support/one-circuit-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';

/** What obligation 9 says of 2.5 mm2 behind a fuse, by the rules for small craft, and what is missing. */
function said(kit: Partial<OneCircuitKit>): readonly (string | null)[] {
  const { obligations, findings } = verdictOf(
    oneCircuitKit({
      volts: 12,
      ampere: 10,
      size: '2.5 mm2',
      out: '1 m',
      back: '1 m',
      limits:
        'limits: small-craft\n  insulation rating: 105 C\n  own limits: { source: test, drop: 90 %, lead to protector: 100 m }',
      fuse: '50 A',
      ...kit,
    }),
  );
  return [
    obligations.find(({ obligation }) => obligation === 9)?.verdict ?? null,
    ...findings.flatMap(({ kind, points }) => (kind === 'electrical-unknown' ? points : [])),
  ];
}

describe('what a conductor bears by a table', () => {
  it('is that of the largest gauge within it: 35 A for 14 AWG, 150 % of that behind a fuse (33 CFR 183)', () => {
    expect(said({ fuse: '52.5 A' })).toEqual(['proved']);
    expect(said({ fuse: '53 A' })).toEqual(['refuted']);
  });

  it('is only known of copper', () => {
    const copper = 'the tables of small craft (33 CFR 183 / ISO 10133 / ABYC E-11) are of copper';
    expect(said({ material: 'aluminium' })).toEqual([
      'undecided',
      `the capacity of back: ${copper}`,
      `the capacity of out: ${copper}`,
    ]);
    expect(said({ material: 'aluminium', wire: 'capacity: 60 A' })).toEqual(['proved']);
  });

  it('is not known of one that is hotter than its insulation bears', () => {
    expect(said({ temperature: '105 C' })).toEqual(['proved']);
    expect(said({ temperature: '106 C' })[0]).toBe('undecided');
  });
});
