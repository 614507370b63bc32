import type { Job } from '@loomproof/netlist';
import { finishWork } from '../faults/finish-work.ts';
import { copperLength } from './copper-length.ts';

/**
 * Millimetres of the shortest piece into which cuts and taps divide a wire; zero or less where they lie beyond its
 * length, null where lengths are not said.
 */
export function shortestPieceMm(job: Job, wire: number): number | null {
  const rework = finishWork(job);
  const { graph } = rework;
  let shortest: number | null = null;
  for (let edge = 0; edge < graph.edgeCount; edge += 1) {
    if (graph.kindOf(edge) !== 'conductor' || graph.whatOf(edge) !== wire) continue;
    const mm = copperLength(rework, edge);
    if (mm !== null && (shortest === null || mm < shortest)) shortest = mm;
  }
  return shortest;
}
