import { readKit } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { complaintsOf, kitOf } from '../support/kit-text.ts';
import { changed, judged } from '../support/verdict-of.ts';

const kit = `kit: nothing asked
revision: A
variants: { side: [left, right] }
stock:
  zone: dry
  studs: { G1: { source: never } }
  connectors: { K1: { cavities: 1..2 } }
  wires: { a: { from: K1:1, to: G1 } }
work:
  - { do: fasten, wire: a }
wanted:
  circuits: { a: [K1:1, G1] }
`;

describe('a run in which nothing was asked', () => {
  it('is judged once something is asked', () => {
    expect(judged(kit)).toMatchObject({ verdict: 'proved', findings: [] });
  });

  it('is an input error without any statement of intent', () => {
    const noIntent = changed(kit, 'wanted:\n  circuits: { a: [K1:1, G1] }\n', 'wanted: {}\n');
    expect(complaintsOf(noIntent)).toEqual([
      '11:9 nothing-wanted: nothing is asked of this kit, so nothing can be proved (state circuits, additions, moves or retired wires under `wanted`)',
    ]);
    const onlyApart = changed(kit, 'circuits: { a: [K1:1, G1] }', 'apart: [[K1:1, K1:2]]');
    expect(complaintsOf(onlyApart)[0]).toContain('nothing-wanted');
  });

  it('is an input error without any step', () => {
    const noStep = changed(kit, 'work:\n  - { do: fasten, wire: a }\n', 'work: []\n');
    expect(complaintsOf(noStep)).toEqual(['9:7 no-step: the kit has no rework step for this variant']);
  });

  it('is an input error for the one variant that has no step', () => {
    const leftOnly = changed(kit, 'wire: a }', 'wire: a, only: side=left }');
    expect(complaintsOf(leftOnly)).toEqual(['10:3 no-step: the kit has no rework step for this variant']);
  });

  it('is an input error where no variant matches', () => {
    const wanting = (condition: string): readonly string[] =>
      readKit({ name: 'kit.yaml', text: kit }, () => null, [condition]).diagnostics.map(
        (one) => `${one.message} (${one.help})`,
      );
    expect(wanting('side=middle')).toEqual([
      'this kit has no variant `side=middle` (one of: side=left, side=right)',
    ]);
    expect(wanting('roof=high')).toEqual([
      'this kit has no variant `roof=high` (one of: side=left, side=right)',
    ]);
    expect(
      readKit({ name: 'kit.yaml', text: kit }, () => null, ['side=left', 'side=right']).diagnostics.map(
        (one) => one.message,
      ),
    ).toEqual(['no variant matches']);
    expect(kitOf(kit).variants.map((one) => one.variant.name)).toEqual(['side=left', 'side=right']);
  });
});
