import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findingKinds, undecidedKinds } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { fixtureFolder } from '../support/fixture-folder.ts';
import { codesIn, readDocumentFile, tableRows } from '../support/read-document-file.ts';
import { projectFolder } from '../support/start-program.ts';
import { readWrongInput } from '../support/wrong-input.ts';

const [input = '', findings = ''] = readDocumentFile('docs/messages.md').split('\n## Findings\n');
const documentedCodes = tableRows(input)
  .flatMap(([first = '']) => codesIn(first))
  .sort();
const findingRows = tableRows(findings).flatMap(([kind = '', obligation = '', means = '']) =>
  codesIn(kind).map((code) => ({ code, obligation, means })),
);

/** The source of all packages, without tests. */
function sources(): string {
  const files = readdirSync(join(projectFolder, 'packages'), { recursive: true, encoding: 'utf8' });
  return files
    .filter((name) => /^\w+[/\\]src[/\\].*\.ts$/.test(name) && !name.endsWith('.test.ts'))
    .map((name) => readFileSync(join(projectFolder, 'packages', name), 'utf8'))
    .join('\n');
}

/** Every code that the source gives to a diagnostic, by the ways in which it does so. */
function codesOfSource(text: string): ReadonlySet<string> {
  const patterns = [
    /\b(?:error|complain|refuse)\(\s*'([\w-]+)'/g,
    /\bcode: '([\w-]+)'/g,
    /\bcode: \w+ \? '([\w-]+)' : '([\w-]+)'/g,
    /'(TABLE_[A-Z_]+)'/g,
    // The reader of wires names a complaint after the key that could not be read.
    /\bparsed\('([\w-]+)'/g,
  ];
  const found = patterns.flatMap((pattern) =>
    [...text.matchAll(pattern)].flatMap((match) => match.slice(1).filter((code) => code !== undefined)),
  );
  return new Set(found);
}

describe('docs/messages.md', () => {
  const text = sources();
  const codes = codesOfSource(text);

  it('has a row for every code of a diagnostic, and no row for anything else', () => {
    expect(codes.size).toBeGreaterThan(60);
    expect(documentedCodes).toEqual([...codes].sort());
  });

  it('knows every way in which the source gives a code', () => {
    const calls = [...text.matchAll(/complaints\.error\(\s*([^'\s,)][^,)]*)/g)].map(
      ([, first = '']) => first,
    );
    // A code that is no literal would escape the test above; this is the one that is known to it.
    expect(calls).toEqual(['key']);
  });

  it('has a row for each complaint that a wrong kit of the fixtures gets', () => {
    const expected = readdirSync(join(fixtureFolder, 'wrong-input')).flatMap((file) =>
      readWrongInput(file.replace(/\.yaml$/, '')).expected.map(({ code }) => code),
    );
    expect(expected.length).toBeGreaterThan(20);
    expect(expected.filter((code) => !documentedCodes.includes(code))).toEqual([]);
  });

  it('has a row for every kind of finding with its obligation, and says which are undecided', () => {
    const kinds = Object.entries(findingKinds).map(([code, obligation]) => ({
      code,
      obligation: String(obligation),
      undecided: [...undecidedKinds].some((kind) => kind === code),
    }));
    const rows = findingRows.map(({ code, obligation, means }) => ({
      code,
      obligation,
      undecided: /^[*_]undecided[*_]/.test(means),
    }));
    expect(sorted(rows)).toEqual(sorted(kinds));
  });
});

function sorted<T extends { readonly code: string }>(rows: readonly T[]): readonly T[] {
  return [...rows].sort((a, b) => (a.code < b.code ? -1 : 1));
}
