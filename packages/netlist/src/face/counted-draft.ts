import type { MisreadingDraft, MisreadingKind } from './misreading.ts';

/** A line of labels in counting order, and the labels at the places where a person looks for them in turn. */
export interface CountedLine {
  readonly labels: readonly string[];
  /** Null for a place without label: looking there is noticed. */
  readonly places: readonly (string | null)[];
}

/** The misreading by which the label counted n-th in its line is looked for at the n-th place. */
export function countedDraft(
  kind: MisreadingKind,
  sentence: string,
  lines: readonly CountedLine[],
): MisreadingDraft {
  const cavities = new Map<string, string>();
  for (const { labels, places } of lines) {
    for (const [index, label] of labels.entries()) {
      const hit = places[index] ?? null;
      if (hit !== null) cavities.set(label, hit);
    }
  }
  return { kind, sentence, cavities };
}
