import { describe, expect, it } from 'vitest';
import { locate } from '../kit/located.ts';
import { resolveKit } from '../kit/read-kit.ts';
import { flatHarness, homeKinds } from './flat-harness.ts';
import type { Job } from './job.ts';

function jobOf(): Job {
  const read = resolveKit(
    locate({
      kit: 'k',
      revision: 'A',
      parts: { T: { is: 'terminal' }, S: { is: 'seal' } },
      stock: {
        connectors: {
          X: { cavities: '1..3', blanked: '3', into: 'D' },
          D: { device: 'yes', cavities: '1..3' },
        },
        studs: { G: { chassis: 'yes' } },
        splices: { J: {} },
        wires: {
          a: { from: 'X:1', to: 'J', 'from seal': 'S', size: '0.5 mm2', colour: 'RD/BU' },
          b: { from: 'G', to: 'X:1' },
        },
      },
      bag: { wires: { c: { from: 'p', to: 'q', 'to terminal': 'T', size: 'AWG 18' } } },
      work: [{ do: 'strip', end: 'c@p' }],
      wanted: { retired: [{ wire: 'a' }] },
    }),
    () => null,
  );
  const job = read.value?.variants[0]?.job;
  if (job === undefined) throw new Error(read.diagnostics.map((one) => one.message).join('; '));
  return job;
}

describe('flatHarness', () => {
  it('says of every thing what the job says', () => {
    const job = jobOf();
    const flat = flatHarness(job);
    expect([...flat.wireEnds]).toEqual(job.wires.flatMap((wire) => [...wire.ends]));
    expect([...flat.wireOfKit]).toEqual(job.wires.map((wire) => (wire.origin === 'kit' ? 1 : 0)));
    expect([...flat.endNode]).toEqual(job.ends.map((end) => end.node));
    expect([...flat.endWire]).toEqual(job.ends.map((end) => end.wire));
    expect(flat.endSeal).toEqual(['S', null, null, null, null, null]);
    expect([...flat.endHome]).toEqual(
      (['place', 'joint', 'place', 'place', 'bare', 'stripped'] as const).map((kind) => homeKinds[kind]),
    );
    expect([...flat.endHomeAt]).toEqual([0, 0, 6, 0, -1, -1]);
    expect([...flat.endHomeTerminal]).toEqual([0, -1, 1, 0, -1, 2]);
    expect([...flat.terminalNode]).toEqual(job.terminals.map((terminal) => terminal.node));
    expect([...flat.terminalHome]).toEqual([0, 6, -1]);
    expect([...flat.terminalFirstEnd]).toEqual([0, 2, 5]);
    expect([...flat.jointNode]).toEqual(job.joints.map((joint) => joint.node));
    expect([...flat.cavity]).toEqual([1, 1, 1, 1, 1, 1, 0]);
    expect(flat.chassis).toEqual([6]);
    expect(flat.sources).toEqual([3, 4, 5, 6]);
    expect([...flat.devicePin]).toEqual([0, 0, 0, 1, 1, 1, 0]);
    expect(flat.plug).toEqual([null, null, '', null, null, null, null]);
  });

  it('is made once for a job, also where only its steps differ', () => {
    const job = jobOf();
    expect(flatHarness(job)).toBe(flatHarness(job));
    expect(flatHarness({ ...job, steps: [] })).toBe(flatHarness(job));
  });

  it('is made anew for a job of which any list was changed', () => {
    const job = jobOf();
    const flat = flatHarness(job);
    const changed: readonly Job[] = [
      { ...job, ends: [...job.ends] },
      { ...job, wires: [...job.wires] },
      { ...job, terminals: [...job.terminals] },
      { ...job, joints: [...job.joints] },
      { ...job, places: [...job.places] },
      { ...job, connectors: [...job.connectors] },
    ];
    for (const one of changed) {
      expect(flatHarness(one)).not.toBe(flat);
      expect(flatHarness(one)).toEqual(flat);
    }
  });
});
