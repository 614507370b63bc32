import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { entryOf, type Located } from '../../packages/netlist/src/kit/located.ts';
import { plainOf } from '../../packages/netlist/src/kit/plain-of.ts';
import { readDocument } from '../../packages/netlist/src/kit/read-document.ts';
import { runInMemory } from '../support/memory-io.ts';
import { publishedSchemaText } from '../support/published-schema.ts';
import { codesIn, fencedBlocks, readDocumentFile, tableRows } from '../support/read-document-file.ts';
import { stepKinds } from '../support/step-kinds.ts';

const page = readDocumentFile('docs/kit-file.md');
const blocks = fencedBlocks(page);
const schema: object = JSON.parse(publishedSchemaText('kit'));
const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
const sections = ['parts', 'stock', 'work', 'wanted'];

function documentOf(text: string): Located {
  const { value, diagnostics } = readDocument({ name: 'kit-file.md', text });
  expect(diagnostics).toEqual([]);
  if (value === null) throw new Error('an example cannot be read');
  return value;
}

/** A kit with nothing in it but the example, which is the part of it that the fence names. */
function around(info: string, text: string): object {
  const example = plainOf(documentOf(text)) as object;
  const bare = { kit: 'example', revision: 'A', stock: {}, work: [], wanted: {} };
  // What another kit leaves stands in place of the stock.
  if ('before' in example) return { ...bare, stock: undefined, ...example };
  return info === 'yaml top' ? { ...bare, ...example } : { ...bare, [info.slice('yaml '.length)]: example };
}

/** Every name of a key that the schema knows. */
function keysOfSchema(): ReadonlySet<string> {
  const keys = new Set<string>();
  const open: unknown[] = [schema];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (typeof node !== 'object' || node === null) continue;
    for (const [key, value] of Object.entries(node)) {
      open.push(value);
      if (key === 'properties') for (const name of Object.keys(value as object)) keys.add(name);
    }
  }
  return keys;
}

describe('docs/kit-file.md', () => {
  it('has only fences that are tried here', () => {
    const known = new Set(['yaml kit', 'yaml top', 'csv', ...sections.map((one) => `yaml ${one}`)]);
    expect(blocks.map(({ info }) => info).filter((info) => !known.has(info))).toEqual([]);
    for (const info of known) expect(blocks.map((one) => one.info)).toContain(info);
  });

  it.each(
    blocks.filter(({ info }) => /^yaml (?!kit)/.test(info)).map(({ info, text }, at) => [at + 1, info, text]),
  )('example %i (%s) keeps to the schema', (_at, info, text) => {
    validate(around(String(info), String(text)));
    expect(validate.errors).toBeNull();
  });

  it('shows a whole kit that proves in all its variants', async () => {
    const whole = blocks.filter(({ info }) => info === 'yaml kit');
    expect(whole).toHaveLength(1);
    const { code, out, err } = await runInMemory(['prove', 'kit.yaml'], {
      files: new Map([['kit.yaml', whole[0]?.text ?? '']]),
    });
    expect(err()).toBe('');
    expect(out()).toMatch(/^PROVED .*\n2 of 2 variants judged, 2 proved;/);
    expect(code).toBe(0);
  });

  it('shows a pin table that can be read', async () => {
    const table = blocks.find(({ info }) => info === 'csv')?.text ?? '';
    const { code, err } = await runInMemory(['start', 't.csv'], { files: new Map([['t.csv', table]]) });
    expect(err()).toBe('');
    expect(code).toBe(0);
  });

  it('names every key of the schema', () => {
    // The fences would shift which backticks belong together.
    const named = new Set(codesIn(page.replaceAll(/^```[\s\S]*?^```$/gm, '')));
    const missing = [...keysOfSchema()].filter((key) => key !== 'else' && !named.has(key));
    expect(missing).toEqual([]);
  });

  it('has a row for every kind of step, and shows no other', () => {
    const work = page.slice(page.indexOf('\n## Work\n'), page.indexOf('\n## Wanted\n'));
    const rows = tableRows(work)
      .slice(1)
      .flatMap(([first = '']) => codesIn(first));
    expect([...rows].sort()).toEqual([...stepKinds].sort());
  });

  it('uses every form of intent in an example', () => {
    const wanted = documentOf(blocks.find(({ info }) => info === 'yaml wanted')?.text ?? '');
    const forms = Object.keys(
      (schema as { $defs: { wanted: { properties: object } } }).$defs.wanted.properties,
    );
    expect(forms.filter((form) => entryOf(wanted, form) === null)).toEqual([]);
  });
});
