import { describe, expect, it } from 'vitest';
import { kitVerdictOf, lineOf } from '../../../../tests/support/verdict-of.ts';

/** A lamp tapped on the left or the right of a machine, from plugs PL and PR, in a kit of two sides and two roofs. */
const kit = ({
  agree = '{ axis: side, between: [left, right], pairs: { PL: PR } }',
  at = '{ side=left: "PL:1", side=right: "PR:1" }',
  only = '',
  more = '',
}: {
  agree?: string;
  at?: string;
  only?: string;
  more?: string;
} = {}): string => `kit: sides
revision: A
variants: { side: [left, right], roof: [high, low] }
${only}parts: { T: { is: terminal, size: 0.5..1 mm2 } }
stock:
  zone: dry
  studs: { G1: { source: never }, G2: { source: never } }
  connectors:
    PL: { cavities: 1..3, source: { 1..3: never }, accepts: [T] }
    PR: { cavities: 1..3, source: { 1..3: never }, accepts: [T] }
  wires:
    left: { from: PL:2, to: G1 }
    right: { from: PR:2, to: G1 }
bag:
  zone: dry
  connectors: { B: { cavities: 1..2, into: BD }, BD: { device: yes, cavities: 1..2, source: { 1..2: never } } }
  wires: { w: { from: B:1, to: A, size: 0.5 mm2, to terminal: T }${more} }
work:
  - { do: insert, end: w@A, cavity: ${at} }
  - { do: place, device: BD }
  - { do: plug, connector: B }
wanted:
  circuits: { w: [B:1, ${at}] }
  agree: ${agree}
`;

/** The findings of each variant, one line each. */
function lines(text: string): Record<string, readonly string[]> {
  return Object.fromEntries(
    kitVerdictOf(text).variants.map((one) => [one.variant, one.findings.map(lineOf)]),
  );
}
const all = (list: readonly string[]): Record<string, readonly string[]> => ({
  'side=left roof=high': list,
  'side=left roof=low': list,
  'side=right roof=high': list,
  'side=right roof=low': list,
});

describe('two variants under a declared pairing', () => {
  it('agree where the work does the same on both sides', () => {
    expect(lines(kit())).toEqual(all([]));
    const pairs = '{ axis: side, between: [left, right], pairs: { PL:1: PR:1, PL:2: PR:2 } }'.replaceAll(
      /(P[LR]:\d)/g,
      '"$1"',
    );
    expect(lines(kit({ agree: pairs }))).toEqual(all([]));
  });

  it('have no pairing, and then nothing is judged', () => {
    const text = kit().replace(/ {2}agree: .*\n/, '');
    expect(lines(text)).toEqual(all([]));
    const obligations = kitVerdictOf(text).variants[0]?.obligations;
    expect(obligations?.[7]).toEqual({
      obligation: 8,
      verdict: 'proved',
      note: 'no pairing of variants is declared',
    });
    expect(kitVerdictOf(kit()).variants[0]?.obligations[7]).toEqual({
      obligation: 8,
      verdict: 'proved',
      note: null,
    });
  });

  it('differ where it does not, once for what is one net', () => {
    const other = kit({ at: '{ side=left: "PL:1", side=right: "PR:3" }' });
    expect(lines(other)).toEqual(all(['variants-differ@- B:1, BD:1, PL:1, PL:3']));
    const [finding] = kitVerdictOf(other).variants[0]?.findings ?? [];
    expect(finding).toMatchObject({
      obligation: 8,
      message: 'the two variants differ at B:1, BD:1, PL:1, PL:3, and nothing says that they may',
      witness: {
        is: 'variants',
        place: 'B:1',
        first: 'side=left roof=high: gains PL:1, loses nothing',
        second: 'side=right roof=high: gains PL:3, loses nothing',
      },
    });
  });

  it('are said to differ, and do', () => {
    const differ = kit({
      at: '{ side=left: "PL:1", side=right: "PR:3" }',
      agree: '{ axis: side, between: [left, right], pairs: { PL: PR }, differ: ["PL:1", "PL:3"] }',
    });
    expect(lines(differ)).toEqual(all([]));
  });

  it('are said to differ, and do not', () => {
    const alike = kit({ agree: '{ axis: side, between: [left, right], pairs: { PL: PR }, differ: "PL:3" }' });
    expect(lines(alike)).toEqual(all(['variants-alike@- PL:3']));
    expect(kitVerdictOf(alike).variants[0]?.findings[0]).toMatchObject({
      obligation: 8,
      message: 'the two variants are said to differ at PL:3, and they do not',
      witness: {
        is: 'variants',
        place: 'PL:3',
        first: 'side=left roof=high: unchanged',
        second: 'side=right roof=high: unchanged',
      },
    });
  });

  it('are compared along the declared axis only, all else being equal', () => {
    const byRoof = '{ roof=high: "PL:1", roof=low: "PL:3" }';
    expect(lines(kit({ at: byRoof, agree: '{ axis: side, between: [left, right] }' }))).toEqual(all([]));
    const across = lines(kit({ at: byRoof, agree: '{ axis: roof, between: [high, low] }' }));
    expect(across).toEqual(all(['variants-differ@- B:1, BD:1, PL:1, PL:3']));
  });

  it('without a pair have no partner', () => {
    expect(
      lines(
        kit({
          only: 'not built: [[side=right, roof=low]]\n',
          at: '{ side=left: "PL:1", side=right: "PR:3" }',
        }),
      ),
    ).toEqual({
      'side=left roof=high': ['variants-differ@- B:1, BD:1, PL:1, PL:3'],
      'side=left roof=low': [],
      'side=right roof=high': ['variants-differ@- B:1, BD:1, PL:1, PL:3'],
    });
  });
});
