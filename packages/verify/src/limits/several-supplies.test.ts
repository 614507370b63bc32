import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { twoSystemsKit } from '../../../../tests/support/two-systems-kit.ts';
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

describe('two supply voltages at one return', () => {
  it('are solved together: each lamp loses of its own volts what both make the shared wire lose', () => {
    const verdict = verdictOf(twoSystemsKit());
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
      verdictOf(twoSystemsKit({ at, lamp: 'resistance: 12 ohm' })).judgement.electrical?.limits.drops.find(
        (one) => one.circuit === 'new lamp',
      )?.ampere;
    expect(ampere('B2')).toBeCloseTo(2, 9);
    expect(ampere('B1')).toBeCloseTo(1, 9);
  });
});

describe('an output of which it is not said which supply is behind it', () => {
  it('leaves what hangs on it undecided, by name', () => {
    const driven = changed(
      changed(
        twoSystemsKit({ at: 'X' }),
        'C: { source: never }',
        'C: { source: never }, X: { source: driven }',
      ),
      'new lamp: always',
      'new lamp: X',
    );
    expect(electricalWords(driven)).toEqual(['9 undecided', '10 undecided']);
    expect(missingOf(driven, 'electrical-unknown')).toContain('which supply is behind X');
    expect(missingOf(driven, 'back-feed-unknown')).toContain('which supply is behind X');
    // With one voltage there is nothing to ask.
    const alike = changed(driven, 'volts: 24 V }\n  studs', 'volts: 12 V }\n  studs');
    expect(missingOf(alike, 'electrical-unknown')).not.toContain('which supply');
  });
});

describe('two returns that nothing joins', () => {
  it('leave what lies between them undecided, and say what is missing', () => {
    const text = twoSystemsKit({ return: 'G2' });
    expect(electricalWords(text)).toEqual(['9 undecided', '10 undecided']);
    expect(missingOf(text, 'electrical-unknown')).toContain('what joins the returns');
    expect(missingOf(text, 'back-feed-unknown')).toContain('what joins the returns G2 and GND');
  });
});
