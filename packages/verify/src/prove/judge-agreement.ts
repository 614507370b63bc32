import { compareText, type Job, type Variant } from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';

/** One judged variant as the comparison of variants sees it. */
export interface VariantChange {
  readonly variant: Variant;
  readonly job: Job;
  /** Net of each place before and after, as smallest place. */
  readonly before: Int32Array;
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
  const findings: RawFinding[] = [];
  for (const address of [...new Set([...mine.keys(), ...theirs.keys(), ...differ])].sort(compareText)) {
    const [a, b] = [mine.get(address) ?? 'unchanged', theirs.get(address) ?? 'unchanged'];
    const shouldDiffer = differ.has(address);
    if (!shouldDiffer && facing.has(address)) continue;
    if ((a !== b) === shouldDiffer) continue;
    findings.push({
      kind: shouldDiffer ? 'variants-alike' : 'variants-differ',
      step: null,
      points: [address],
      witness: {
        is: 'variants',
        place: address,
        first: `${first.variant.name}: ${a}`,
        second: `${second.variant.name}: ${b}`,
      },
      culprits: [],
      keys: [`differs:${address}`],
    });
  }
  return findings;
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
  { job, before, after }: VariantChange,
  name: (address: string) => string,
  differ: ReadonlySet<string>,
): ReadonlyMap<string, string> {
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

function membersOf(labels: Int32Array): ReadonlyMap<number, readonly number[]> {
  const members = new Map<number, number[]>();
  for (let place = 0; place < labels.length; place += 1) {
    const label = labels[place] as number;
    const list = members.get(label);
    if (list === undefined) members.set(label, [place]);
    else list.push(place);
  }
  return members;
}
