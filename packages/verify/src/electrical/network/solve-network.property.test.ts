import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { denseStates } from '../../../../../tests/support/oracle/dense-network.ts';
import { randomNetwork, withoutZeroOhmRings } from '../../../../../tests/support/random-network.ts';
import type { Network } from './network.ts';
import type { SolvedNetwork } from './network-solution.ts';
import { solveNetwork } from './solve-network.ts';

const anyNetwork = randomNetwork({ maxNodes: 8, maxElements: 12, maxDiodes: 5, awkward: true });

// Rounding is judged against the largest voltage over the smallest resistance that a difference of voltages meets.
const smallestOhm = 1e-3;

function largest(values: Iterable<number | null>): number {
  let most = 1;
  for (const value of values) most = Math.max(most, Math.abs(value ?? 0));
  return most;
}

function lawsHold(network: Network, solution: SolvedNetwork): void {
  const scale = largest(solution.islandVolts);
  const closeVolt = 1e-10 * scale;
  const closeAmpere = Math.max(closeVolt / smallestOhm, 1e-12);
  const arriving = new Array<number>(network.nodeCount).fill(0);
  const unknown = new Array<boolean>(network.nodeCount).fill(false);
  let watts = 0;
  let balanced = true;
  for (const [index, element] of network.elements.entries()) {
    const state = solution.elements[index];
    const across = (solution.islandVolts[element.from] ?? 0) - (solution.islandVolts[element.to] ?? 0);
    const oneIsland = solution.islands[element.from] === solution.islands[element.to];
    const ampere = state?.ampere ?? null;
    if (ampere === null) {
      balanced = false;
      unknown[element.from] = true;
      unknown[element.to] = true;
      expect(element.kind === 'joint' || element.kind === 'voltage-source').toBe(true);
    } else {
      arriving[element.from] = (arriving[element.from] ?? 0) - ampere;
      arriving[element.to] = (arriving[element.to] ?? 0) + ampere;
      if (state?.watt === null) balanced = false;
      else watts += state?.watt ?? Number.NaN;
    }
    if (element.kind !== 'diode' && element.kind !== 'current-source') expect(oneIsland).toBe(true);
    if (element.kind === 'resistor') {
      expect(Math.abs(across - element.ohm * (ampere ?? 0))).toBeLessThan(closeVolt);
    } else if (element.kind === 'joint') {
      expect(Math.abs(across)).toBeLessThan(closeVolt);
    } else if (element.kind === 'voltage-source') {
      const lost = element.ohm === 0 ? 0 : element.ohm * (ampere ?? 0);
      expect(Math.abs(across + element.volt - lost)).toBeLessThan(closeVolt);
    } else if (element.kind === 'current-source') {
      expect(ampere).toBe(element.ampere);
    } else if (state?.conducting) {
      expect(oneIsland).toBe(true);
      expect(ampere).toBeGreaterThanOrEqual(0);
      expect(Math.abs(across - element.forwardVolt - element.onOhm * (ampere ?? 0))).toBeLessThan(closeVolt);
    } else {
      expect(ampere).toBe(0);
      if (oneIsland) expect(across).toBeLessThan(element.forwardVolt + closeVolt);
    }
  }
  for (const [node, ampere] of arriving.entries()) {
    if (!unknown[node]) expect(Math.abs(ampere)).toBeLessThan(closeAmpere);
  }
  if (balanced) expect(Math.abs(watts)).toBeLessThan(closeAmpere * scale);
  for (const [node, volt] of solution.volts.entries()) {
    expect(volt === null).toBe(solution.islands[node] !== solution.islands[network.reference]);
  }
  expect(solution.volts[network.reference]).toBe(0);
}

describe('solveNetwork on random networks', () => {
  test('both laws of Kirchhoff and the law of every element hold in what is called solved', () => {
    fc.assert(
      fc.property(anyNetwork, (network) => {
        const solution = solveNetwork(network);
        if (solution.kind === 'solved') lawsHold(network, solution);
      }),
      { numRuns: 1000 },
    );
  });

  test('it agrees with a dense system over all diode states on what exists and on every value', () => {
    const seen = { solved: 0, blocked: 0, conflict: 0 };
    fc.assert(
      fc.property(anyNetwork, (drawn) => {
        const network = { ...drawn, elements: withoutZeroOhmRings(drawn.nodeCount, drawn.elements) };
        const states = denseStates(network, 1e-7);
        const solution = solveNetwork(network);
        if (solution.kind !== 'solved') {
          expect(states).toEqual([]);
          if (solution.kind === 'source-conflict') {
            seen.conflict++;
            expect(solution.cause).toBe('current-without-path');
          } else {
            seen.blocked++;
            expect(solution.cause).toBe('diodes-block');
          }
          return;
        }
        seen.solved++;
        expect(states.length).toBeGreaterThan(0);
        const scale = largest(solution.islandVolts);
        const same = states.filter((state) =>
          network.elements.every(
            ({ kind }, index) =>
              kind !== 'diode' || state.conducting[index] === solution.elements[index]?.conducting,
          ),
        );
        expect(same.length).toBe(1);
        // The dense system loses digits where a large current and a large resistance meet; ours is not to follow it.
        const largestOhm = largest(network.elements.map((element) => ('ohm' in element ? element.ohm : 0)));
        const close = 1e-9 * scale + 1e-15 * largest(same[0]?.amperes ?? []) * largestOhm;
        for (const [index, { ampere }] of solution.elements.entries()) {
          const other = same[0]?.amperes[index] ?? Number.NaN;
          expect(Math.abs((ampere ?? Number.NaN) - other)).toBeLessThan(close / smallestOhm);
        }
        const part = same[0]?.parts[network.reference];
        for (const [node, volt] of solution.volts.entries()) {
          if (same[0]?.parts[node] !== part) expect(volt).toBeNull();
          else expect(Math.abs((volt ?? Number.NaN) - (same[0]?.volts[node] ?? 0))).toBeLessThan(close);
        }
      }),
      { numRuns: 1000 },
    );
    expect(seen.solved).toBeGreaterThan(50);
    expect(seen.blocked + seen.conflict).toBeGreaterThan(5);
  });

  test('thirty diodes among few nodes are settled too', () => {
    const manyDiodes = randomNetwork({ maxNodes: 12, maxElements: 10, maxDiodes: 30, awkward: true });
    const seen = { solved: 0, unsolved: 0 };
    fc.assert(
      fc.property(manyDiodes, (network) => {
        const solution = solveNetwork(network);
        if (solution.kind === 'solved') {
          seen.solved++;
          lawsHold(network, solution);
        } else {
          seen.unsolved++;
          expect(solution.cause).not.toBe('gave-up');
        }
      }),
      { numRuns: 1000 },
    );
    expect(seen.solved).toBeGreaterThan(100);
    expect(seen.unsolved).toBeGreaterThan(20);
  });

  test('the numbering of nodes and elements decides nothing', () => {
    fc.assert(
      fc.property(anyNetwork, fc.infiniteStream(fc.nat({ max: 1_000_000 })), (network, numbers) => {
        const shuffled = (size: number): number[] =>
          [...numbers.take(size)]
            .map((key, index) => ({ key, index }))
            .sort((one, other) => one.key - other.key)
            .map(({ index }) => index);
        const node = shuffled(network.nodeCount);
        const place = shuffled(network.elements.length);
        const renamed = (old: number): number => node[old] ?? 0;
        const elements = place.flatMap((old) => {
          const element = network.elements[old];
          return element === undefined
            ? []
            : [{ ...element, from: renamed(element.from), to: renamed(element.to) }];
        });
        const one = solveNetwork(network);
        const other = solveNetwork({
          nodeCount: network.nodeCount,
          reference: renamed(network.reference),
          elements,
        });
        expect(other.kind).toBe(one.kind);
        if (one.kind !== 'solved' || other.kind !== 'solved') return;
        const close = 1e-10 * largest(one.islandVolts);
        for (const [old, volt] of one.volts.entries()) {
          const now = other.volts[renamed(old)] ?? null;
          expect(now === null).toBe(volt === null);
          expect(Math.abs((now ?? 0) - (volt ?? 0))).toBeLessThan(close);
        }
        for (const [now, old] of place.entries()) {
          expect(other.elements[now]?.conducting).toBe(one.elements[old]?.conducting);
          expect(other.elements[now]?.ampere === null).toBe(one.elements[old]?.ampere === null);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
