/** Words as a sentence: a capital first, a full stop last. */
export function sentence(words: string): string {
  const first = words.slice(0, 1).toUpperCase() + words.slice(1);
  return /[.!?:]$/.test(first) ? first : `${first}.`;
}
