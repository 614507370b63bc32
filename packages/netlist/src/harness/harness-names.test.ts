import { describe, expect, it } from 'vitest';
import { locate } from '../kit/located.ts';
import { resolveKit } from '../kit/read-kit.ts';
import { harnessNames } from './harness-names.ts';
import type { Job } from './job.ts';

function jobOf(): Job {
  const read = resolveKit(
    locate({
      kit: 'k',
      revision: 'A',
      parts: { T: { is: 'terminal' } },
      stock: {
        connectors: { X: { cavities: '1..2' } },
        splices: { J: {} },
        wires: {
          a: { from: 'X:1', to: 'J', size: '0.5 mm2', colour: 'RD/BU' },
          b: { from: 'X:2', to: 'J' },
        },
      },
      bag: { wires: { c: { from: 'p', to: 'q', size: 'AWG 18' } } },
      work: [
        { do: 'strip', end: 'c@p' },
        { do: 'fit terminal', ends: 'c@p', with: 'T' },
      ],
      wanted: { retired: [{ wire: 'a' }] },
    }),
    () => null,
  );
  const job = read.value?.variants[0]?.job;
  if (job === undefined) throw new Error(read.diagnostics.map((one) => one.message).join('; '));
  return job;
}

describe('harnessNames', () => {
  it('has the words of each wire as a person writes them', () => {
    const { wireName, wireColour, wireSize } = harnessNames(jobOf());
    expect(wireName).toEqual(['a', 'b', 'c']);
    expect(wireColour).toEqual(['RD/BU', null, null]);
    expect(wireSize).toEqual(['0.5 mm2', null, 'AWG 18']);
  });

  it('names every node but the terminals that steps bring', () => {
    const job = jobOf();
    const { nodeName, endName } = harnessNames(job);
    expect(endName).toEqual(['a@X:1', 'a@J', 'b@X:2', 'b@J', 'c@p', 'c@q']);
    expect(job.places.map((_, place) => nodeName[place])).toEqual(['X:1', 'X:2']);
    expect(job.joints.map(({ node }) => nodeName[node])).toEqual(['J']);
    expect(job.ends.map(({ node }) => nodeName[node])).toEqual(endName);
    expect(job.terminals.map(({ node }) => nodeName[node])).toEqual([
      'terminal of a@X:1',
      'terminal of b@X:2',
      null,
    ]);
    expect(nodeName).toHaveLength(job.nodeCount);
  });
});
