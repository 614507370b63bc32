import type { Length } from './length.ts';

/**
 * A length in millimetres: `80 mm`.
 *
 * @param length - a length
 * @returns text that `parseLength` reads back to the same number of millimetres
 */
export function formatLength(length: Length): string {
  return `${length.mm} mm`;
}
