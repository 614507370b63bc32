/** The number in front of a size or a diameter such as `0.5 mm2`, or null where nothing was written. */
export function readNumber(text: string | undefined): number | null {
  return text === undefined ? null : Number.parseFloat(text);
}

/** Whether a range such as `0.3..0.75 mm2` holds a value; null where either is not known. */
export function fits(range: string | undefined, value: number | null): boolean | null {
  if (range === undefined || value === null) return null;
  const [least = '', most = ''] = range.split('..');
  return Number.parseFloat(least) <= value && value <= Number.parseFloat(most);
}

/** The labels of a list in which `1..4` stands for `1`, `2`, `3`, `4`. */
export function readLabels(items: readonly string[]): readonly string[] {
  const labels: string[] = [];
  for (const item of items) {
    const [first = '', last] = item.split('..');
    if (last === undefined) labels.push(first);
    else for (let label = Number(first); label <= Number(last); label += 1) labels.push(String(label));
  }
  return labels;
}
