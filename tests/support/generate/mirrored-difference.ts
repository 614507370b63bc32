import type { HarnessDifference, NetChange } from '@loomproof/verify';

/** What is said of a comparison when the first harness becomes the second and the other way round. */
export function mirroredDifference(difference: HarnessDifference): HarnessDifference {
  return {
    equal: difference.equal,
    nets: difference.nets.map(mirroredNet),
    gained: difference.lost,
    lost: difference.gained,
    added: difference.removed,
    removed: difference.added,
    changed: difference.changed.map((row) => ({ ...row, before: row.after, after: row.before })),
  };
}

function mirroredNet(change: NetChange): NetChange {
  switch (change.is) {
    case 'kept':
      return change;
    case 'resized':
      return { ...change, gained: change.lost, lost: change.gained };
    case 'split':
      return { is: 'merged', from: change.into, places: change.places };
    case 'merged':
      return { is: 'split', places: change.places, into: change.from };
    case 'rearranged':
      return { is: 'rearranged', from: change.into, into: change.from };
    case 'gone':
      return { is: 'new', places: change.places };
    case 'new':
      return { is: 'gone', places: change.places };
  }
}

/** A comparison with every list in one order, since where a thing stands in a list says nothing. */
export function inOneOrder(difference: HarnessDifference): string {
  const sorted = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map((one) => JSON.stringify(sorted(one))).sort();
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, sorted(one)]));
  };
  return JSON.stringify(sorted(difference));
}
