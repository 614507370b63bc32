import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDocument } from './check-document.ts';
import { chooseVariant, variantAxes, variantsOf } from './choose-variant.ts';
import { kitJsonSchema } from './kit-json-schema.ts';
import { plainOf } from './plain-of.ts';
import { readDocument } from './read-document.ts';

const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(kitJsonSchema());
const fixtures = new URL('../../../../fixtures/', import.meta.url);

/** The kits of the fixtures as the JSON of one variant each, without choices. */
const kits: readonly string[] = readdirSync(fixtures, { recursive: true, encoding: 'utf8' })
  .filter((name) => /(^|[/\\])kit\.yaml$/.test(name))
  .sort()
  .flatMap((name) => {
    const { value } = readDocument({ name, text: readFileSync(new URL(name, fixtures), 'utf8') });
    if (value === null) return [];
    const [variant] = variantsOf(value).value ?? [];
    const chosen = variant === undefined ? null : chooseVariant(value, variant, variantAxes(value)).value;
    return chosen === null ? [] : [JSON.stringify(plainOf(chosen))];
  });

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

/** What is done to a kit at one of its places; each may leave it right or make it wrong. */
const changes = [
  'drop',
  'rename',
  'add',
  'text',
  'word',
  'list',
  'map',
  'number',
  'truth',
  'nothing',
  'blank',
  'double',
] as const;
const words = [
  'yes',
  'no',
  'true',
  'dry',
  'wet',
  'none',
  'open',
  'closed',
  'always',
  'never',
  'terminal',
  'tap',
  'splice',
  'cut',
  'cover',
  'load',
  'fuse',
  'K1:1',
  'left',
  '1..4',
  '0.5 mm2',
  'built in',
] as const;
const keys = [
  'note',
  'only',
  'zone',
  'with',
  'as',
  'at',
  'cover',
  'taps',
  'before',
  'stock',
  'wire table',
  'from cover',
  'constructor',
  '__proto__',
  'toString',
  'joins',
  'is',
  'do',
] as const;

interface Change {
  readonly what: (typeof changes)[number];
  readonly place: number;
  /** How many of the places come into question, those nearest to the root first. */
  readonly among: number;
  readonly word: (typeof words)[number];
  readonly key: (typeof keys)[number];
}

const change: fc.Arbitrary<Change> = fc.record({
  what: fc.constantFrom(...changes),
  place: fc.nat(),
  among: fc.constantFrom(8, 60, Number.MAX_SAFE_INTEGER),
  word: fc.constantFrom(...words),
  key: fc.constantFrom(...keys),
});

interface Place {
  readonly holder: Json[] | { [key: string]: Json };
  readonly key: string | number;
}

function placesIn(root: Json): readonly Place[] {
  const places: Place[] = [];
  const open: Json[] = [root];
  for (let at = 0; at < open.length; at += 1) {
    const node = open[at];
    if (typeof node !== 'object' || node === null) continue;
    for (const key of Array.isArray(node) ? node.keys() : Object.keys(node)) {
      places.push({ holder: node, key });
      open.push((node as { [key: string]: Json })[key] as Json);
    }
  }
  return places;
}

function put(holder: Place['holder'], key: string | number, value: Json): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

function done(text: string, list: readonly Change[]): string {
  const root = JSON.parse(text) as Json;
  for (const { what, place, among, word, key: name } of list) {
    const places = placesIn(root);
    const { holder, key } = places[place % Math.min(among, places.length)] ?? { holder: [], key: 0 };
    const old = (holder as { [key: string]: Json })[key] ?? '';
    const drop = (): void => {
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
    };
    if (what === 'drop') drop();
    else if (what === 'rename' && !Array.isArray(holder)) {
      drop();
      put(holder, name, old);
    } else if (what === 'add' && typeof old === 'object' && old !== null && !Array.isArray(old))
      put(old, name, word);
    else if (what === 'text') put(holder, key, `${String(word)} x`);
    else if (what === 'word') put(holder, key, word);
    else if (what === 'list') put(holder, key, [old]);
    else if (what === 'map') put(holder, key, { [name]: old });
    else if (what === 'number') put(holder, key, 7);
    else if (what === 'truth') put(holder, key, true);
    else if (what === 'nothing') put(holder, key, null);
    else if (what === 'blank') put(holder, key, '');
    else if (what === 'double' && Array.isArray(holder)) holder.push(old);
  }
  return JSON.stringify(root);
}

describe('the published schema and the reader', () => {
  it('agree on the form of every kit of the fixtures', () => {
    expect(kits.length).toBeGreaterThan(8);
    for (const text of kits) {
      expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
    }
  });

  it('agree on the form of a kit, whatever was done to it', () => {
    const seen = { right: 0, wrong: 0 };
    fc.assert(
      fc.property(fc.constantFrom(...kits), fc.array(change, { minLength: 1, maxLength: 2 }), (kit, list) => {
        const text = done(kit, list);
        const { value, diagnostics } = readDocument({ name: 'kit.json', text });
        if (value === null && diagnostics.length === 0) throw new Error('JSON that cannot be read');
        const form = value === null ? diagnostics : checkDocument(value);
        const taken = validate(JSON.parse(text));
        seen[taken ? 'right' : 'wrong'] += 1;
        expect({ taken, errors: taken ? form : validate.errors?.slice(0, 0) }).toEqual({
          taken: form.length === 0,
          errors: [],
        });
      }),
      { numRuns: 200 },
    );
    // Both answers must occur, or nothing was compared.
    expect(Math.min(seen.right, seen.wrong)).toBeGreaterThan(20);
  }, 60_000);
});
