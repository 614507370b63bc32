import type { FacePosition } from './face.ts';

/** What stands at a written position: `B4`, the blocked `(B4)`, or `--` for a blocked position without label. */
export function readPosition(word: string, problems: string[]): Pick<FacePosition, 'label' | 'blocked'> {
  if (word === '--') return { label: null, blocked: true };
  const shut = /^\((.*)\)$/.exec(word);
  if (shut === null) return { label: word, blocked: false };
  if (shut[1] === '') problems.push('`()` names nothing: expected a label in the brackets, or `--`');
  return { label: shut[1] ?? '', blocked: true };
}

/** The word that {@link readPosition} reads. */
export function writePosition({ label, blocked }: Pick<FacePosition, 'label' | 'blocked'>): string {
  if (label === null) return '--';
  return blocked ? `(${label})` : label;
}
