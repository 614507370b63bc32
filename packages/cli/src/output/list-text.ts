const mostShown = 12;

/**
 * Names in one line, `A, B and C`; of a long list the first ones and how many more there are.
 *
 * @param names - in the order to show
 * @param most - how many are shown at most
 */
export function listText(names: readonly string[], most = mostShown): string {
  const shown = names.length > most ? names.slice(0, most) : names;
  const rest = names.length - shown.length;
  if (rest > 0) return `${shown.join(', ')} and ${rest} more`;
  const last = shown[shown.length - 1];
  if (last === undefined) return 'nothing';
  return shown.length === 1 ? last : `${shown.slice(0, -1).join(', ')} and ${last}`;
}
