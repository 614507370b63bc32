import { appendTo, type Job, Rework } from '@loomproof/netlist';
import { cavityNeighbours } from '../faults/cavity-neighbours.ts';
import { finishWork } from '../faults/finish-work.ts';
import { touchedBy } from '../faults/touched.ts';
import { harnessState } from '../readings/harness-state.ts';
import { probePoints, type Stage } from '../readings/stage.ts';
import type { Check } from './check.ts';

/** Readings of the machine as found, with the names of the points, for before the first cut. */
export interface Baseline {
  /** What is plugged for them. */
  readonly stage: Stage;
  readonly points: readonly string[];
  readonly checks: readonly Check[];
}

/**
 * Readings before the work: each net that the work changes, along its points, and against the nets of the cavities
 * beside it. Without them a fault found later cannot be told from one that was there.
 */
export function baselineChecks(job: Job, stage: Stage): Baseline {
  const before = new Rework(job);
  const touched = touchedBy(finishWork(job));
  const points = probePoints(before, stage).filter(({ node }) => job.places[node]?.origin === 'stock');
  const state = harnessState(before, [], stage, points);
  const at = new Map(points.map(({ node }, index) => [node, index]));
  const nets = new Map<number, number[]>();
  for (const place of touched.places) {
    const point = at.get(place);
    if (point === undefined) continue;
    appendTo(nets, state.nets[point] ?? -1, point);
  }
  const checks: Check[] = [];
  const against = new Set<string>();
  for (const list of nets.values()) {
    for (const [index, b] of list.slice(1).entries())
      checks.push({ a: list[index] ?? b, b, expected: 'whole' });
    for (const a of list)
      for (const place of cavityNeighbours(job, points[a]?.node ?? -1)) {
        const b = at.get(place);
        if (b === undefined || !before.hasContact(place) || state.expected(a, b) !== 'open') continue;
        const pair = [state.nets[a] ?? -1, state.nets[b] ?? -1].sort((x, y) => x - y).join();
        if (against.has(pair)) continue;
        against.add(pair);
        checks.push({ a, b, expected: 'open' });
      }
  }
  return { stage, points: points.map((one) => one.name), checks };
}
