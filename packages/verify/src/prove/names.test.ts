import { Rework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { bench, off, on } from '../../../../tests/support/bench-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { Names } from './names.ts';

const job = jobOf(
  bench({
    splices: 'S1: {}',
    wires: ['s: { from: S1, to: K5:1 }', 'd: { from: K5:1, to: G2 }'],
    bagWires: ['b: { from: A, to: B, size: 0.5 mm2, colour: BU, to terminal: T }'],
    bagParts: 'TAP: 1, T: 1',
    work: [
      off,
      'do: strip, end: b@A',
      'do: fit terminal, ends: b@A, with: T',
      'do: insert, end: b@A, cavity: K5:2',
      'do: fit jumper, between: [K5:1, K5:2], as: LOOP, serves: s',
      on,
    ],
    wanted: ['circuits: { lamp: [K1:2, K2:1] }'],
  }),
);
const names = new Names(job);
const rework = new Rework(job);
for (const step of job.steps) rework.apply(step);

describe('Names', () => {
  it('names places, ends and every node of the graph', () => {
    const end = job.ends.findIndex((one) => one.name === 'b@A');
    expect([names.place(0), names.end(end), names.place(-1), names.end(-1)]).toEqual([
      'K1:1',
      'b@A',
      'place -1',
      'end -1',
    ]);
    expect(names.node(0)).toBe('K1:1');
    expect(names.node(job.ends[end]?.node ?? -1)).toBe('b@A');
    expect(names.node(job.joints[0]?.node ?? -1)).toBe('S1');
    expect(names.node(9999)).toBe('node 9999');
    const all = Array.from({ length: job.nodeCount }, (_, node) => names.node(node));
    expect(new Set(all).size).toBe(job.nodeCount);
  });

  it('names a terminal after the first end in it, one that a step fits included', () => {
    const terminals = job.terminals.map((terminal) => names.node(terminal.node));
    expect(terminals).toContain('terminal of s@K5:1');
    expect(terminals).not.toContain('terminal of d@K5:1');
    expect(terminals).toContain('terminal of b@B');
    expect(terminals).toContain('terminal of b@A');
  });

  it('gives the written number of a step, and none for the time before', () => {
    expect([0, 1, 6, 7].map((ordinal) => names.stepNumber(ordinal))).toEqual([null, 1, 6, null]);
  });

  it('tells each hop with what it is and where it comes from', () => {
    const { graph } = rework;
    const told = Array.from({ length: graph.edgeCount }, (_, edge) => {
      const hop = names.hop(rework, edge, graph.fromOf(edge), graph.toOf(edge));
      return `${hop.by} ${hop.name ?? '-'} ${hop.colour ?? '-'} ${hop.size ?? '-'} ${hop.made}: ${hop.from} > ${hop.to}`;
    });
    for (const line of [
      'conductor lamp GY 0.5 mm2 stock: lamp@K1:2 > lamp@K2:1',
      'conductor b BU 0.5 mm2 kit: b@A > b@B',
      'crimp - - - stock: s@K5:1 > terminal of s@K5:1',
      'crimp - - - stock: d@K5:1 > terminal of s@K5:1',
      'crimp - - - kit: b@B > terminal of b@B',
      'crimp - - - 3: b@A > terminal of b@A',
      'seat - - - stock: terminal of s@K5:1 > K5:1',
      'seat - - - 4: terminal of b@A > K5:2',
      'joint - - - stock: s@S1 > S1',
      'mate - - - stock: K1:1 > M:1',
      'jumper LOOP - - 5: K5:1 > K5:2',
    ])
      expect(told).toContain(line);
  });
});
