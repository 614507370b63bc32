import { containsHidden, quoteText } from '../text/index.ts';
import type { CellFault } from './table-code.ts';

// What spreadsheets show in place of a value that they could not work out.
const errorValue = /^#(?:REF!|N\/A|VALUE!|NAME\?|DIV\/0!|NUM!|NULL!|SPILL!|CALC!|BEZUG!|NV|WERT!|##+)$/i;
// Within a quoted note they are harmless.
const blanks = /[\n\r\t]+/g;

/** What a cell holds: a name must be typed alike everywhere, a value is parsed, free text is only shown. */
export type CellKind = 'name' | 'value' | 'free text';

/**
 * Checks what no cell may hold: control characters, the error values of spreadsheets, and, in a name, any
 * character that a reader could not see. Free text may have line breaks, tabs, and characters of any script.
 *
 * @param text - the cell
 * @param kind - what the cell holds
 * @returns the fault, or null
 */
export function checkText(text: string, kind: CellKind): CellFault | null {
  if (/\p{Cc}/u.test(kind === 'free text' ? text.replace(blanks, '') : text)) {
    return {
      code: 'TABLE_CONTROL_CHARACTER',
      message: `${quoteText(text)} contains a control character, such as a line break or a tab`,
      help: 'take it out',
    };
  }
  if (kind === 'name' && containsHidden(text)) {
    return {
      code: 'TABLE_HIDDEN_CHARACTER',
      message: `${quoteText(text)} contains a character that cannot be seen`,
      help: 'type the text anew: names that look alike must be alike',
    };
  }
  if (errorValue.test(text)) {
    return {
      code: 'TABLE_SPREADSHEET_ERROR',
      message: `${quoteText(text)} is an error value of a spreadsheet`,
      help: 'put the formula right, or type the value',
    };
  }
  return null;
}
