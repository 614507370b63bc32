import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { kitSchema, readKit, renderDiagnostic } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { entryOf, itemsUnder, rowsUnder, textUnder } from '../packages/netlist/src/kit/located.ts';
import { readDocument } from '../packages/netlist/src/kit/read-document.ts';
import { fixtureFolder, readFixture, tablesBeside } from './support/fixture-folder.ts';
import { kitNames, kitPath } from './support/kit-fixtures.ts';
import { stepKinds } from './support/step-kinds.ts';

/** What a kit file says, before any variant is chosen. */
function documentOf(name: string): ReturnType<typeof readDocument>['value'] {
  return readDocument(readFixture(kitPath(name))).value;
}

describe('the kits', () => {
  it.each(kitNames)('%s proves in every variant', (name) => {
    const path = kitPath(name);
    const read = readKit(readFixture(path), tablesBeside(path));
    expect(read.diagnostics.map(renderDiagnostic)).toEqual([]);
    if (read.value === null) throw new Error(`${path} cannot be used`);
    const verdict = proveKit(read.value);
    expect(verdict.diagnostics.map(renderDiagnostic)).toEqual([]);
    expect(verdict.variants.flatMap((one) => one.findings.map((finding) => finding.message))).toEqual([]);
    expect(verdict.variants.map((one) => one.verdict)).toEqual(verdict.variants.map(() => 'proved'));
    expect(verdict.verdict).toBe('proved');
    expect(verdict.judged).toBe(verdict.variantCount);
  });

  it('each kind of rework step is used by a kit', () => {
    const used = new Set(
      kitNames.flatMap((name) =>
        itemsUnder(documentOf(name), 'work').map((step) => textUnder(step, 'do')?.text ?? ''),
      ),
    );
    expect([...stepKinds].filter((kind) => !used.has(kind))).toEqual([]);
  });

  it('each form of intent is used by a kit', () => {
    const used = new Set(
      kitNames.flatMap((name) => rowsUnder(documentOf(name), 'wanted').map((form) => form.key)),
    );
    expect(Object.keys(kitSchema.shape.wanted.shape).filter((form) => !used.has(form))).toEqual([]);
  });

  it('additions add and take, wires and cavities are retired, and stubs stay live and dead', () => {
    const wanted = kitNames.map((name) => entryOf(documentOf(name), 'wanted'));
    const additions = wanted.flatMap((one) => rowsUnder(one, 'additions').map((row) => row.value));
    const retired = wanted.flatMap((one) => itemsUnder(one, 'retired'));
    const stubs = wanted.flatMap((one) => itemsUnder(one, 'stubs'));
    const used = {
      add: additions.filter((row) => entryOf(row, 'add') !== null).length,
      take: additions.filter((row) => entryOf(row, 'take') !== null).length,
      'retired wire': retired.filter((row) => entryOf(row, 'wire') !== null).length,
      'retired cavity': retired.filter((row) => entryOf(row, 'cavity') !== null).length,
      'live stub': stubs.filter((row) => textUnder(row, 'is')?.text === 'live').length,
      'dead stub': stubs.filter((row) => textUnder(row, 'is')?.text === 'dead').length,
    };
    expect(Object.entries(used).filter(([, count]) => count === 0)).toEqual([]);
  });

  it('each file in the folder of a kit is its kit file, or a table or a kit that it names', () => {
    const strays = kitNames.flatMap((name) => {
      const text = readFixture(kitPath(name)).text;
      return readdirSync(join(fixtureFolder, name))
        .filter(
          (file) =>
            file !== 'kit.yaml' && !text.includes(`table: ${file}\n`) && !text.includes(`  kit: ${file}\n`),
        )
        .map((file) => `${name}/${file}`);
    });
    expect(strays).toEqual([]);
  });
});
