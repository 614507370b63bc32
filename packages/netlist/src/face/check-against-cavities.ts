import { compareLabels } from './compare-labels.ts';
import type { Face } from './face.ts';
import { layoutOf } from './face-layout.ts';

const mostShown = 12;

/** Tells which cavities of the connector have no place on its face, and which places have no cavity. */
export function checkAgainstCavities(face: Face, cavityLabels: readonly string[], problems: string[]): void {
  const { positions, byLabel } = layoutOf(face);
  const own = new Set(cavityLabels);
  const placeless = [...own].filter((label) => !byLabel.has(label));
  const unknown: string[] = [];
  for (const { label, blocked } of positions) {
    if (label !== null && !blocked && !own.has(label)) unknown.push(label);
  }
  if (placeless.length > 0) {
    problems.push(`no place for ${listed(placeless)}: expected a place for each cavity of the connector`);
  }
  if (unknown.length > 0) {
    problems.push(
      `${listed(unknown)} on the face only: expected labels of the connector, or a blocked position`,
    );
  }
}

function listed(labels: string[]): string {
  const shown = labels.sort(compareLabels).map((label) => `\`${label}\``);
  if (shown.length <= mostShown) return shown.join(', ');
  return `${shown.slice(0, mostShown).join(', ')} and ${shown.length - mostShown} more`;
}
