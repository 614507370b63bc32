const run = /^(.*:)(\d{1,6})\.\.(\d{1,6})$/s;

/** Addresses with cavities numbered one after the other put together, such as `K1:1..24`, in the order given. */
export function addressesInShort(addresses: readonly string[]): readonly string[] {
  const short: { text: string; before: string; first: number; last: number }[] = [];
  for (const text of addresses) {
    const [, before = '', digits = ''] = /^(.*:)([1-9]\d{0,5})$/s.exec(text) ?? [];
    const number = digits === '' ? Number.NaN : Number(digits);
    const open = short[short.length - 1];
    if (open !== undefined && open.before === before && open.last + 1 === number) open.last = number;
    else short.push({ text, before, first: number, last: number });
  }
  return short.map(({ text, before, first, last }) => (last > first ? `${before}${first}..${last}` : text));
}

/** What {@link addressesInShort} made shorter. */
export function addressesAtLength(short: readonly string[]): ReadonlySet<string> {
  const all = new Set<string>();
  for (const text of short) {
    const [, before = '', first = '', last = ''] = run.exec(text) ?? [];
    if (first === '') all.add(text);
    else for (let number = Number(first); number <= Number(last); number += 1) all.add(`${before}${number}`);
  }
  return all;
}
