import type { Job } from './job.ts';

/**
 * Pairs the cavities of two halves by equal labels.
 * @returns pairs of places, one of the first half and one of the second, in the order of the first.
 */
export function oppositeCavities(job: Job, a: number, b: number): readonly (readonly [number, number])[] {
  const [first, second] = [job.connectors[a], job.connectors[b]];
  if (first === undefined || second === undefined) return [];
  const byLabel = new Map<string, number>();
  for (let place = second.firstPlace; place < second.firstPlace + second.placeCount; place += 1) {
    byLabel.set(job.places[place]?.label ?? '', place);
  }
  const pairs: (readonly [number, number])[] = [];
  for (let place = first.firstPlace; place < first.firstPlace + first.placeCount; place += 1) {
    const other = byLabel.get(job.places[place]?.label ?? '');
    if (other !== undefined) pairs.push([place, other]);
  }
  return pairs;
}
