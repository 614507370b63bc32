import { expect, it } from 'vitest';
import { kitOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { stageNamed, stagesOf } from './stage-of.ts';

const kit = kitOf(tapKit());
const [job] = kit.variants.map((one) => one.job);

it('is named as typed, and unplugged where that is no stage', () => {
  expect(['bench', 'in-place', 'unplugged', 'else'].map(stageNamed)).toEqual([
    'bench',
    'in place',
    'unplugged',
    'unplugged',
  ]);
});

it('finds connectors by their names in each job, and complains of others', () => {
  if (job === undefined) throw new Error('no job');
  const y = job.connectors.findIndex(({ name }) => name === 'Y');
  const found = stagesOf(kit, { stage: 'in place', pulled: ['Y'] });
  expect(found.diagnostics).toEqual([]);
  expect(found.value(job)).toEqual({ is: 'in place', pulled: new Set([y]) });
  expect(stagesOf(kit, { stage: 'bench', pulled: [] }).value(job)).toEqual({ is: 'bench' });
  expect(stagesOf(kit, { stage: 'in place', pulled: ['Z'] }).diagnostics.map((one) => one.message)).toEqual([
    'there is no connector `Z`',
  ]);
});
