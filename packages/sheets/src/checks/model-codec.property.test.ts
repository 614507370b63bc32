import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packModel, unpackModel } from './model-codec.ts';

const leaf = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((one) => (Object.is(one, -0) ? 0 : one)),
  fc.boolean(),
  fc.constant(null),
);
const { model } = fc.letrec<{ model: unknown }>((tie) => ({
  model: fc.oneof(
    { maxDepth: 4 },
    leaf,
    fc.array(tie('model'), { maxLength: 4 }),
    fc.array(fc.tuple(leaf, tie('model')), { maxLength: 3 }).map((pairs) => new Map(pairs)),
    fc.array(leaf, { maxLength: 4 }).map((all) => new Set(all)),
    fc.array(fc.integer({ min: -(2 ** 31), max: 2 ** 31 - 1 })).map((all) => Int32Array.from(all)),
    fc.record({ name: tie('model'), place: tie('model') }),
    fc.record({ wire: leaf }),
  ),
}));

describe('packing a model for a page', () => {
  it('gives back what was packed, through JSON', () => {
    fc.assert(
      fc.property(model, (one) => {
        expect(unpackModel(JSON.parse(JSON.stringify(packModel(one))))).toEqual(one);
      }),
    );
  });

  it('keeps equal parts once and leaves out where things stood', () => {
    const half = { label: '4', span: { start: 3 } };
    const packed = packModel([half, { ...half, span: { start: 9 } }, [half]]);
    expect(packed.parts.filter(([form]) => (form as number) >= 0)).toEqual([[0, '4', null]]);
    expect(unpackModel(packed)).toEqual([
      { label: '4', span: null },
      { label: '4', span: null },
      [{ label: '4', span: null }],
    ]);
  });

  it('refuses keys that are told apart by more than what is in them', () => {
    expect(() =>
      packModel(
        new Map([
          [[1], 'a'],
          [[1], 'b'],
        ]),
      ),
    ).toThrow('keyed by an object');
    expect(() => packModel(new Set([{ place: 1 }]))).toThrow('keyed by an object');
  });

  it('refuses a number that JSON has no form for', () => {
    expect(() => packModel({ ohm: Number.POSITIVE_INFINITY })).toThrow('Infinity');
  });
});
