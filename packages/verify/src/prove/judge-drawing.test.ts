import { describe, expect, it } from 'vitest';
import { asFound, bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf } from '../../../../tests/support/verdict-of.ts';

const own = {
  bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
  bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2, colour: BU }'],
  bagParts: 'TAP: 1',
  work: [off, 'do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1', on],
  wanted: ['additions: { b: { to: K1:2, add: [B1:1] } }', 'after table: after.csv'],
};
const rows = [
  'main,BAT,K1:1,2.5 mm2,RD',
  'lamp,K1:2,T1,0.5 mm2,GY',
  'lamp rest,T1,K2:1,,',
  'lamp return,K2:2,G1,,',
  'horn,K1:3,K3:1,,',
  'horn return,K3:2,G1,,',
  'b,T1,B1:1,0.5 mm2,BU',
];
const drawn = (list: readonly string[]): ReadonlyMap<string, string> =>
  new Map([['after.csv', `wire,from,to,size,colour\n${list.join('\n')}\n`]]);
const changedRow = (from: string, to: string): readonly string[] =>
  rows.map((row) => (row.startsWith(`${from},`) ? to : row));

describe('the table drawn after the work', () => {
  it('agrees with the work, taps drawn as points', () => {
    expect(linesOf(bench(own), drawn(rows))).toEqual([]);
  });

  it('is one net the same, however its wires are drawn', () => {
    expect(linesOf(bench(own), drawn(changedRow('lamp rest', 'lamp rest,B1:1,K2:1,,')))).toEqual([]);
  });

  it('differs where a net is drawn open', () => {
    const finding = findingOf(
      bench(own),
      'drawing-differs',
      drawn(rows.filter((row) => !row.startsWith('lamp rest'))),
    );
    expect(finding).toMatchObject({
      obligation: 3,
      step: null,
      points: ['B1:1', 'K1:2', 'K2:1'],
      message: 'the table drawn after the work says K1:2 + B1:1 | K2:1, the work gives K1:2 + K2:1 + B1:1',
      witness: {
        is: 'drawing',
        row: 'lamp',
        line: 3,
        drawn: 'K1:2 + B1:1 | K2:1',
        found: 'K1:2 + K2:1 + B1:1',
      },
    });
  });

  it('differs where two nets are drawn as one, in one finding', () => {
    const finding = findingOf(bench(own), 'drawing-differs', drawn([...rows, 'link,K1:2,K1:3,,']));
    expect(finding.witness).toMatchObject({
      is: 'drawing',
      drawn: 'K1:2 + K1:3 + K2:1 + K3:1 + B1:1',
      found: 'K1:2 + K2:1 + B1:1 | K1:3 + K3:1',
    });
    expect(linesOf(bench(own), drawn([...rows, 'link,K1:2,K1:3,,']))).toHaveLength(1);
  });

  it('differs where a net that is there is not drawn at all', () => {
    expect(linesOf(bench(own), drawn(rows.filter((row) => !row.startsWith('horn,'))))).toEqual([
      'drawing-differs@- K1:3, K3:1',
    ]);
    expect(
      findingOf(bench(own), 'drawing-differs', drawn(rows.filter((row) => !row.startsWith('horn,')))).witness,
    ).toMatchObject({ row: '', line: null });
  });

  it('differs in size or colour of a wire, at its line', () => {
    expect(
      findingOf(bench(own), 'drawing-differs', drawn(changedRow('lamp', 'lamp,K1:2,T1,0.75 mm2,GY'))),
    ).toMatchObject({
      step: null,
      points: ['lamp'],
      message: 'the table drawn after the work says size 0.75 mm2, the work gives size 0.5 mm2',
      witness: { is: 'drawing', row: 'lamp', line: 3, drawn: 'size 0.75 mm2', found: 'size 0.5 mm2' },
    });
    expect(
      findingOf(bench(own), 'drawing-differs', drawn(changedRow('b', 'b,T1,B1:1,0.5 mm2,BU/RD'))).witness,
    ).toMatchObject({ row: 'b', drawn: 'colour BU/RD', found: 'colour BU' });
    expect(linesOf(bench(own), drawn(changedRow('main', 'main,BAT,K1:1,1 mm2,BK')))).toEqual([
      'drawing-differs@- main',
      'drawing-differs@- main',
    ]);
  });

  it('says nothing of what it leaves blank, nor of wires that it calls by other names', () => {
    expect(linesOf(bench(own), drawn(changedRow('main', 'main,BAT,K1:1,,')))).toEqual([]);
    expect(linesOf(bench(own), drawn(changedRow('main', 'feed,BAT,K1:1,9 mm2,BK')))).toEqual([]);
    expect(linesOf(bench(own), drawn(changedRow('horn', 'horn,K1:3,K3:1,0.75 mm2,BK')))).toEqual([
      'drawing-differs@- horn',
    ]);
    expect(linesOf(bench(own), drawn(changedRow('horn', 'horn,K1:3,K3:1,AWG 18,GN')))).toEqual([
      'drawing-differs@- horn',
    ]);
  });

  it('names the last step at its places', () => {
    const moved = {
      work: [
        off,
        'do: unplug, connector: K1',
        'do: withdraw, cavity: K1:3',
        'do: insert, end: horn@K1:3, cavity: K1:4',
        'do: plug, connector: K1',
        on,
      ],
      wanted: ['moves: [{ from: K1:3, to: K1:4 }]', 'after table: after.csv'],
    };
    const table = [
      'main,BAT,K1:1,,',
      'lamp,K1:2,K2:1,,',
      'lamp return,K2:2,G1,,',
      'horn,K1:3,K3:1,,',
      'horn return,K3:2,G1,,',
    ];
    expect(linesOf(bench(moved), drawn(table))).toEqual(['drawing-differs@4 K1:3, K1:4, K3:1']);
    expect(linesOf(bench(moved), drawn(table.map((row) => row.replace('K1:3', 'K1:4'))))).toEqual([]);
  });

  it('is not there, and then nothing is compared', () => {
    expect(linesOf(bench({ work: ['do: fasten, wire: lamp'], wanted: asFound }))).toEqual([]);
  });
});
