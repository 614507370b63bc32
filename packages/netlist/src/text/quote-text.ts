import { visibleText } from './visible-text.ts';

/** The most characters of a quoted text that are put into a message. */
export const longestQuote = 60;

/**
 * A text from the input, put in backticks for use within a message: nothing hidden in it, and cut to
 * `longestQuote` characters with `…` so that one long cell does not fill the screen.
 *
 * @param text - any text
 * @returns the quoted text
 */
export function quoteText(text: string): string {
  // Cut before counting code points, so that a text of many megabytes costs no more than a short one.
  const characters = [...text.slice(0, 2 * longestQuote + 2)];
  const shown =
    characters.length > longestQuote ? `${characters.slice(0, longestQuote).join('')}…` : characters.join('');
  return `\`${visibleText(shown)}\``;
}
