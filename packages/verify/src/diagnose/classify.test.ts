import { expect, it } from 'vitest';
import type { ListedFault } from '../faults/fault.ts';
import { classifyDiagnosis, mattersOf } from './classify.ts';
import type { Diagnosis } from './diagnose.ts';

const fault = (origin: ListedFault['origin']): ListedFault => ({
  id: origin,
  fault: { is: 'part open', element: 0 },
  words: '',
  likelihood: 'often',
  reason: '',
  origin,
  shownBy: '',
});

const diagnosis = (is: Diagnosis['is'], explained: readonly (readonly ListedFault[])[]): Diagnosis => ({
  is,
  groups: [explained.map((faults) => ({ faults }))],
  inPart: [],
  next: null,
  suspects: [],
  conflict: [],
  added: [],
  between: [],
  contradictory: [],
  notChecked: [],
  allPairsTried: true,
});

const plain = { designRefuted: false, addition: false, nothingRead: false };

it('goes by the explanations with the fewest faults', () => {
  const found = diagnosis('single fault', [
    [fault('damage')],
    [fault('build error')],
    [fault('installation error'), fault('damage')],
  ]);
  expect(classifyDiagnosis(found, plain)).toEqual(['damage', 'build error']);
  const counted = new Map(mattersOf(found, plain).map((one) => [one.class, one.explanations]));
  expect([counted.get('damage'), counted.get('build error'), counted.get('installation error')]).toEqual([
    1, 1, 0,
  ]);
});

it('is the design where that was refuted, an addition where a point is not known, and else says so', () => {
  const right = diagnosis('as designed', [[]]);
  expect(classifyDiagnosis(right, plain)).toEqual(['no fault found']);
  expect(classifyDiagnosis(right, { ...plain, designRefuted: true })).toEqual(['design error']);
  expect(classifyDiagnosis(right, { ...plain, nothingRead: true })).toEqual(['not explained']);
  const none = { ...diagnosis('no explanation', []), groups: [] };
  expect(classifyDiagnosis(none, { ...plain, addition: true })).toEqual([
    'not explained',
    'as-found addition',
  ]);
});
