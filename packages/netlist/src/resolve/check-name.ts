import type { Span } from '../text/index.ts';
import type { HarnessBuilder } from './harness-builder.ts';

/** A name that may be written in addresses, ends and conditions without being misread. */
export function checkName(
  entry: { readonly key: string; readonly keySpan: Span | null },
  what: string,
  builder: HarnessBuilder,
): boolean {
  if (
    entry.key === '' ||
    entry.key.length > 200 ||
    /[:@=|]/.test(entry.key) ||
    entry.key.trim() !== entry.key
  ) {
    builder.complaints.error(
      'name',
      `\`${entry.key.slice(0, 80)}\` cannot be the name of a ${what}`,
      entry.keySpan,
      'a name has no `:`, `@`, `=` or `|` and no blank at its ends',
    );
    return false;
  }
  return true;
}

/** Complains where a name already stands for a place or a joint. */
export function isTaken(
  entry: { readonly key: string; readonly keySpan: Span | null },
  builder: HarnessBuilder,
): boolean {
  if (!builder.placeByAddress.has(entry.key) && !builder.jointByName.has(entry.key)) return false;
  builder.complaints.error('written-twice', `\`${entry.key}\` already names a point`, entry.keySpan);
  return true;
}
