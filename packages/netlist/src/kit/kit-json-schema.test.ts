import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { kitJsonSchema } from './kit-json-schema.ts';

const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(kitJsonSchema());
const fixtures = new URL('../../../../fixtures/', import.meta.url);
const kits = readdirSync(fixtures, { recursive: true, encoding: 'utf8' })
  .filter((name) => /(^|[/\\])kit\.yaml$/.test(name))
  .sort();

/** A kit as short as the form allows, with one part of it replaced. */
function kitWith(part: Record<string, unknown>): Record<string, unknown> {
  return { kit: 'lamp', revision: 'A', stock: {}, work: [], wanted: {}, ...part };
}

describe('kitJsonSchema', () => {
  it('finds kits to be tried on', () => {
    expect(kits.length).toBeGreaterThan(5);
  });

  it.each(kits)('takes %s as a plain YAML reader gives it', (name) => {
    const document: unknown = parse(readFileSync(new URL(name, fixtures), 'utf8'));
    validate(document);
    expect(validate.errors).toBeNull();
  });

  it.each([
    ['a number and a boolean for a text', kitWith({ revision: 3, note: true })],
    ['a boolean for yes', kitWith({ stock: { studs: { G1: { chassis: true } } } })],
    ['a choice by variant', kitWith({ stock: { zone: { 'side=left': 'dry', else: 'wet' } } })],
    ['a choice of a whole section', kitWith({ bag: { 'side=left': { zone: 'dry' }, 'side=right': {} } })],
    [
      'a choice within a choice',
      kitWith({ wanted: { apart: { 'a=1': { 'b=2': [['A', 'B']] }, else: [] } } }),
    ],
  ])('takes %s', (_what, kit) => {
    validate(kit);
    expect(validate.errors).toBeNull();
  });

  it.each([
    ['a kit without revision', { kit: 'lamp', stock: {}, work: [], wanted: {} }],
    ['an unknown key', kitWith({ wanted: { circuit: {} } })],
    ['an unknown step', kitWith({ work: [{ do: 'weld', wire: 'a' }] })],
    ['a step that lacks something', kitWith({ work: [{ do: 'insert', end: 'a@B' }] })],
    ['an unknown word', kitWith({ stock: { zone: 'moist' } })],
    ['an unknown word within a choice', kitWith({ stock: { zone: { 'side=left': 'moist', else: 'wet' } } })],
    ['a choice of the name, which holds for all variants', kitWith({ kit: { 'side=left': 'a', else: 'b' } })],
    ['a list for a text', kitWith({ revision: ['A'] })],
    ['nothing for a text', kitWith({ revision: null })],
  ])('refuses %s', (_what, kit) => {
    expect(validate(kit)).toBe(false);
  });

  it('is the same at every call', () => {
    expect(JSON.stringify(kitJsonSchema())).toBe(JSON.stringify(kitJsonSchema()));
  });

  it('writes a definition once, however often it is used', () => {
    const { $defs, ...rest } = kitJsonSchema() as { readonly $defs: Readonly<Record<string, unknown>> };
    const chosen = Object.entries($defs).filter(([name]) => `${name}-by-variant` in $defs);
    expect(chosen.length).toBeGreaterThan(10);
    const texts = chosen.map(([, definition]) => JSON.stringify(definition));
    expect(new Set(texts).size).toBe(texts.length);
    const whole = JSON.stringify([rest, $defs]);
    for (const [name] of chosen) expect(whole).toContain(`"#/$defs/${name}-by-variant"`);
  });
});
