import { describe, expect, it } from 'vitest';
import { describeFinding, madeWords } from './describe-finding.ts';
import { type FindingKind, findingKinds, type RawFinding, type Witness } from './finding.ts';

const words = (kind: FindingKind, witness: Witness, points: readonly string[] = ['P', 'Q']): string => {
  const raw: RawFinding = { kind, step: null, points, witness, culprits: [], keys: [] };
  return describeFinding(raw);
};
const reach = { source: 'BAT', certain: true, path: [] };
const stub = (at: readonly string[], to: typeof reach | null): Witness => ({
  is: 'stub',
  wire: 'w',
  end: 'e',
  at,
  reach: to,
});
const bare = (to: typeof reach | null): Witness => ({ is: 'bare', end: 'e', reach: to });
const state: Witness = { is: 'state', what: 'what', expected: 'this', found: 'that' };
const fitOf = (range: string | null, value: string | null): Witness => ({
  is: 'fit',
  part: 'T',
  wire: 'w',
  value,
  range,
});

describe('describeFinding', () => {
  it.each<[FindingKind, Witness, string]>([
    ['apart-joined', { is: 'path', path: [] }, 'P and Q must stay apart and are joined as found'],
    ['apart-unknown', state, 'whether P and Q stay apart cannot be told: both leave the model (what)'],
    [
      'touched-unnamed',
      { is: 'touch', what: 'wire', name: 'w', steps: [] },
      'P, Q is worked on or different, and nothing that is wanted names it',
    ],
    ['mate-changed', state, 'P, Q should be mated with this, and is with that'],
    ['kit-wire-idle', state, 'kit wire P, Q serves no circuit that is wanted'],
    [
      'drawing-differs',
      { is: 'drawing', row: 'r', line: 3, drawn: 'A + B', found: 'A | B' },
      'the table drawn after the work says A + B, the work gives A | B',
    ],
    [
      'stub-undeclared',
      stub(['A', 'B'], null),
      'P, Q is left hanging on A, B and no stub is declared for it',
    ],
    ['stub-undeclared', stub([], reach), 'P, Q is left hanging on a source and no stub is declared for it'],
    ['stub-not-dead', stub([], reach), 'P, Q is declared dead, but BAT reaches it'],
    ['stub-not-live', stub([], null), 'P, Q is declared live, but nothing that can be a source reaches it'],
    ['stub-missing', stub([], null), 'a stub of P at Q is declared and there is none'],
    ['stub-unknown', stub([], reach), 'whether P, Q is dead cannot be told: it is not said what BAT is'],
    ['bare-end-live', bare(reach), 'P, Q lies bare while BAT reaches it'],
    ['bare-end', bare(null), 'P, Q is left bare'],
    ['wound-open', state, 'where P, Q was removed the insulation is open'],
    ['cover-unfit', state, 'P, Q is closed by something that is not right for its zone (that)'],
    ['joint-unsealed', state, 'P, Q is not sealed'],
    ['zone-unknown', state, 'whether P, Q is closed well enough cannot be told: its zone is not said'],
    ['open-cavity', state, 'cavity P, Q of a sealed connector is left open'],
    ['seal-missing', state, 'the wire in P, Q has no seal'],
    ['terminal-unfit', fitOf('X', 'K1'), 'terminal T does not belong into P, Q'],
    ['size-out-of-range', fitOf('1..2 mm2', '3 mm2'), 'T takes 1..2 mm2, P, Q is 3 mm2'],
    ['seal-out-of-range', fitOf('1..2 mm', null), 'T takes 1..2 mm, P, Q is ?'],
    ['range-unknown', fitOf(null, null), 'whether T fits P, Q cannot be told: its range is not said'],
    ['range-unknown', fitOf('1..2 mm2', null), 'whether T fits P, Q cannot be told: the size is not said'],
    ['too-many-ends', state, 'more ends are joined than the splice takes: P, Q'],
    ['too-many-wires', state, 'more wires are crimped than the terminal takes: P, Q'],
    ['too-many-rings', state, 'the stud carries more rings than it may: P, Q'],
    ['in-flex-zone', state, 'a splice or tap lies where the wire bends in use: P, Q'],
    ['second-splice', state, 'more than one splice between two disconnect points: P, Q'],
    ['work-on-live', bare(reach), 'P, Q is worked on while BAT reaches it'],
    ['worked-while-plugged', state, 'a terminal is moved while its connector is plugged: P, Q'],
    ['plugged-with-lock-open', state, 'P, Q is plugged while a secondary lock is open'],
    ['not-placed', state, 'P, Q is plugged to a device that is not in its place'],
    ['left-unplugged', state, 'P, Q is left unplugged'],
    ['still-plugged', state, 'P, Q shall be left unplugged and is plugged'],
    ['lock-left-open', state, 'P, Q is left open'],
    ['supply-left-off', state, 'P, Q is left disconnected'],
    ['part-unused', { is: 'count', part: 'T', inBag: 3, used: 1 }, 'P, Q stays in the bag: 3 there, 1 used'],
    ['part-missing', { is: 'count', part: 'T', inBag: 1, used: 3 }, 'P, Q runs out: 1 in the bag, 3 needed'],
    ['jumper-left', state, 'jumper P, Q is still fitted'],
    ['deviation-unmatched', state, 'a deviation allows P, Q, and there is nothing to allow'],
    [
      'variants-differ',
      { is: 'variants', place: 'P', first: 'a', second: 'b' },
      'the two variants differ at P, Q, and nothing says that they may',
    ],
    [
      'variants-alike',
      { is: 'variants', place: 'P', first: 'a', second: 'b' },
      'the two variants are said to differ at P, Q, and they do not',
    ],
  ])('%s', (kind, witness, sentence) => {
    expect(words(kind, witness)).toBe(sentence);
  });

  it.each([
    ['occupied', 'the cavity holds a terminal'],
    ['plug in cavity', 'a plug is in the cavity'],
    ['blocked', 'the position is moulded shut'],
    ['locked', 'the secondary lock is closed'],
    ['latched', 'the position latch is closed'],
    ['already plugged', 'it is plugged'],
    ['not plugged', 'it is not plugged'],
    ['no counterpart', 'it has no other half'],
    ['no lock', 'it has no secondary lock'],
    ['no latch', 'it has no position latch'],
    ['already so', 'it is so already'],
    ['nothing there', 'there is nothing'],
    ['not there', 'it is not there'],
    ['not free', 'it does not hang free'],
    ['covered', 'the end is covered'],
    ['not stripped', 'the end is not stripped'],
    ['already stripped', 'the end is stripped already'],
    ['no terminal', 'the end carries no terminal'],
    ['has terminal', 'the end carries a terminal'],
    ['wrong terminal', 'this kind of terminal does not go there'],
    ['still attached', 'it is still attached'],
    ['no tube', 'no tube was slid on before the crimp'],
  ])('says why a step is refused: %s', (reason, sentence) => {
    expect(words('step-refused', { is: 'refusal', reason })).toBe(
      `the step cannot be done: P, Q: ${sentence}`,
    );
  });

  it('tells joins and opens of a net one after the other', () => {
    const join = { between: ['A', 'B'] as const, path: [], step: 4, cause: 'step' as const };
    const open = {
      circuit: 'lamp',
      fragments: [],
      missing: [['A', 'C'] as const, ['A', 'D'] as const],
      step: 2,
      cause: 'step' as const,
    };
    expect(
      words('wrong-connection', {
        is: 'nets',
        joins: [
          join,
          { ...join, step: null, cause: 'kit as made' },
          { ...join, step: null, cause: 'never parted' },
        ],
        opens: [open, { ...open, circuit: null, step: null, cause: 'never joined' }],
      }),
    ).toBe(
      'A is joined to B, since step 4; A is joined to B, by the kit as it is made; A is joined to B, as found, and nothing parts them; lamp is open, A from C and A from D, parted at step 2; a net that nobody named is open, A from C and A from D, never joined',
    );
  });

  it('says something of every kind, whatever its witness', () => {
    for (const kind of Object.keys(findingKinds) as FindingKind[])
      for (const witness of [state, bare(null), stub([], null), fitOf(null, null)])
        expect(words(kind, witness).length).toBeGreaterThan(0);
  });
});

describe('madeWords', () => {
  it('names the harness, the kit or a step', () => {
    expect([madeWords('stock'), madeWords('kit'), madeWords(7)]).toEqual(['stock', 'kit', 'step 7']);
  });
});
