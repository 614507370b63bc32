import type { DrawnText } from '../resolve/resolve-job.ts';
import type { Diagnostic, Source } from '../text/index.ts';
import type { Located } from './located.ts';

/** Gives the text of a table by the name that a kit file uses for it, or null when there is none. */
export type TableLoader = (name: string) => Source | null;

export function embedTables(
  document: Located,
  _load: TableLoader,
): { document: Located; drawn: readonly DrawnText[] | null; diagnostics: readonly Diagnostic[] } {
  return { document, drawn: null, diagnostics: [] };
}
