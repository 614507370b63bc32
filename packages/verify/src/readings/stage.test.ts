import { describe, expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { finishWork } from '../faults/finish-work.ts';
import { isApart, neverProbed, probePoints, type Stage } from './stage.ts';

const unplugged: Stage = { is: 'unplugged' };

/** A pair of harness halves, a device, a shut position, an unreleased airbag wire and a wire whose end stays bare. */
function kit(released = ''): string {
  return `kit: points
revision: A
stock:
  studs: { G: { source: never } }
  boundaries: { OUT: {} }
  connectors:
    X: { cavities: 1..3, blocked: [3], into: Y }
    Y: { cavities: 1..3 }
    K: { cavities: 1..2, into: D }
    D: { device: yes, cavities: 1..2 }
    S: { cavities: 1..2, source: { 1..2: never } }
  wires:
    x: { from: X:1, to: G }
    y: { from: Y:1, to: OUT }
    k: { from: K:1, to: G }
    igniter: { from: S:1, to: S:2 }
  special:
    igniter: { is: restraint system, wires: [igniter]${released} }
bag:
  wires:
    w: { from: A, to: B, size: 1 mm2 }
work:
  - { do: strip, end: w@A }
wanted:
  retired: [{ wire: k }]
`;
}

describe('probePoints', () => {
  const names = (stage: Stage, text = kit()): readonly string[] =>
    probePoints(finishWork(jobOf(text)), stage).map(({ name }) => name);

  it('unplugged: cavities of the harness that are not shut, studs and bare ends; no pins, no boundary, no airbag', () => {
    expect(names(unplugged)).toEqual(['X:1', 'X:2', 'Y:1', 'Y:2', 'Y:3', 'K:1', 'K:2', 'G', 'w@A', 'w@B']);
  });

  it('a released special circuit may be probed', () => {
    const text = kit(', released: { by: maker, document: D1 }');
    expect(names(unplugged, text)).toContain('S:1');
    expect(neverProbed(jobOf(text))).toEqual([]);
    expect(neverProbed(jobOf(kit()))).toEqual(['S:1', 'S:2']);
  });

  it('in place only what is apart is reached, and pulling either half parts the pair', () => {
    const rework = finishWork(jobOf(kit()));
    const index = (name: string): number => rework.job.connectors.findIndex((one) => one.name === name);
    const pulled = (...all: string[]): Stage => ({ is: 'in place', pulled: new Set(all.map(index)) });
    expect(names(pulled())).toEqual(['G', 'w@A', 'w@B']);
    for (const half of ['X', 'Y'])
      expect(names(pulled(half))).toEqual(['X:1', 'X:2', 'Y:1', 'Y:2', 'Y:3', 'G', 'w@A', 'w@B']);
    expect(names(pulled('D'))).toEqual(['K:1', 'K:2', 'G', 'w@A', 'w@B']);
    expect([unplugged, pulled(), pulled('Y')].map((stage) => isApart(rework, stage, index('X')))).toEqual([
      true,
      false,
      true,
    ]);
    // A connector with no other half is never plugged.
    expect(isApart(rework, pulled(), index('S'))).toBe(true);
  });
});
