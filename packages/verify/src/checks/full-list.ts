import { grouped } from '@loomproof/netlist';
import { cavityNeighbours } from '../faults/cavity-neighbours.ts';
import { tellsApart } from '../readings/expected.ts';
import type { Check } from './check.ts';
import type { FaultTable } from './fault-table.ts';
import { orderChecks } from './order-checks.ts';

/** The list that proves a whole partition, with the numbers of readings that theory gives for it. */
export interface FullList {
  readonly checks: readonly Check[];
  readonly points: number;
  readonly nets: number;
  /** The sum of one less than its points over the nets. */
  readonly continuity: number;
  /** q(q-1)/2 readings between pairs of q nets. */
  readonly pairwise: number;
  /** q-1 readings of one net against all later ones tied together. */
  readonly oneAgainstTheRest: number;
  /** p-1 + ceil(log2 q) tests of equipment that tests many points at once (Kautz 1974); p is the largest net. */
  readonly manyProbes: number;
  /** Pairs of nets of which no reading is known beforehand, such as two that leave the model. */
  readonly unsure: readonly (readonly [number, number])[];
}

/**
 * The checks that prove the partition of the cavities touched, of the empty cavities beside them, and of return, feed
 * and chassis: along each net from point to point, and each net against each other.
 */
export function fullList(table: FaultTable): FullList {
  const points = pointsToProve(table);
  const nets = grouped(points, (point) => table.designed.nets[point] ?? -1);
  const checks: Check[] = [];
  for (const list of nets.values())
    for (const [index, b] of list.slice(1).entries())
      checks.push({ a: list[index] ?? b, b, expected: 'whole' });
  const heads = [...nets.values()].map((list) => list[0] ?? 0);
  const unsure: (readonly [number, number])[] = [];
  for (const [index, a] of heads.entries())
    for (const b of heads.slice(index + 1)) {
      // A diode that conducts one way is open the other way, with red and black exchanged: a pair of readings.
      const asked = waysToAsk(table, a, b);
      checks.push(...asked);
      if (asked.length === 0) unsure.push([a, b]);
    }
  const q = nets.size;
  const p = Math.max(0, ...[...nets.values()].map((list) => list.length));
  return {
    checks: orderChecks(checks, table.designed.bothWays),
    points: points.length,
    nets: q,
    continuity: points.length - q,
    pairwise: (q * (q - 1)) / 2,
    oneAgainstTheRest: Math.max(0, q - 1),
    manyProbes: q === 0 ? 0 : p - 1 + Math.ceil(Math.log2(q)),
    unsure,
  };
}

/** One reading between two nets, or one each way where they read differently. */
function waysToAsk({ designed }: FaultTable, a: number, b: number): readonly Check[] {
  const [there, back] = [designed.expected(a, b), designed.expected(b, a)];
  return [
    ...(there === 'unsure' ? [] : [{ a, b, expected: there }]),
    ...(back === 'unsure' || (there !== 'unsure' && !tellsApart(there, back))
      ? []
      : [{ a: b, b: a, expected: back }]),
  ];
}

/** Points of the cavities touched, of the empty ones beside them, and of return, feed and chassis. */
function pointsToProve({ world, points, list }: FaultTable): readonly number[] {
  const { job, finished } = world;
  const wanted = new Set<number>(list.touched.places);
  for (const place of list.touched.places)
    for (const other of cavityNeighbours(job, place)) if (!finished.hasContact(other)) wanted.add(other);
  for (const { places, returnPlace } of job.supplies)
    for (const place of [...places, returnPlace]) wanted.add(place);
  for (const [place, { chassis }] of job.places.entries()) if (chassis) wanted.add(place);
  return points.flatMap(({ node }, point) => (wanted.has(node) || node >= job.places.length ? [point] : []));
}
