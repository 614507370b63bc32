import { expect, it } from 'vitest';
import { explanationWords, fewAndPairs } from './explanation-words.ts';

const fault = (id: string) => ({
  id,
  words: `${id} is open`,
  likelihood: 'often',
  reason: 'made by hand',
  origin: 'build error',
});
const [none, one, two] = [[], [fault('a')], [fault('a'), fault('b')]].map((faults) => ({ faults }));
if (none === undefined || one === undefined || two === undefined) throw new Error('three explanations');

it('says every fault of an explanation with how likely it is, why, and who makes it', () => {
  expect(explanationWords(none)).toBe('nothing is wrong: as designed');
  expect(explanationWords(two)).toBe(
    'a is open (often: made by hand; build error), and b is open (often: made by hand; build error)',
  );
});

it('tells pairs apart where something simpler explains the same, and first where nothing does', () => {
  expect(fewAndPairs([none, one, two], 'as designed')).toEqual({ few: [none, one], pairs: [two] });
  expect(fewAndPairs([two], 'two faults')).toEqual({ few: [two], pairs: [] });
});
