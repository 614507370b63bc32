import { describe, expect, it } from 'vitest';
import { runInMemory } from '../support/memory-io.ts';
import { publishedSchemaText, publishedValidator } from '../support/published-schema.ts';
import { codesIn, fencedBlocks, readDocumentFile } from '../support/read-document-file.ts';

const page = readDocumentFile('docs/json.md');

interface VerdictExample {
  readonly variants: { circuits: unknown[] }[];
}

describe('docs/json.md', () => {
  it('shows what prove prints for the kit of the README, but for the circuits left out', async () => {
    const kit = fencedBlocks(readDocumentFile('README.md')).find(
      ({ info }) => info === 'yaml kit.yaml',
    )?.text;
    const shown: unknown = JSON.parse(fencedBlocks(page).find(({ info }) => info === 'json')?.text ?? '');
    const { out } = await runInMemory(['prove', 'kit.yaml', '--json'], {
      files: new Map([['kit.yaml', kit ?? '']]),
    });
    const printed = JSON.parse(out()) as VerdictExample;
    for (const variant of printed.variants) variant.circuits = variant.circuits.slice(0, 1);
    expect(shown).toEqual(printed);
    const validate = publishedValidator('verdict');
    validate(shown);
    expect(validate.errors).toBeNull();
  });

  it('names every key at the top, of a variant and of a finding', () => {
    const schema = JSON.parse(publishedSchemaText('verdict')) as {
      properties: object;
      $defs: {
        variant: { properties: object };
        finding: { properties: object };
        hop: { properties: object };
      };
    };
    const { variant, finding, hop } = schema.$defs;
    const keys = [schema, variant, finding, hop].flatMap(({ properties }) => Object.keys(properties));
    const named = new Set(codesIn(page.replaceAll(/^```[\s\S]*?^```$/gm, '')));
    expect(keys.filter((key) => !named.has(key))).toEqual([]);
  });
});
