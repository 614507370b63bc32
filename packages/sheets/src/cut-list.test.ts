import { expect, it } from 'vitest';
import { bench, off, on } from '../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../tests/support/kit-text.ts';
import { cutList } from './cut-list.ts';

/** Strip, terminal and seal of both ends of the only wire of the bag. */
function endsOf(wire: string, work: readonly string[], parts: readonly string[] = []): readonly string[] {
  const job = jobOf(
    bench({
      parts: ['TS: { is: terminal, size: 0.5..1 mm2, strip: 6 mm }', ...parts],
      bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
      bagWires: [`b: { from: A, to: B1:1, ${wire} }`],
      work: [off, ...work, on],
      wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
    }),
  );
  return cutList(job).rows[0]?.cells.slice(4) ?? [];
}

it('takes the strip length of the wire end before that of the terminal, and asks for one that nobody says', () => {
  expect(endsOf('from terminal: TS', [])).toEqual([
    'A',
    '6 mm',
    'TS',
    '',
    'B1:1',
    'length not said',
    'as the connector takes',
    '',
  ]);
  expect(endsOf('from terminal: TS, from strip: 5.5 mm, to strip: 4 mm', [])).toEqual([
    'A',
    '5.5 mm',
    'TS',
    '',
    'B1:1',
    '4 mm',
    'as the connector takes',
    '',
  ]);
});

it('says of a cut end which step puts what on it, and strips none for a tap', () => {
  expect(
    endsOf('colour: RD', ['do: strip, end: b@A', 'do: fit terminal, ends: b@A, with: TS']).slice(0, 4),
  ).toEqual(['A', 'no, cut square; at step 3: 6 mm', 'at step 3: TS', '']);
  expect(
    endsOf('colour: RD', ['do: tap, run: lamp, at: 10 mm from K1:2, branch: b@A, with: TAP, as: T1']).slice(
      0,
      3,
    ),
  ).toEqual(['A', 'no, cut square', 'at step 2: TAP']);
  expect(endsOf('colour: RD', []).slice(0, 3)).toEqual(['A', 'no, cut square', '']);
});

it('says which seal comes on the wire, and which one a step puts on in its place', () => {
  const other = ['S1: { is: seal, insulation: 1..3 mm }', 'S2: { is: seal, insulation: 1..3 mm }'];
  const changed = ['do: remove seal, end: b@A', 'do: fit seal, end: b@A, with: S2'];
  expect(endsOf('insulation: 2 mm, from seal: S1', changed, other)[3]).toBe('S1; at step 3: S2');
  expect(endsOf('insulation: 2 mm', changed.slice(1), other)[3]).toBe('at step 2: S2');
});
