/** Adds an item to the list under a key of a map, which is made where there is none yet. */
export function appendTo<K, T>(map: Map<K, T[]>, key: K, item: T): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [item]);
  else list.push(item);
}
