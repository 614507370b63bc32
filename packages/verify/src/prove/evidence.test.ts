import type { KitFile, Step } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { kitOf } from '../../../../tests/support/kit-text.ts';
import { walkEvidence } from '../../../../tests/support/walk-evidence.ts';
import { proveKit } from './prove-kit.ts';

/** A rework with a bit of everything: a cut, a splice, a tap, a move, a retirement, a stud, a fuse, a jumper, a device. */
const kit = kitOf(
  bench({
    parts: ['R: { is: terminal, size: 0.3..3 mm2, ring: yes }', 'FU: { is: fuse }'],
    connectors: [
      'KF: { cavities: 1..2, into: FB }',
      'FB: { device: yes, cavities: 1..2, elements: [{ is: fuse, from: 1, to: 2, name: F1 }] }',
    ],
    wires: ['feed: { from: BAT, to: KF:1, size: 1 mm2 }', 'fused: { from: KF:2, to: K5:1, size: 1 mm2 }'],
    bagConnectors: [
      'B: { cavities: 1..2, into: BD }',
      'BD: { device: yes, cavities: 1..2, elements: [{ is: diode, from: 1, to: 2 }] }',
    ],
    bagWires: [
      'branch: { from: A, to: B:1, size: 0.5 mm2 }',
      'ground: { from: B:2, to: ring, size: 0.5 mm2, to terminal: R }',
      'piece: { from: A, to: B, size: 0.75 mm2 }',
    ],
    bagParts: 'TAP: 1, SP: 1, CAP: 1, T: 1, FU: 1',
    work: [
      off,
      'do: prove dead, at: K1:2',
      'do: remove fuse, fuse: F1',
      'do: unplug, connector: K1',
      'do: tap, run: lamp, at: 100 mm from K1:2, branch: branch@A, with: TAP, as: T1',
      'do: cut, wire: horn, at: 200 mm from K1:3, leaves: [near, far]',
      'do: withdraw, cavity: K1:3',
      'do: cover, end: near@cut, with: CAP',
      'do: insert, end: near@K1:3, cavity: K1:3',
      'do: strip, end: far@cut',
      'do: strip, end: piece@A',
      'do: strip, end: piece@B',
      'do: join, ends: [far@cut, piece@A], with: SP, as: J1',
      'do: seal, joint: J1',
      'do: fit terminal, ends: piece@B, with: T',
      'do: insert, end: piece@B, cavity: K1:4',
      'do: plug, connector: K1',
      'do: attach, end: ground@ring, stud: G1',
      'do: place, device: BD',
      'do: plug, connector: B',
      'do: fit jumper, between: [K5:1, K5:2], as: LOOP, serves: fused',
      'do: remove jumper, jumper: LOOP',
      'do: fit fuse, fuse: F1, with: FU',
      on,
    ],
    wanted: [
      'circuits: { horn: [K1:4, K3:1] }',
      'additions: { branch: { to: K1:2, add: [B:1] }, ground: { to: G1, add: [B:2] } }',
      'retired: [{ wire: horn }]',
      'stubs: [{ of: horn, at: K1:3, is: live }]',
      'changed: [F1]',
    ],
  }),
);

function withSteps(change: (steps: readonly Step[]) => readonly Step[]): KitFile {
  return {
    ...kit,
    variants: kit.variants.map((one) => ({ ...one, job: { ...one.job, steps: change(one.job.steps) } })),
  };
}
const count = kit.variants[0]?.job.steps.length ?? 0;

describe('the evidence of a rework', () => {
  it('holds as written', () => {
    const verdict = proveKit(kit);
    expect([verdict.verdict, walkEvidence(verdict)]).toEqual(['proved', []]);
    expect(verdict.variants[0]?.circuits.map((one) => one.name)).toEqual(['horn', 'branch', 'ground']);
  });

  it('holds without any one of its steps', () => {
    for (let left = 0; left < count; left += 1)
      expect(
        walkEvidence(proveKit(withSteps((steps) => steps.filter((_, index) => index !== left)))),
        `without step ${left + 1}`,
      ).toEqual([]);
  });

  it('holds with any one of its steps done last', () => {
    for (let late = 0; late < count; late += 1)
      expect(
        walkEvidence(
          proveKit(
            withSteps((steps) => [
              ...steps.filter((_, index) => index !== late),
              ...steps.slice(late, late + 1),
            ]),
          ),
        ),
        `with step ${late + 1} last`,
      ).toEqual([]);
  });
});
