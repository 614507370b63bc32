import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { diagnose } from './diagnose.ts';
import { diagnosisReport } from './diagnosis-report.ts';
import { rankCandidates } from './rank-candidates.ts';
import { readReadings } from './read-readings.ts';

it('puts every point, reading and fault into words', () => {
  const text = [
    'from,to,reading,moment',
    'X:1,X:4,open,',
    'X:1,Y:1,0.2 ohm,',
    'X:1,X:2,40 ohm,',
    'X:1,X:3,4.7 kohm,before step 3',
  ].join('\n');
  const [ranked] = rankCandidates(
    [{ revision: 'A', variant: 'only', job: jobOf(tapKit()) }],
    readReadings({ name: 'r', text }).value ?? [],
    { stage: { is: 'unplugged' } },
  );
  if (ranked === undefined) throw new Error('no candidate');
  const report = diagnosisReport(ranked, diagnose(ranked.table, ranked.placed.readings), false);
  expect(report).toMatchObject({
    revision: 'A',
    variant: 'only',
    result: 'single fault',
    between: ['X:1 - X:2 (line 4): between, 40 ohm, designed open'],
    early: ['X:1 - X:3 (line 5): 4.7 kohm, before step 3'],
  });
  const first = report.groups[0]?.map(({ faults }) => faults.map(({ id }) => id).join(' + ')) ?? [];
  // What parts the branch and nothing else, likely ones first; w moved to X:3 reads the same, the run does not.
  expect(first.slice(0, 3)).toEqual([
    'does not conduct: terminal of w@A and X:4',
    'does not conduct: w@B and T',
    'wrong cavity: step 3 at X:3',
  ]);
  expect(first).not.toContain('does not conduct: run@X:1 and T');
});
