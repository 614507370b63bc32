import { describe, expect, it } from 'vitest';
import { positionAt } from '../text/index.ts';
import { kitLimits } from './limits.ts';
import type { Located } from './located.ts';
import { readDocument } from './read-document.ts';

const read = (text: string): ReturnType<typeof readDocument> => readDocument({ name: 'kit.yaml', text });

/** The plain form of a document: text, lists, and maps as lists of pairs. */
function plain(node: Located | null): unknown {
  if (node === null) return null;
  if (node.kind === 'text') return node.text;
  if (node.kind === 'list') return node.items.map(plain);
  return [...node.entries].map(([key, entry]) => [key, plain(entry.value)]);
}

/** Complaints as `line:column code`, and what they cover. */
function complaints(text: string): readonly string[] {
  const { value, diagnostics } = read(text);
  if (diagnostics.length > 0) expect(value).toBeNull();
  return diagnostics.map(({ code, span }) => {
    if (span === null) return `- ${code}`;
    const { line, column } = positionAt(span.source, span.start);
    return `${line}:${column} ${code} ${JSON.stringify(text.slice(span.start, span.end))}`;
  });
}

describe('readDocument', () => {
  it('keeps every scalar as it was typed', () => {
    const { value, diagnostics } = read(
      'a: 3:10\nb: 01\nc: 1.10\nd: on\ne: 1_000\nf: 0x1F\ng: 2026-11-25\nh: "~"\ni: \'null\'\nj: .5\nk: yes\n',
    );
    expect(diagnostics).toEqual([]);
    expect(plain(value)).toEqual([
      ['a', '3:10'],
      ['b', '01'],
      ['c', '1.10'],
      ['d', 'on'],
      ['e', '1_000'],
      ['f', '0x1F'],
      ['g', '2026-11-25'],
      ['h', '~'],
      ['i', 'null'],
      ['j', '.5'],
      ['k', 'yes'],
    ]);
  });

  it.each(['~', 'null', 'Null', 'NULL'])('asks what is meant by %s where it stands for a value', (text) => {
    expect(complaints(`a: ${text}\nb: [x, ${text}]\nc: {"d": ${text}}\n`)).toEqual([
      `1:4 nothing "${text}"`,
      `2:8 nothing "${text}"`,
      `3:10 nothing "${text}"`,
    ]);
    expect(plain(read(`"${text}": 1\n${text} x: "${text}"\n`).value)).toEqual([
      [text, '1'],
      [`${text} x`, text],
    ]);
  });

  it('reads maps, lists, quotes and blocks, in the order written', () => {
    const { value } = read('z: [a, "b: c", \'d\']\ny:\n  - { p: q }\n  - |\n    two\n    lines\n1: one\n');
    expect(plain(value)).toEqual([
      ['z', ['a', 'b: c', 'd']],
      ['y', [[['p', 'q']], 'two\nlines\n']],
      ['1', 'one'],
    ]);
  });

  it('keeps blanks in quoted keys and values', () => {
    expect(plain(read('" a ": " b "\n').value)).toEqual([[' a ', ' b ']]);
  });

  it('reads JSON', () => {
    expect(plain(read('{"kit": "a", "list": [1, true, "null"], "map": {}}').value)).toEqual([
      ['kit', 'a'],
      ['list', ['1', 'true', 'null']],
      ['map', []],
    ]);
  });

  it('gives every key and value its place in the text', () => {
    const text = 'kit: beacon\nstock:\n  zone: "dry"\n';
    const { value } = read(text);
    const stock = value?.kind === 'map' ? value.entries.get('stock') : undefined;
    const zone = stock?.value.kind === 'map' ? stock.value.entries.get('zone') : undefined;
    const covered = [stock?.keySpan, zone?.keySpan, zone?.value.span].map((span) =>
      span == null ? null : text.slice(span.start, span.end),
    );
    expect(covered).toEqual(['stock', 'zone', '"dry"']);
    expect(zone?.value.span?.source.name).toBe('kit.yaml');
  });

  it('reads a key without a value as an empty text at the key', () => {
    const text = 'kit:\nrevision: A\n';
    const { value } = read(text);
    const kit = value?.kind === 'map' ? value.entries.get('kit') : undefined;
    expect(kit?.value).toMatchObject({ kind: 'text', text: '' });
    expect(kit?.value.span?.start).toBeLessThanOrEqual(4);
  });

  it('keeps names that JavaScript objects treat as their own', () => {
    expect(plain(read('__proto__: a\nconstructor: b\ntoString: { __proto__: c }\n').value)).toEqual([
      ['__proto__', 'a'],
      ['constructor', 'b'],
      ['toString', [['__proto__', 'c']]],
    ]);
    expect(({} as { a?: string }).a).toBeUndefined();
  });
});

describe('readDocument on hostile text', () => {
  it('refuses aliases and anchors', () => {
    expect(complaints('a: &x 1\nb: *x\n')).toEqual(['1:7 alias "1"', '2:4 alias "*x"']);
    expect(complaints('a: &x [1, 2]\n')).toEqual(['1:7 alias "[1, 2]"']);
    expect(complaints('a: &x { b: c }\n')).toEqual(['1:7 alias "{ b: c }"']);
  });

  it('does not unfold a bomb of aliases', () => {
    const levels = Array.from(
      { length: 30 },
      (_, level) => `l${level + 1}: &l${level + 1} [*l${level}, *l${level}, *l${level}]`,
    );
    const found = complaints(`l0: &l0 x\n${levels.join('\n')}\n`);
    expect(found.length).toBeGreaterThan(60);
    expect(new Set(found.map((one) => one.split(' ')[1]))).toEqual(new Set(['alias']));
  });

  it('refuses tags', () => {
    expect(complaints('a: !!js/function "x"\n').map((one) => one.split(' ')[1])).toContain('tag');
    expect(complaints('a: !!str 1\n').map((one) => one.split(' ')[1])).toContain('tag');
    expect(complaints('a: !mine { b: c }\n').map((one) => one.split(' ')[1])).toContain('tag');
    expect(complaints('a: "!!str 1"\nb: x!y\n')).toEqual([]);
  });

  it('refuses a key that is written twice, at its second place', () => {
    expect(complaints('a: 1\nb: 2\na: 3\n')).toEqual(['3:1 written-twice "a"']);
    expect(complaints('m: { x: 1, x: 2, y: 3, x: 4 }\n')).toEqual([
      '1:12 written-twice "x"',
      '1:24 written-twice "x"',
    ]);
    expect(complaints('__proto__: 1\n__proto__: 2\n')).toEqual(['2:1 written-twice "__proto__"']);
  });

  it('refuses a key that is no plain text', () => {
    expect(complaints('? [a, b]\n: c\n')).toEqual(['1:3 key "[a, b]"']);
    expect(complaints('? { a: b }\n: c\n').map((one) => one.split(' ')[1])).toEqual(['key']);
  });

  it('refuses control characters, at the first of them', () => {
    expect(complaints('a: x\u0000y\n')).toEqual(['1:5 control-character "\\u0000"']);
    expect(complaints('a: x\ny: \u001b[2J\n')).toEqual(['2:4 control-character "\\u001b"']);
    expect(complaints('a: \u007f\u0008\n')).toEqual(['1:4 control-character "\u007f"']);
    expect(complaints('a: \u001f\n')).toEqual(['1:4 control-character "\\u001f"']);
    expect(complaints('a: b\tc\r\nd: é\u0080\n')).toEqual([]);
  });

  it('refuses lists that are nested deeper than a kit is', () => {
    const flow = (depth: number): string => `a: ${'['.repeat(depth)}x${']'.repeat(depth)}\n`;
    expect(complaints(flow(kitLimits.depth - 1))).toEqual([]);
    expect(complaints(flow(kitLimits.depth + 1))[0]).toContain('nested-too-deep');
    expect(complaints(flow(kitLimits.depth * 4))[0]).toContain('nested-too-deep');
    expect(complaints(flow(100_000))).toEqual(['1:1 nested-too-deep "a"']);
    expect(complaints(`${'{a: '.repeat(100_000)}`)).toEqual(['1:1 nested-too-deep "{"']);
    expect(complaints(`${'- '.repeat(50_000)}x\n`)[0]).toContain('nested-too-deep');
  });

  it('does not take closing brackets for nesting', () => {
    expect(complaints(`a: "${']'.repeat(500)}"\nb: "${'[]'.repeat(500)}"\n`)).toEqual([]);
  });

  it('refuses a file that is too large, in characters or in lines, without reading it', () => {
    expect(complaints(`a: ${'x'.repeat(kitLimits.characters)}\n`)).toEqual(['1:1 file-too-large "a"']);
    expect(complaints('\n'.repeat(kitLimits.lines))).toEqual(['1:1 file-too-large "\\n"']);
    const full = `a: 1\n${'# x\n'.repeat(kitLimits.lines - 2)}`;
    expect(complaints(full)).toEqual([]);
    expect(complaints(`${full}#\n`)).toEqual(['1:1 file-too-large "a"']);
  });

  it('refuses an empty file, and more than one document', () => {
    expect(complaints('')).toEqual(['1:1 empty-file ""']);
    expect(complaints('# nothing\n')).toEqual(['1:1 empty-file "#"']);
    expect(complaints('a: 1\n---\nb: 2\n')).toEqual(['1:1 many-documents "a"']);
  });

  it('says where the YAML itself is wrong, once for each error', () => {
    expect(complaints('a: [1, 2\nb: 3\n')[0]).toMatch(/^\d+:\d+ yaml/);
    expect(complaints('a: "x\n')[0]).toMatch(/^\d+:\d+ yaml/);
    expect(complaints('\ta: 1\n')[0]).toMatch(/^1:\d+ yaml/);
    expect(read('a: [1, 2\nb: 3\n').diagnostics.every((one) => !one.message.includes('\n'))).toBe(true);
  });

  it('reads a scalar alone as a text, which the form check then refuses', () => {
    expect(plain(read('just a word\n').value)).toBe('just a word');
  });
});
