import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readKit, renderDiagnostic } from '@loomproof/netlist';
import { findingKinds, proveKit } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { breakKit, readBrokenCase, stepKindsChanged } from './support/broken-case.ts';
import { fixtureFolder, foldersIn, readFixture, tablesBeside } from './support/fixture-folder.ts';
import { kitNames, kitPath } from './support/kit-fixtures.ts';
import { stepKinds } from './support/step-kinds.ts';

const cases = foldersIn('broken').map(readBrokenCase);
const kinds: ReadonlyMap<string, number> = new Map(Object.entries(findingKinds));

/** A finding as a case writes it down, without its words. */
function lineOf(finding: { kind: string; obligation: number; step: number | null }): string {
  return `${finding.kind}, obligation ${finding.obligation}, step ${finding.step ?? 'none'}`;
}

describe('a kit with one mistake in it', () => {
  for (const one of cases) {
    it(`${one.name}: ${one.why}`, () => {
      const kit = readFixture(one.kit);
      const read = readKit({ ...kit, text: breakKit(kit.text, one) }, tablesBeside(one.kit));
      expect(read.diagnostics.map(renderDiagnostic)).toEqual([]);
      if (read.value === null) throw new Error(`${one.name} cannot be used`);
      const verdict = proveKit(read.value);
      expect(verdict.diagnostics.map(renderDiagnostic)).toEqual([]);
      const found = verdict.variants.map((variant) => ({
        variant: variant.variant,
        findings: variant.findings.map(lineOf).sort(),
        proved: variant.verdict === 'proved',
      }));
      const expected = verdict.variants.map(({ variant }) => {
        const here = one.findings.filter(
          (finding) => finding.variant === null || finding.variant === variant,
        );
        return { variant, findings: here.map(lineOf).sort(), proved: here.length === 0 };
      });
      expect(found).toEqual(expected);
      expect(verdict.verdict).toBe(one.verdict);
    });
  }
});

describe('the broken cases as a whole', () => {
  it('each is a patch on a kit that the test of the kits proves', () => {
    const paths = new Set(kitNames.map(kitPath));
    expect(cases.filter((one) => !paths.has(one.kit)).map((one) => one.name)).toEqual([]);
  });

  it('each expects a finding, of a kind that exists, under its own obligation', () => {
    const wrong = cases.filter(
      (one) =>
        one.findings.length === 0 ||
        one.findings.some((finding) => kinds.get(finding.kind) !== finding.obligation),
    );
    expect(wrong.map((one) => one.name)).toEqual([]);
  });

  it('each kind of finding has a case', () => {
    const expected = new Set(cases.flatMap((one) => one.findings.map((finding) => finding.kind)));
    expect([...kinds.keys()].filter((kind) => !expected.has(kind))).toEqual([]);
  });

  it('each obligation has at least three cases', () => {
    const counts = [1, 2, 3, 4, 5, 6, 7, 8].map((obligation) => ({
      obligation,
      count: cases.filter((one) => one.findings.some((finding) => finding.obligation === obligation)).length,
    }));
    expect(counts.filter(({ count }) => count < 3)).toEqual([]);
  });

  it('a mistake is made at each kind of rework step', () => {
    const changed = new Set(cases.flatMap((one) => stepKindsChanged(readFixture(one.kit).text, one)));
    expect([...stepKinds].filter((kind) => !changed.has(kind))).toEqual([]);
  });

  it('each folder holds its case and nothing else', () => {
    const strays = foldersIn('broken').flatMap((name) =>
      readdirSync(join(fixtureFolder, 'broken', name))
        .filter((file) => file !== 'case.yaml')
        .map((file) => `${name}/${file}`),
    );
    expect(strays).toEqual([]);
  });
});
