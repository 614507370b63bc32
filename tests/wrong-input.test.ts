import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Diagnostic, positionAt, readKit, type Source } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { breakKit } from './support/broken-case.ts';
import { fixtureFolder, readFixture, tablesBeside } from './support/fixture-folder.ts';
import { readWrongInput } from './support/wrong-input.ts';

const cases = readdirSync(join(fixtureFolder, 'wrong-input'))
  .sort()
  .map((file) => readWrongInput(file.slice(0, -'.yaml'.length)));

/** Line and column of the only place where a text stands. */
function lineHolding(source: Source, text: string): number {
  const start = source.text.indexOf(text);
  if (start < 0 || source.text.indexOf(text, start + 1) >= 0)
    throw new Error(`\`${text}\` does not stand exactly once in the kit`);
  return positionAt(source, start).line;
}

function complaintsOf(source: Source, kit: string): readonly Diagnostic[] {
  const read = readKit(source, tablesBeside(kit));
  if (read.value === null) return read.diagnostics;
  const verdict = proveKit(read.value);
  expect(verdict.verdict).toBeNull();
  return verdict.diagnostics;
}

describe('a kit that cannot be used', () => {
  for (const one of cases) {
    it(`${one.name}: ${one.why}`, () => {
      const kit = readFixture(one.kit);
      const source: Source = { ...kit, text: breakKit(kit.text, one) };
      const found = complaintsOf(source, one.kit);
      const places = found.map((complaint) => ({
        code: complaint.code,
        line: complaint.span === null ? null : positionAt(complaint.span.source, complaint.span.start).line,
      }));
      const expected = one.expected.map(({ code, on }) => ({
        code,
        line: on === null ? null : lineHolding(source, on),
      }));
      expect(places).toEqual(expected);
      for (const [index, { says }] of one.expected.entries()) {
        const complaint = found[index];
        if (says !== null) expect(`${complaint?.message} ${complaint?.help ?? ''}`).toContain(says);
      }
    });
  }
});
