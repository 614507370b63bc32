import type { Check, ProbeProof } from './check.ts';
import type { FaultTable } from './fault-table.ts';

/**
 * How each check of a list is shown to be more than a probe that touches nothing; null for positive readings, which
 * show it themselves. An open reading alone cannot tell an open circuit from no contact.
 */
export function probeProofs(table: FaultTable, checks: readonly Check[]): readonly (ProbeProof | null)[] {
  const positive = new Map<number, number>();
  for (const [index, { a, b, expected }] of checks.entries()) {
    if (expected === 'open') continue;
    for (const point of [a, b]) if (!positive.has(point)) positive.set(point, index + 1);
  }
  const { nets } = table.designed;
  const firstTwo = new Map<number, number[]>();
  for (const [point, net] of nets.entries()) {
    const list = firstTwo.get(net);
    if (list === undefined) firstTwo.set(net, [point]);
    else if (list.length < 2) list.push(point);
  }
  const far = (point: number): number =>
    firstTwo.get(nets[point] ?? -1)?.find((other) => other !== point) ?? -1;
  return checks.map(({ a, b, expected }): ProbeProof | null => {
    if (expected !== 'open') return null;
    const [farA, farB] = [far(a), far(b)];
    if (farA >= 0 && farB >= 0) return { is: 'jumper', from: farA, to: farB };
    const numbers = [a, b].flatMap((point) => positive.get(point) ?? []);
    if (numbers.length === 2) return { is: 'readings', numbers };
    return { is: 'look', at: [a, b].filter((point) => far(point) < 0) };
  });
}
