import { locate, resolveKit } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { asFound, bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { kitOf } from '../../../../tests/support/kit-text.ts';
import { kitVerdictOf, linesOf, verdictOf } from '../../../../tests/support/verdict-of.ts';
import { type KitVerdict, proveKit } from './prove-kit.ts';

const idle = ['do: fasten, wire: lamp'];

describe('the verdict', () => {
  it('names the kit, its revision and how many variants were judged of how many there are', () => {
    const text = bench({ head: 'variants: { side: [left, right] }\n', work: idle, wanted: asFound });
    expect(kitVerdictOf(text)).toMatchObject({
      kit: 'bench',
      revision: 'A',
      verdict: 'proved',
      judged: 2,
      variantCount: 2,
      diagnostics: [],
    });
    expect(kitVerdictOf(text).variants.map((one) => one.variant)).toEqual(['side=left', 'side=right']);
  });

  it('is made once for variants that are one job under two names, and is the same as made for each', () => {
    const text = bench({
      head: 'variants: { side: [left, right], paint: [red, white] }\n',
      work: [...idle, 'do: fasten, wire: lamp, only: side=left'],
      wanted: asFound,
    });
    const printed = (argument: KitVerdict): readonly string[] =>
      argument.variants.map(({ judgement: _, ...rest }) => JSON.stringify(rest));
    const kit = kitOf(text);
    const verdict = proveKit(kit);
    const judgements = verdict.variants.map(({ judgement }) => judgement);
    expect(judgements).toHaveLength(4);
    expect(new Set(judgements).size).toBe(2);
    const apart = kit.variants.map(({ variant, job }) => ({
      variant,
      job: { ...job, steps: [...job.steps] },
    }));
    const each = proveKit({ ...kit, variants: apart });
    expect(new Set(each.variants.map(({ judgement }) => judgement)).size).toBe(4);
    expect(printed(verdict)).toEqual(printed(each));
  });

  it('is the worst of the variants, and of the obligations of each', () => {
    const text = (left: string, right: string): string =>
      bench({
        head: 'variants: { side: [left, right] }\n',
        parts: ['C: { is: cover, size: 0.3..3 mm2, zone: dry }'],
        bagParts: 'C: 1',
        wires: [
          's: { from: K5:1, to: G2, size: 0.5 mm2, zone: { side=left: ZL, side=right: ZR } }'
            .replace('ZL', left)
            .replace('ZR', right),
        ],
        work: ['do: withdraw, cavity: K5:1', 'do: cover, end: s@K5:1, with: C'],
        wanted: ['retired: [{ cavity: K5:1 }]', 'stubs: [{ of: s, at: G2, is: dead }]'],
      });
    expect(kitVerdictOf(text('dry', 'dry')).verdict).toBe('proved');
    expect(kitVerdictOf(text('dry', 'wet')).verdict).toBe('refuted');
    expect(kitVerdictOf(text('wet', 'dry')).variants.map((one) => one.verdict)).toEqual([
      'refuted',
      'proved',
    ]);
    const undecided = text('dry', 'dry').replace('size: 0.3..3 mm2, zone: dry', 'size: 1..1 mm2');
    expect(kitVerdictOf(undecided).verdict).toBe('refuted');
    const unknown = text('dry', 'dry').replace('size: 0.5 mm2, zone', 'zone');
    expect(kitVerdictOf(unknown).verdict).toBe('undecided');
    expect(kitVerdictOf(unknown).variants[0]?.obligations.filter((one) => one.verdict !== 'proved')).toEqual([
      { obligation: 6, verdict: 'undecided', note: null },
    ]);
  });

  it('claims obligations 1 to 8, and says that 9 and 10 are not claimed without electrical data', () => {
    const verdict = kitVerdictOf(bench({ work: idle, wanted: asFound }));
    expect(verdict.variants[0]?.obligations.map((one) => [one.obligation, one.verdict])).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((one) => [one, 'proved']),
    );
    expect(verdict.notClaimed).toEqual([9, 10]);
  });

  it('is null where intent contradicts itself, and every contradiction is told with its variant', () => {
    const wanted = ['circuits: { a: [K1:2] }'];
    expect(kitVerdictOf(bench({ work: idle, wanted }))).toMatchObject({
      verdict: null,
      variants: [],
      judged: 1,
      variantCount: 1,
    });
    const two = kitVerdictOf(bench({ head: 'variants: { side: [left, right] }\n', work: idle, wanted }));
    expect(two.diagnostics.map((one) => one.message)).toEqual([
      '`a` does not say everything: also on it: `K2:1`, `L:1`',
    ]);
    const made = resolveKit(
      locate({
        kit: 'made',
        revision: '1',
        variants: { side: ['left', 'right'] },
        stock: {
          connectors: new Map([['K1', { cavities: ['1', '2'] }]]),
          wires: new Map([['w', { from: 'K1:1', to: 'K1:2' }]]),
        },
        work: [{ do: 'fasten', wire: 'w' }],
        wanted: { circuits: new Map([['a', ['K1:1']]]) },
      }),
      () => null,
    );
    if (made.value === null) throw new Error('the kit cannot be used');
    expect(proveKit(made.value).diagnostics.map((one) => one.message)).toEqual([
      'side=left: `a` does not say everything: also on it: `K1:2`',
      'side=right: `a` does not say everything: also on it: `K1:2`',
    ]);
  });

  it('is the same again, to the byte', () => {
    const text = bench({
      work: ['do: cut, wire: lamp, at: 1 mm from K1:2, leaves: [x, y]', 'do: unplug, connector: K3'],
      wanted: asFound,
    });
    const json = (): string =>
      JSON.stringify(proveKit(kitOf(text)).variants.map(({ judgement: _, ...rest }) => rest));
    expect(json()).toBe(json());
  });
});

describe('findings', () => {
  it('stand in order of obligation, step, kind and points', () => {
    const text = bench({
      splices: '',
      connectors: [
        'X: { cavities: 1..2, sealed: yes, source: { 1..2: never } }',
        'Y: { cavities: 1..1, sealed: yes, source: { 1: never } }',
      ],
      work: [off, 'do: cut, wire: lamp, at: 1 mm from K1:2, leaves: [x, y]', 'do: unplug, connector: K5'],
      wanted: asFound,
    });
    expect(linesOf(text).map((line) => line.split(' <- ')[0])).toEqual([
      'circuit-open@2 K1:2, K2:1',
      'open-cavity@- X:1',
      'open-cavity@- X:2',
      'open-cavity@- Y:1',
      'supply-left-off@1 battery',
      'step-refused@3 K5',
    ]);
  });

  it('have their points sorted and their culprits in order, once each', () => {
    const [finding] = verdictOf(
      bench({ work: [off, 'do: cut, wire: lamp, at: 1 mm from K1:2, leaves: [x, y]', on], wanted: asFound }),
    ).findings;
    expect(finding?.points).toEqual(['K1:2', 'K2:1']);
    // The supply that step 3 switched on makes the cut ends live besides.
    expect(finding?.culprits).toEqual([2, 3]);
  });
});

describe('deviations', () => {
  const allowed = (deviations: string): string =>
    bench({
      connectors: ['X: { cavities: 1..2, sealed: yes, source: { 1..2: never } }'],
      work: idle,
      wanted: [...asFound, `deviations: [${deviations}]`],
    });

  it('excuse named findings, and are listed with what they excuse', () => {
    const verdict = verdictOf(
      allowed(
        '{ allows: open-cavity, at: X:1, by: me, why: w }, { allows: open-cavity, at: X:2, by: you, why: v }',
      ),
    );
    expect(verdict.verdict).toBe('proved');
    expect(verdict.deviations).toEqual([
      {
        allows: 'open-cavity',
        at: 'X:1',
        by: 'me',
        why: 'w',
        excuses: ['cavity X:1 of a sealed connector is left open'],
      },
      {
        allows: 'open-cavity',
        at: 'X:2',
        by: 'you',
        why: 'v',
        excuses: ['cavity X:2 of a sealed connector is left open'],
      },
    ]);
  });

  it('excuse one finding each, so that several of a kind must be told apart by their place', () => {
    const lines = linesOf(
      allowed('{ allows: open-cavity, by: me, why: w }, { allows: open-cavity, at: X:1, by: me, why: w }'),
    );
    expect(lines).toEqual(['open-cavity@- X:2', 'deviation-unmatched@- open-cavity']);
    expect(verdictOf(allowed('{ allows: open-cavity, by: me, why: w }')).findings).toContainEqual(
      expect.objectContaining({
        witness: {
          is: 'state',
          what: 'open-cavity',
          expected: 'one finding to excuse',
          found: '2, and no place is said',
        },
        culprits: [],
      }),
    );
  });

  it('that match nothing are findings, with what they were for', () => {
    const twice = '{ allows: open-cavity, at: X:1, by: me, why: w }';
    expect(linesOf(allowed(`${twice}, ${twice}, { allows: open-cavity, at: X:2, by: me, why: w }`))).toEqual([
      'deviation-unmatched@- X:1, open-cavity',
    ]);
    const both =
      '{ allows: open-cavity, at: X:1, by: me, why: w }, { allows: open-cavity, at: X:2, by: me, why: w }';
    expect(verdictOf(allowed(`${both}, { allows: zzz, by: me, why: w }`)).findings[0]).toMatchObject({
      kind: 'deviation-unmatched',
      obligation: 7,
      points: ['zzz'],
      message: 'a deviation allows zzz, and there is nothing to allow',
      witness: { is: 'state', what: 'zzz', expected: 'one finding to excuse', found: 'none' },
    });
  });

  it('never excuse a deviation that excuses nothing', () => {
    const text = allowed(
      '{ allows: seal-missing, by: me, why: w }, { allows: deviation-unmatched, by: me, why: w }',
    );
    expect(verdictOf(text).verdict).toBe('refuted');
  });

  it('never excuse obligations 1 to 5 or 8', () => {
    const text = bench({
      work: [off, 'do: cut, wire: lamp, at: 1 mm from K1:2, leaves: [x, y]', on],
      wanted: [
        ...asFound,
        'deviations: [{ allows: circuit-open, by: a, why: b }, { allows: bare-end, by: a, why: b }, { allows: touched-unnamed, by: a, why: b }, { allows: stub-undeclared, by: a, why: b }]',
      ],
    });
    expect(verdictOf(text).deviations.map((one) => one.excuses)).toEqual([[], [], [], []]);
    expect(linesOf(text).filter((line) => line.startsWith('deviation-unmatched'))).toHaveLength(4);
  });
});

describe('what is told besides', () => {
  it('is what was opened only to pass through', () => {
    expect(
      verdictOf(bench({ work: ['do: unplug, connector: K2', 'do: plug, connector: L'], wanted: asFound }))
        .disturbed,
    ).toEqual(['K2', 'L']);
    expect(
      verdictOf(
        bench({
          bagConnectors: ['B: { cavities: 1..1, into: BD }', 'BD: { device: yes, cavities: 1..1 }'],
          work: ['do: place, device: BD', 'do: plug, connector: B'],
          wanted: asFound,
        }),
      ).disturbed,
    ).toEqual([]);
  });

  it('is advice, which never changes the verdict', () => {
    const cut = 'do: cut, wire: lamp, at: 100 mm from K1:2, leaves: [x, y]';
    const joined = [
      'do: strip, end: x@y',
      'do: strip, end: y@x',
      'do: join, ends: [x@y, y@x], with: SP, as: J1',
      'do: seal, joint: J1',
    ];
    const without = verdictOf(bench({ bagParts: 'SP: 1', work: [off, cut, ...joined, on], wanted: asFound }));
    expect([without.verdict, without.advice]).toEqual([
      'proved',
      ['no step proves the conductor dead before the cut at step 2'],
    ]);
    const late = verdictOf(
      bench({
        bagParts: 'SP: 1',
        work: [off, cut, 'do: prove dead, at: K1:2', ...joined, on],
        wanted: asFound,
      }),
    );
    expect(late.advice).toHaveLength(1);
    const proven = verdictOf(
      bench({
        bagParts: 'SP: 1',
        work: [off, 'do: prove dead, at: K1:2', cut, ...joined, on],
        wanted: asFound,
      }),
    );
    expect(proven.advice).toEqual([]);
    expect(verdictOf(bench({ supplies: '{}', work: idle, wanted: asFound })).advice).toEqual([
      'the kit names no supply, so every place whose source is not said counts as live all the time',
    ]);
  });
});
