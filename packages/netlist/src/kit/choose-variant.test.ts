import { describe, expect, it } from 'vitest';
import { positionAt } from '../text/index.ts';
import { chooseVariant, stepNumberKey, type Variant, variantAxes, variantsOf } from './choose-variant.ts';
import type { Located } from './located.ts';
import { entryOf, itemsUnder, textUnder } from './located.ts';
import { readDocument } from './read-document.ts';

function documentOf(text: string): Located {
  const { value, diagnostics } = readDocument({ name: 'kit.yaml', text });
  if (value === null) throw new Error(diagnostics.map((one) => one.message).join('\n'));
  return value;
}

function plain(node: Located | null): unknown {
  if (node === null) return null;
  if (node.kind === 'text') return node.text;
  if (node.kind === 'list') return node.items.map(plain);
  return Object.fromEntries([...node.entries].map(([key, entry]) => [key, plain(entry.value)]));
}

const axes = 'variants:\n  side: [left, right]\n  roof: { high: a lining, low: a grille }\n';

/** What one variant of a text holds under `x`, and the complaints as `line:column message (help)`. */
function chosen(text: string, index = 0, key = 'x'): { value: unknown; complaints: readonly string[] } {
  const document = documentOf(axes + text);
  const variants = variantsOf(document).value ?? [];
  const variant = variants[index] ?? { name: 'none', values: new Map() };
  const { value, diagnostics } = chooseVariant(document, variant, variantAxes(document));
  return {
    value: plain(entryOf(value, key)),
    complaints: diagnostics.map((one) => {
      const at = one.span === null ? null : positionAt(one.span.source, one.span.start);
      return `${at?.line}:${at?.column} ${one.message}${one.help === null ? '' : ` (${one.help})`}`;
    }),
  };
}

describe('variantAxes', () => {
  it('reads values as a list, or as a map that says how each is recognised', () => {
    expect(variantAxes(documentOf(axes))).toEqual([
      {
        name: 'side',
        values: [
          { name: 'left', recognise: null },
          { name: 'right', recognise: null },
        ],
      },
      {
        name: 'roof',
        values: [
          { name: 'high', recognise: 'a lining' },
          { name: 'low', recognise: 'a grille' },
        ],
      },
    ]);
    expect(variantAxes(documentOf('kit: a\n'))).toEqual([]);
    expect(variantAxes(documentOf('variants: { side: word, roof: { high: [a] } }\n'))).toEqual([
      { name: 'side', values: [] },
      { name: 'roof', values: [{ name: 'high', recognise: null }] },
    ]);
  });
});

describe('variantsOf', () => {
  const names = (text: string): readonly string[] | undefined =>
    variantsOf(documentOf(text)).value?.map((one: Variant) => one.name);
  const errors = (text: string): readonly string[] =>
    variantsOf(documentOf(text)).diagnostics.map((one) => `${one.code}: ${one.message}`);

  it('is the one variant where the kit has no axes', () => {
    expect(variantsOf(documentOf('kit: a\n')).value).toEqual([{ name: 'only', values: new Map() }]);
  });

  it('is every combination, the first axis slowest', () => {
    expect(names(axes)).toEqual([
      'side=left roof=high',
      'side=left roof=low',
      'side=right roof=high',
      'side=right roof=low',
    ]);
    expect(variantsOf(documentOf(axes)).value?.[2]?.values).toEqual(
      new Map([
        ['side', 'right'],
        ['roof', 'high'],
      ]),
    );
  });

  it('leaves out the combinations that are not built', () => {
    expect(names(`${axes}not built: [[side=left, roof=low]]\n`)).toEqual([
      'side=left roof=high',
      'side=right roof=high',
      'side=right roof=low',
    ]);
    expect(names(`${axes}not built: [side=left roof=low]\n`)).toHaveLength(3);
    expect(names(`${axes}not built: [side=left]\n`)).toEqual(['side=right roof=high', 'side=right roof=low']);
    expect(names(`${axes}not built: [[]]\n`)).toHaveLength(4);
  });

  it('is an error where nothing is left, a value is listed twice, or a condition names nothing', () => {
    expect(errors(`${axes}not built: [side=left, side=right]\n`)).toEqual([
      'variant: no variant is left to be built',
    ]);
    expect(errors('variants: { side: [left, left] }\n')).toEqual(['variant: `side=left` is listed twice']);
    expect(errors('variants: { side: [] }\n')).toEqual(['variant: no variant is left to be built']);
    expect(new Set(errors(`${axes}not built: [sides=left]\n`))).toEqual(
      new Set(['variant: `sides=left` names no axis of this kit']),
    );
    expect(variantsOf(documentOf('variants: { side: [left, left] }\n')).value).toBeNull();
  });

  it('is an error beyond the limit of combinations', () => {
    const many = (axesCount: number): string =>
      `variants:\n${Array.from({ length: axesCount }, (_, axis) => `  a${axis}: ['0', '1']\n`).join('')}`;
    expect(names(many(12))).toHaveLength(4096);
    expect(errors(many(13))).toEqual(['variant: more than 4096 variants']);
    expect(variantsOf(documentOf(many(13))).value).toBeNull();
  });
});

describe('chooseVariant', () => {
  it('takes the value whose condition holds, else the one for all others', () => {
    expect(chosen('x: { side=left: a, side=right: b }\n')).toEqual({ value: 'a', complaints: [] });
    expect(chosen('x: { side=left: a, side=right: b }\n', 2)).toEqual({ value: 'b', complaints: [] });
    expect(chosen('x: { side=left: a, else: b }\n', 2)).toEqual({ value: 'b', complaints: [] });
    expect(chosen('x: { else: b, side=left: a }\n', 0)).toEqual({ value: 'a', complaints: [] });
  });

  it('keeps the axes as they are, also one that is called only', () => {
    const document = documentOf('variants:\n  only: [left, right]\nx: { only=left: a, else: b }\n');
    const variant: Variant = { name: 'only=right', values: new Map([['only', 'right']]) };
    const { value, diagnostics } = chooseVariant(document, variant, variantAxes(document));
    expect(diagnostics).toEqual([]);
    expect(plain(value)).toEqual({ variants: { only: ['left', 'right'] }, x: 'b' });
  });

  it('drops a row whose condition is no text', () => {
    expect(chosen('x: [{ only: [[side=left]], k: v }]\n').value).toEqual([]);
  });

  it('knows alternatives, and several conditions together', () => {
    expect([0, 2].map((index) => chosen('x: { side=left|right: a }\n', index).value)).toEqual(['a', 'a']);
    for (const only of [
      'side=left roof=low',
      '"side=left, roof=low"',
      '[side=left, roof=low]',
      '" side=left  roof=low "',
    ])
      expect([0, 1, 2, 3].map((index) => chosen(`x: [{ only: ${only}, k: v }]\n`, index).value)).toEqual([
        [],
        [expect.objectContaining({ k: 'v' })],
        [],
        [],
      ]);
    expect([0, 2].map((index) => chosen('x: [{ only: side=left|right }]\n', index).value)).toEqual([
      [{ only: 'side=left|right' }],
      [{ only: 'side=left|right' }],
    ]);
  });

  it('takes a key with several conditions, all of which must hold', () => {
    const text = 'x: { side=left roof=high: a, "side=left, roof=low": b, side=right: c }\n';
    expect([0, 1, 2, 3].map((index) => chosen(text, index))).toEqual(
      ['a', 'b', 'c', 'c'].map((value) => ({ value, complaints: [] })),
    );
  });

  it('chooses in lists, in maps and in what was chosen', () => {
    const text = 'x: [p, { side=left: { roof=high: q, roof=low: [r, s] }, side=right: t }]\n';
    expect([0, 1, 2].map((index) => chosen(text, index).value)).toEqual([
      ['p', 'q'],
      ['p', ['r', 's']],
      ['p', 't'],
    ]);
  });

  it('leaves a map alone that is no choice, though a key holds an equals sign elsewhere', () => {
    expect(chosen('x: { a: 1, side=left: 2 }\n').value).toEqual({ a: '1', 'side=left': '2' });
    expect(chosen('x: {}\n').value).toEqual({});
    expect(chosen('x: { else: 1 }\n').value).toEqual({ else: '1' });
    expect(chosen('x: { "=left": 1 }\n').value).toEqual({ '=left': '1' });
    expect(chosen('x: { "a=b=c": 1 }\n').value).toEqual({ 'a=b=c': '1' });
  });

  it('drops rows whose conditions do not hold, in maps and lists', () => {
    const text = 'x: { a: { only: side=left }, b: { only: [side=right, roof=high] }, c: { k: v } }\n';
    expect(chosen(text, 0).value).toEqual({ a: { only: 'side=left' }, c: { k: 'v' } });
    expect(chosen(text, 2).value).toEqual({ b: { only: ['side=right', 'roof=high'] }, c: { k: 'v' } });
    expect(chosen(text, 3).value).toEqual({ c: { k: 'v' } });
    expect(chosen('x: [{ only: side=left, k: 1 }, { k: 2 }]\n', 2).value).toEqual([{ k: '2' }]);
  });

  it('keeps the numbers of the steps as written, where some are dropped', () => {
    const text =
      'work:\n  - { do: a, only: side=left }\n  - { do: b }\n  - { side=left: { do: c }, side=right: { do: d } }\n';
    const document = documentOf(axes + text);
    const right = (variantsOf(document).value ?? [])[2] ?? { name: '', values: new Map() };
    const { value } = chooseVariant(document, right, variantAxes(document));
    expect(
      itemsUnder(value, 'work').map((step) => [
        textUnder(step, stepNumberKey)?.text,
        textUnder(step, 'do')?.text,
      ]),
    ).toEqual([
      ['2', 'b'],
      ['3', 'd'],
    ]);
  });

  it('numbers no list but the work itself', () => {
    expect(chosen('x: { work: [{ do: a }] }\n').value).toEqual({ work: [{ do: 'a' }] });
  });

  it('leaves the axes and the combinations that are not built as they are', () => {
    const document = documentOf(`${axes}not built: [[side=left, roof=low]]\n`);
    const first = (variantsOf(document).value ?? [])[0] ?? { name: '', values: new Map() };
    const { value, diagnostics } = chooseVariant(document, first, variantAxes(document));
    expect(diagnostics).toEqual([]);
    expect(plain(entryOf(value, 'variants'))).toEqual({
      side: ['left', 'right'],
      roof: { high: 'a lining', low: 'a grille' },
    });
    expect(plain(entryOf(value, 'not built'))).toEqual([['side=left', 'roof=low']]);
  });

  it('is an error where no value is given for the variant', () => {
    expect(chosen('x: { side=left: a }\n', 2)).toEqual({
      value: '',
      complaints: [
        '4:4 no value is given for side=right roof=high (add the missing `axis=value`, or `else`)',
      ],
    });
  });

  it('is an error where two values hold', () => {
    expect(chosen('x: { side=left: a, roof=high: b }\n')).toEqual({
      value: 'a',
      complaints: ['4:20 two values hold for side=left roof=high'],
    });
  });

  it('is an error where a condition names no axis or no value, with the nearest one', () => {
    expect(chosen('x: { sidee=left: a, else: b }\n').complaints).toEqual([
      '4:6 `sidee=left` names no axis of this kit (did you mean `side`?)',
    ]);
    expect(chosen('x: { k: { only: zzzzzz } }\n').complaints).toEqual([
      '4:17 `zzzzzz` names no axis of this kit (write axis=value)',
    ]);
    expect(chosen('x: { side=lef: a, else: b }\n').complaints).toEqual([
      '4:6 `side` has no value `lef` (did you mean `left`?)',
    ]);
    expect(chosen('x: { side=zzzzzz: a, else: b }\n').complaints).toEqual([
      '4:6 `side` has no value `zzzzzz`',
    ]);
    expect(chosen('x: { side=left|rightt: a }\n').complaints).toEqual([
      '4:6 `side` has no value `rightt` (did you mean `right`?)',
    ]);
  });
});
