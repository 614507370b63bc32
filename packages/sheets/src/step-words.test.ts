import { expect, it } from 'vitest';
import { bench, off, on } from '../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../tests/support/kit-text.ts';
import { stepWords } from './step-words.ts';

it('names the seal that comes on with a terminal, which would else be forgotten', () => {
  const words = (seal: string): readonly string[] => {
    const job = jobOf(
      bench({
        parts: ['TS: { is: terminal, size: 0.5..1 mm2 }', 'S1: { is: seal, insulation: 1..3 mm }'],
        bagConnectors: ['B1: { cavities: 1..1, source: { 1: never } }'],
        bagWires: ['b: { from: A, to: B1:1, size: 0.5 mm2, insulation: 2 mm }'],
        work: [off, 'do: strip, end: b@A', `do: fit terminal, ends: b@A, with: TS${seal}`, on],
        wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
      }),
    );
    return job.steps.map(({ action }) => stepWords(job, action));
  };
  expect(words(', seal: S1')[2]).toBe('fit terminal TS and seal S1 to b@A');
  expect(words('')[2]).toBe('fit terminal TS to b@A');
});
