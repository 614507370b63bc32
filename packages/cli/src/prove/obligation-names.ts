/** What each obligation is called, by its number. */
const obligationNames: ReadonlyMap<number, string> = new Map([
  [1, 'continuity'],
  [2, 'no wrong connection'],
  [3, 'nothing else changed'],
  [4, 'isolation'],
  [5, 'insulation'],
  [6, 'occupancy and fit'],
  [7, 'procedure'],
  [8, 'variants agree'],
  [9, 'electrical'],
  [10, 'back-feed'],
]);

/** `5, insulation` for the reader who knows the list and the one who does not. */
export function obligationName(obligation: number): string {
  const name = obligationNames.get(obligation);
  return name === undefined ? String(obligation) : `${obligation}, ${name}`;
}
