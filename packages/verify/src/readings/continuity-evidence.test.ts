import { expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { tapKit } from '../../../../tests/support/tap-kit.ts';
import { finishWork } from '../faults/finish-work.ts';
import { continuityEvidence } from './continuity-evidence.ts';
import { probePoints } from './stage.ts';

const rework = finishWork(jobOf(tapKit()));
const stage = { is: 'unplugged' } as const;
const points = probePoints(rework, stage);

function evidence(wire: string, from: string, to: string): string {
  const [first, second] = (rework.job.wires.find(({ name }) => name === wire)?.ends ?? []).map(
    (end) => rework.job.ends[end]?.node ?? -1,
  );
  const probes = [from, to].map((name) => points.find((point) => point.name === name));
  if (first === undefined || second === undefined || probes[0] === undefined || probes[1] === undefined)
    throw new Error('no such wire or point');
  return continuityEvidence(rework, stage, [first, second], [probes[0], probes[1]]).is;
}

it('is given by a reading across the wire, and not by one that has another way', () => {
  expect(evidence('w', 'X:1', 'X:4')).toBe('evidence');
  expect(evidence('w', 'X:1', 'Y:1')).toBe('another path');
  expect(evidence('w', 'X:1', 'X:2')).toBe('not joined');
});
