import { labelsIn, rootIn, uniteIn } from './union-find.ts';

/** One conductor as a record: its name and the two points it joins. */
export interface ConductorRecord {
  readonly wire: string;
  readonly from: string;
  readonly to: string;
}

/** The nets of a list of conductors. */
export interface ExtractedNets {
  /** Points in the order they were first named. */
  readonly points: readonly string[];
  /** Number of each point. */
  readonly numbers: ReadonlyMap<string, number>;
  /** Net of each point: the number of its first point. */
  readonly labels: Int32Array;
  /** The points of each net, nets in the order of their first point. */
  readonly nets: readonly (readonly string[])[];
}

/**
 * The nets that conductors make, from records with text names: interning, unions and grouping, each linear, nothing
 * recursive. Names are keys of a Map, so `__proto__` is a name like any other.
 */
export function extractNets(
  records: readonly ConductorRecord[],
  alone: readonly string[] = [],
): ExtractedNets {
  const numbers = new Map<string, number>();
  const points: string[] = [];
  const count = records.length;
  const pairs = new Int32Array(count * 2);
  const intern = (name: string): number => {
    const known = numbers.get(name);
    if (known !== undefined) return known;
    const number = points.length;
    numbers.set(name, number);
    points.push(name);
    return number;
  };
  for (let index = 0; index < count; index += 1) {
    const record = records[index] as ConductorRecord;
    pairs[index * 2] = intern(record.from);
    pairs[index * 2 + 1] = intern(record.to);
  }
  for (const name of alone) intern(name);
  const total = points.length;
  const parent = new Int32Array(total).fill(-1);
  for (let index = 0; index < count; index += 1)
    uniteIn(parent, pairs[index * 2] as number, pairs[index * 2 + 1] as number);
  const labels = labelsIn(parent, total);
  const nets: string[][] = [];
  const netOf = new Int32Array(total);
  const filled = new Int32Array(total);
  for (let number = 0; number < total; number += 1) {
    const label = labels[number] as number;
    if (label === number) {
      netOf[number] = nets.length;
      // A root holds the negative size of its set, so every list is made as long as it gets.
      nets.push(new Array<string>(-(parent[rootIn(parent, number)] as number)));
    }
    const net = nets[netOf[label] as number] as string[];
    net[filled[label] as number] = points[number] as string;
    filled[label] = (filled[label] as number) + 1;
  }
  return { points, numbers, labels, nets };
}
