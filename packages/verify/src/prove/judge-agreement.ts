import { compareText, grouped, type Job, UnionFind, type Variant } from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';

/** One judged variant as the comparison of variants sees it. */
export interface VariantChange {
  readonly variant: Variant;
  readonly job: Job;
  /** Net of each place before and after, as smallest place. */
  netsBefore(): Int32Array;
  readonly after: Int32Array;
}

/**
 * Obligation 8: under the declared pairing, what the work changes is the same in both variants, except at the places
 * said to differ, and there it is not.
 * @returns findings by variant name; both variants of a pair get the same ones.
 */
export function judgeAgreement(
  changes: readonly VariantChange[],
): ReadonlyMap<string, readonly RawFinding[]> {
  const found = new Map<string, RawFinding[]>();
  for (const first of changes) {
    const { agree } = first.job.wanted;
    if (agree === null || first.variant.values.get(agree.axis) !== agree.between[0]) continue;
    const second = changes.find((one) => isPartner(first.variant, one.variant, agree.axis, agree.between[1]));
    if (second === undefined) continue;
    const findings = comparePair(first, second, agree.pairs, new Set(agree.differ));
    for (const one of [first, second])
      found.set(one.variant.name, [...(found.get(one.variant.name) ?? []), ...findings]);
  }
  return found;
}

function isPartner(first: Variant, other: Variant, axis: string, value: string): boolean {
  if (other.values.get(axis) !== value) return false;
  return [...first.values].every(([name, one]) => name === axis || other.values.get(name) === one);
}

function comparePair(
  first: VariantChange,
  second: VariantChange,
  pairs: ReadonlyMap<string, string>,
  differ: ReadonlySet<string>,
): readonly RawFinding[] {
  const back = new Map([...pairs].map(([mine, theirs]) => [theirs, mine]));
  // A device pin and the cavity that faces it are one place: what differs at one of them differs at both.
  const facing = new Set(differ);
  const seeing = (one: VariantChange, name: (address: string) => string): void => {
    for (const [place, there] of one.job.places.entries()) {
      const other = one.job.places[one.job.facing[place] ?? -1];
      if (other !== undefined && differ.has(name(there.address))) facing.add(name(other.address));
    }
  };
  const same = (address: string): string => address;
  const translated = (address: string): string => translate(address, back);
  seeing(first, same);
  seeing(second, translated);
  const mine = changesOf(first, same, facing);
  const theirs = changesOf(second, translated, facing);
  const wrong = new Map<string, { readonly a: string; readonly b: string; readonly alike: boolean }>();
  for (const address of [...new Set([...mine.keys(), ...theirs.keys(), ...differ])].sort(compareText)) {
    const [a, b] = [mine.get(address) ?? 'unchanged', theirs.get(address) ?? 'unchanged'];
    const shouldDiffer = differ.has(address);
    if (!shouldDiffer && facing.has(address)) continue;
    if ((a !== b) !== shouldDiffer) wrong.set(address, { a, b, alike: shouldDiffer });
  }
  return differences([...wrong.keys()], [...netsByName(first, same), ...netsByName(second, translated)]).map(
    (addresses): RawFinding => {
      const head = wrong.get(addresses[0] ?? '');
      return {
        kind: head?.alike === true ? 'variants-alike' : 'variants-differ',
        step: null,
        points: addresses,
        witness: {
          is: 'variants',
          place: addresses[0] ?? '',
          first: `${first.variant.name}: ${head?.a ?? ''}`,
          second: `${second.variant.name}: ${head?.b ?? ''}`,
        },
        culprits: [],
        keys: addresses.map((address) => `differs:${address}`),
      };
    },
  );
}

/** The nets before and after the work of each address, as the first variant calls it. */
function netsByName(
  { job, netsBefore, after }: VariantChange,
  name: (address: string) => string,
): readonly ReadonlyMap<string, number>[] {
  return [netsBefore(), after].map(
    (labels) => new Map(job.places.map((place, index) => [name(place.address), labels[index] as number])),
  );
}

/** One join shows at every place of its net: addresses that are on one net in either variant are one difference. */
function differences(
  addresses: readonly string[],
  nets: readonly ReadonlyMap<string, number>[],
): readonly (readonly string[])[] {
  const sets = new UnionFind(addresses.length);
  for (const net of nets) {
    const heads = new Map<number, number>();
    for (const [index, address] of addresses.entries()) {
      const label = net.get(address);
      if (label === undefined) continue;
      const head = heads.get(label);
      if (head === undefined) heads.set(label, index);
      else sets.union(head, index);
    }
  }
  const labels = sets.labels(addresses.length);
  return [...membersOf(labels).values()].map((members) => members.map((index) => addresses[index] ?? ''));
}

/** An address of the second variant as the first one calls it: by the pair of the whole address, else of its connector. */
function translate(address: string, back: ReadonlyMap<string, string>): string {
  const whole = back.get(address);
  if (whole !== undefined) return whole;
  const colon = address.indexOf(':');
  if (colon < 0) return address;
  const connector = back.get(address.slice(0, colon));
  return connector === undefined ? address : connector + address.slice(colon);
}

/** What the net of each place gains and loses by the work, in the names of the first variant. */
function changesOf(
  { job, netsBefore, after }: VariantChange,
  name: (address: string) => string,
  differ: ReadonlySet<string>,
): ReadonlyMap<string, string> {
  const before = netsBefore();
  const [was, is] = [membersOf(before), membersOf(after)];
  const changes = new Map<string, string>();
  for (const [place, one] of job.places.entries()) {
    const [old, now] = [was.get(before[place] as number) ?? [], is.get(after[place] as number) ?? []];
    const [oldSet, nowSet] = [new Set(old), new Set(now)];
    const list = (members: readonly number[], other: ReadonlySet<number>): string =>
      members
        .filter((member) => !other.has(member))
        .map((member) => name(job.places[member]?.address ?? ''))
        .filter((address) => !differ.has(address))
        .sort(compareText)
        .join(' ');
    const address = name(one.address);
    const changed = old.length !== now.length || old.some((member) => !nowSet.has(member));
    if (!changed) continue;
    const text = `gains ${list(now, oldSet) || 'nothing'}, loses ${list(old, nowSet) || 'nothing'}`;
    // What a place that is said to differ gains or loses elsewhere is the difference itself.
    if (differ.has(address) || text !== 'gains nothing, loses nothing') changes.set(address, text);
  }
  return changes;
}

/** The indices that have each label. */
function membersOf(labels: Int32Array): ReadonlyMap<number, readonly number[]> {
  return grouped(labels.keys(), (index) => labels[index] as number);
}
