import { describe, expect, it } from 'vitest';
import { kitLimits } from './limits.ts';
import { locate } from './located.ts';
import { readKit, resolveKit } from './read-kit.ts';

const kit = `kit: side lamp
revision: C
cautions: [hot, heavy]
variants: { side: [left, right], roof: { high: a lining, low: a grille } }
not built: [[side=right, roof=low]]
stock:
  connectors: { K1: { cavities: 1..2 } }
  wires: { w: { from: K1:1, to: K1:2, size: { roof=high: 1 mm2, roof=low: 2 mm2 } } }
work:
  - { do: fasten, wire: w, only: side=left }
  - { do: fasten, wire: w }
wanted:
  retired: [{ wire: w }]
`;
const read = (text: string, wanted?: readonly string[]): ReturnType<typeof readKit> =>
  readKit({ name: 'kit.yaml', text }, () => null, wanted);

describe('readKit', () => {
  it('gives the head of the kit and a job for each variant that is built', () => {
    const { value, diagnostics } = read(kit);
    expect(diagnostics).toEqual([]);
    expect(value).toMatchObject({
      kit: 'side lamp',
      revision: 'C',
      cautions: ['hot', 'heavy'],
      variantCount: 3,
    });
    expect(value?.axes.map((axis) => axis.name)).toEqual(['side', 'roof']);
    expect(
      value?.variants.map(({ variant, job }) => [variant.name, job.variant, job.kit, job.revision]),
    ).toEqual([
      ['side=left roof=high', 'side=left roof=high', 'side lamp', 'C'],
      ['side=left roof=low', 'side=left roof=low', 'side lamp', 'C'],
      ['side=right roof=high', 'side=right roof=high', 'side lamp', 'C'],
    ]);
    expect(value?.variants.map(({ job }) => job.wires[0]?.size?.mm2)).toEqual([1, 2, 1]);
    expect(value?.variants.map(({ job }) => job.steps.map((step) => step.number))).toEqual([
      [1, 2],
      [1, 2],
      [2],
    ]);
  });

  it('resolves variants for which every choice is the same only once', () => {
    const text = kit.replace('roof: { high', 'paint: [red, white, blue], roof: { high');
    const { value } = read(text);
    const jobs = (value?.variants ?? []).map(({ job }) => job);
    expect(jobs).toHaveLength(9);
    expect(new Set(jobs.map((job) => job.steps)).size).toBe(3);
    expect(new Set(jobs.map((job) => job.variant)).size).toBe(9);
    // Whatever is the same job is word for word what it is when it is read alone.
    for (const job of jobs) {
      const alone = read(text, job.variant.split(' ')).value?.variants[0]?.job;
      expect(JSON.stringify(job)).toBe(JSON.stringify(alone));
    }
  });

  it('refuses more conductors than one run may hold over all its variants', () => {
    const values = Array.from({ length: 201 }, (_, at) => `a${at}`);
    const wires = Array.from(
      { length: 1000 },
      (_, at) => `    w${at}: { from: K1:1, to: K1:2, length: LENGTH }`,
    );
    const text = (length: string): string =>
      `kit: a\nrevision: b\nvariants: { axis: [${values.join(', ')}] }\nstock:\n  connectors: { K1: { cavities: 1..2 } }\n` +
      `  wires:\n${wires.join('\n').replace('LENGTH', length).replaceAll('LENGTH', '1 m')}\n` +
      'work: [{ do: fasten, wire: w1 }]\nwanted: { retired: [{ wire: w1 }] }\n';
    // All 201 variants but one are alike, so they hold 2,000 conductors and not 201,000.
    expect(read(text('{ axis=a0: 1 m, else: 2 m }')).diagnostics).toEqual([]);
    const lengths = values.map((name, at) => `axis=${name}: ${at + 1} m`).join(', ');
    const { value, diagnostics } = read(text(`{ ${lengths} }`));
    expect(value).toBeNull();
    expect(diagnostics.map(({ code, help }) => [code, help])).toEqual([
      ['too-many', 'judge fewer variants in a run, with `--variant axis=value`'],
    ]);
  });

  it('gives the variants that were asked for, and counts all', () => {
    const { value } = read(kit, ['roof=high']);
    expect(value?.variants.map(({ variant }) => variant.name)).toEqual([
      'side=left roof=high',
      'side=right roof=high',
    ]);
    expect(value?.variantCount).toBe(3);
    expect(read(kit, ['roof=low', 'side=left']).value?.variants).toHaveLength(1);
  });

  it('has no value where nothing matches, and says why', () => {
    expect(read(kit, ['roof=low', 'side=right'])).toEqual({
      value: null,
      diagnostics: [
        {
          code: 'variant',
          severity: 'error',
          message: 'no variant matches',
          span: null,
          related: [],
          help: null,
        },
      ],
    });
    expect(read(kit, ['roof=flat']).diagnostics).toEqual([
      {
        code: 'variant',
        severity: 'error',
        message: 'this kit has no variant `roof=flat`',
        span: null,
        related: [],
        help: 'one of: side=left, side=right, roof=high, roof=low',
      },
    ]);
    const plain = kit
      .replace(/variants: .*\nnot built: .*\n/, '')
      .replace(', only: side=left', '')
      .replace(/\{ roof=high: 1 mm2, .* mm2 \}/, '1 mm2');
    expect(read(plain).value?.variants.map(({ variant }) => variant.name)).toEqual(['only']);
    expect(read(plain, ['side=left']).diagnostics[0]?.help).toBe('the kit has no variants');
  });

  it('has no value where the text is no document', () => {
    const { value, diagnostics } = read('a: *b\n');
    expect(value).toBeNull();
    expect(diagnostics.map((one) => one.code)).toContain('alias');
  });

  it('complains once of what is wrong in several variants', () => {
    const { value, diagnostics } = read(kit.replace('from: K1:1', 'from: K9:1'));
    expect(value).toBeNull();
    expect(diagnostics.map((one) => one.message)).toEqual(['no place or splice is called `K9:1`']);
  });

  it('complains of a variant that alone is wrong', () => {
    const { diagnostics } = read(kit.replace('roof=low: 2 mm2', 'roof=low: 2 mm7'));
    expect(diagnostics).toHaveLength(1);
    expect(read(kit.replace('roof=low: 2 mm2', 'roof=low: 2 mm7'), ['roof=high']).diagnostics).toEqual([]);
  });

  it('stops at the limit of complaints, and counts the rest', () => {
    const wires = Array.from(
      { length: kitLimits.diagnostics + 30 },
      (_, index) => `w${index}: { from: K9:${index}, to: K1:1 }`,
    );
    const { diagnostics } = read(
      kit.replace(/w: \{ from: .* \} \} \}/, `w: { from: K1:1, to: K1:2 }, ${wires.join(', ')} }`),
    );
    expect(diagnostics).toHaveLength(kitLimits.diagnostics + 1);
    const more = diagnostics.filter((one) => one.code === 'and-more');
    expect(more.map((one) => one.message)).toEqual(['and 30 more like these']);
  });

  it('resolves a document that a program made', () => {
    const { value, diagnostics } = resolveKit(
      locate({
        kit: 'made',
        revision: '1',
        stock: {
          connectors: new Map([['K1', { cavities: ['1', '2'] }]]),
          wires: new Map([['w', { from: 'K1:1', to: 'K1:2' }]]),
        },
        work: [{ do: 'fasten', wire: 'w' }],
        wanted: { retired: [{ wire: 'w' }] },
      }),
      () => null,
    );
    expect(diagnostics).toEqual([]);
    expect(value?.variants[0]?.job.steps[0]?.action).toEqual({ kind: 'fasten', piece: 0, part: null });
  });
});

describe('the work of other variants', () => {
  it('is done on the machine of this one', () => {
    const left = read(kit).value?.variants[0];
    const others = [...(left?.otherWork?.() ?? [])];
    expect(others.map(([name, { steps }]) => [name, steps.length])).toEqual([
      ['side=left roof=low', 2],
      ['side=right roof=high', 1],
    ]);
    expect(others.map(([, { wires }]) => wires[0]?.size)).toEqual(others.map(() => left?.job.wires[0]?.size));
  });

  it('is left out where it names what this machine has not', () => {
    const { value, diagnostics } = read(`kit: a
revision: A
variants: { roof: [high, low] }
stock:
  connectors: { K1: { cavities: 1..4 } }
  wires: { v: { from: K1:1, to: K1:2 }, w: { only: roof=high, from: K1:3, to: K1:4 } }
work: [{ do: fasten, wire: v }, { do: fasten, wire: w, only: roof=high }]
wanted: { retired: [{ wire: v }] }
`);
    expect(diagnostics).toEqual([]);
    expect(value?.variants.map((one) => [...(one.otherWork?.().keys() ?? [])])).toEqual([['roof=low'], []]);
  });
});
