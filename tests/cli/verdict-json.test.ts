import { findingKinds } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { verdictJsonSchema } from '../../packages/cli/src/prove/verdict-json-schema.ts';
import { breakKit, readBrokenCase } from '../support/broken-case.ts';
import { foldersIn, readFixture } from '../support/fixture-folder.ts';
import { kitNames, kitPath } from '../support/kit-fixtures.ts';
import { runInMemory } from '../support/memory-io.ts';
import { publishedSchemaText, publishedValidator } from '../support/published-schema.ts';

const validate = publishedValidator('verdict');

/** The JSON that the program prints for a kit of the fixtures, with its exit code. */
async function proveFixture(path: string, text: string): Promise<{ code: number; json: unknown }> {
  const name = `fixtures/${path}`;
  const { code, out, err } = await runInMemory(['prove', name, '--json'], { files: new Map([[name, text]]) });
  expect(err()).toBe('');
  return { code, json: JSON.parse(out()) };
}

describe('the JSON of prove', () => {
  it.each(kitNames)('keeps to the published schema for %s, and says that it is proved', async (name) => {
    const { code, json } = await proveFixture(kitPath(name), readFixture(kitPath(name)).text);
    validate(json);
    expect(validate.errors).toBeNull();
    expect(code).toBe(0);
    expect(json).toMatchObject({ verdict: 'proved', revision: expect.any(String), diagnostics: [] });
  });

  it('keeps to the published schema for every broken case, with every kind of finding among them', async () => {
    const kinds = new Set<string>();
    const wrong: string[] = [];
    for (const name of foldersIn('broken')) {
      const one = readBrokenCase(name);
      const { code, json } = await proveFixture(one.kit, breakKit(readFixture(one.kit).text, one));
      if (!validate(json)) wrong.push(`${name}: ${JSON.stringify(validate.errors)}`);
      const { verdict, variants } = json as { verdict: string; variants: { findings: { kind: string }[] }[] };
      if (verdict !== one.verdict || code !== 1) wrong.push(`${name}: ${verdict}, exit code ${code}`);
      for (const variant of variants) for (const { kind } of variant.findings) kinds.add(kind);
    }
    expect(wrong).toEqual([]);
    expect(Object.keys(findingKinds).filter((kind) => !kinds.has(kind))).toEqual([]);
  });

  it('keeps to the published schema when the input cannot be used', async () => {
    const files = new Map([['kit.yaml', 'kit: lamp\nrevision: A\nstock: {}\nwork: []\nwanted: {}\n']]);
    for (const path of ['kit.yaml', 'nowhere.yaml']) {
      const { code, out, err } = await runInMemory(['prove', path, '--json'], { files });
      const json: unknown = JSON.parse(out());
      validate(json);
      expect(validate.errors).toBeNull();
      expect(json).toMatchObject({ verdict: null, variants: [] });
      expect(code).toBe(2);
      expect(err()).toBe('');
    }
  });

  it('refuses by its schema what prove never prints', () => {
    expect(validate({ verdict: 'proved' })).toBe(false);
    expect(validate({ kit: 'a', revision: 'b', digest: 'c', verdict: 'maybe', variants: [] })).toBe(false);
  });
});

describe('docs/verdict.schema.json', () => {
  it('is what `loomproof schema --of verdict` prints', async () => {
    const { out, code } = await runInMemory(['schema', '--of', 'verdict']);
    expect(code).toBe(0);
    expect(out()).toBe(publishedSchemaText('verdict'));
    expect(JSON.parse(out())).toEqual(JSON.parse(JSON.stringify(verdictJsonSchema())));
  });
});

describe('docs/kit.schema.json', () => {
  it('is what `loomproof schema` prints, with --json or without', async () => {
    for (const argv of [['schema'], ['schema', '--json'], ['schema', '--of', 'kit']]) {
      const { out, code } = await runInMemory(argv);
      expect(code).toBe(0);
      expect(out()).toBe(publishedSchemaText('kit'));
    }
  });
});
