/** Names in one line, `A, B and C`, or `nothing`. */
export function listWords(names: readonly string[]): string {
  const last = names.at(-1);
  if (last === undefined) return 'nothing';
  return names.length === 1 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
