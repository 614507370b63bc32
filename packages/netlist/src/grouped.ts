import { appendTo } from './append-to.ts';

/** Puts items into groups by a key, groups and items in the order in which they come. */
export function grouped<K, T>(items: Iterable<T>, keyOf: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) appendTo(groups, keyOf(item), item);
  return groups;
}
