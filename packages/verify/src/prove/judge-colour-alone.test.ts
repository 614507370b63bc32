import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { findingOf, linesOf } from '../../../../tests/support/verdict-of.ts';

const kit = (extra: string): string =>
  bench({
    bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
    bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2, colour: BU }'],
    bagParts: 'TAP: 1',
    work: [off, `do: tap, run: lamp, at: 100 mm from K1:2, branch: b@A, with: TAP, as: T1, ${extra}`, on],
    wanted: ['additions: { b: { to: K1:2, add: [B1:1] } }'],
  });

describe('judgeColourAlone', () => {
  it.each([
    'note: tap the grey wire',
    'caution: "The GY/BK lead, not its neighbour"',
    'hold: is it the light-grey and white one?',
    'note: cut the green wires',
  ])('finds the step that says %s', (extra) => {
    expect(findingOf(kit(extra), 'colour-alone')).toMatchObject({
      obligation: 7,
      step: 2,
      witness: { is: 'state', expected: 'the cavity', found: 'a colour alone' },
    });
  });

  it.each([
    'note: tap the grey wire in cavity 2',
    'note: "the grey wire of K1:2"',
    'hold: red lead of the meter on the tap',
    'note: the wire is grey',
    'caution: no tired lead here',
  ])('lets %s pass', (extra) => {
    expect(linesOf(kit(extra))).toEqual([]);
  });

  it('takes part of a longer name for no place', () => {
    // The stud G1 stands in the word, but does not name a place there.
    expect(findingOf(kit('note: the grey wire by G1X'), 'colour-alone').step).toBe(2);
  });

  it('says which words do it', () => {
    expect(findingOf(kit('note: tap the grey wire'), 'colour-alone').message).toBe(
      'the note names a wire by its colour alone: "tap the grey wire"',
    );
  });
});
