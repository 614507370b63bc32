import { visibleText } from './visible-text.ts';

/**
 * Whether a text holds a character that a reader could not see or a terminal would obey.
 *
 * @param text - any text
 * @returns true when `visibleText` would show it differently
 */
export function containsHidden(text: string): boolean {
  return visibleText(text) !== text;
}
