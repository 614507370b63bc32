import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { verdictOf } from '../support/verdict-of.ts';

const kit = readFileSync('fixtures/two-outputs/kit.yaml', 'utf8');
const supply = '    battery: { at: BP, return: GC, volts: 12 V }\n';

function electricalWords(text: string): readonly string[] {
  return verdictOf(text)
    .obligations.filter(({ obligation }) => obligation >= 9)
    .map(({ obligation, verdict }) => `${obligation} ${verdict}`);
}

describe('supplies that the electrical judgement cannot take together', () => {
  it('are judged where there is one', () => {
    expect(kit.split(supply)).toHaveLength(2);
    expect(electricalWords(kit)).toEqual(['9 proved', '10 proved']);
  });

  it('leave the losses undecided where they have different volts, and say so', () => {
    const two = kit
      .replace(supply, `${supply}    second: { at: B2, return: GC, volts: 24 V }\n`)
      .replace('  studs:\n', '  studs:\n    B2: { source: always }\n');
    expect(electricalWords(two)[0]).toBe('9 undecided');
    const found = verdictOf(two).findings.find(({ kind }) => kind === 'electrical-unknown');
    expect(found?.points.join()).toContain('more than one supply voltage');
  });

  it('leave back-feed undecided where they have separate returns, and say so', () => {
    const two = kit
      .replace(supply, `${supply}    second: { at: B2, return: G2, volts: 12 V }\n`)
      .replace('  studs:\n', '  studs:\n    B2: { source: always }\n    G2: { source: never }\n');
    expect(electricalWords(two)[1]).toBe('10 undecided');
    const found = verdictOf(two).findings.find(({ kind }) => kind === 'back-feed-unknown');
    expect(found?.points.join()).toContain('separate returns');
  });
});
