import { quoteText } from '../text/index.ts';
import type { CellFault, TableCode } from './table-code.ts';

interface Mark {
  readonly code: TableCode;
  readonly meanings: string;
}

const dash: Mark = { code: 'TABLE_DASH', meanings: 'may mean that there is none or that it is not known' };
const notConnected: Mark = {
  code: 'TABLE_NOT_CONNECTED',
  meanings: 'may mean not connected or normally closed',
};
const spare: Mark = { code: 'TABLE_SPARE', meanings: 'may mean an empty place or a wire kept in reserve' };
const notApplicable: Mark = {
  code: 'TABLE_NOT_APPLICABLE',
  meanings: 'may mean that there is none or that it is not known',
};
const ditto: Mark = { code: 'TABLE_DITTO', meanings: 'seems to repeat the row above' };

const marks: ReadonlyMap<string, Mark> = new Map<string, Mark>([
  ['-', dash],
  ['--', dash],
  ['---', dash],
  ['–', dash],
  ['—', dash],
  ['nc', notConnected],
  ['n.c.', notConnected],
  ['n/c', notConnected],
  ['not connected', notConnected],
  ['spare', spare],
  ['reserve', spare],
  ['reserved', spare],
  ['blank', spare],
  ['(blank)', spare],
  ['empty', spare],
  ['unused', spare],
  ['not used', spare],
  ['vacant', spare],
  ['free', spare],
  ['n/a', notApplicable],
  ['na', notApplicable],
  ['n.a.', notApplicable],
  ['none', notApplicable],
  ['?', notApplicable],
  ['"', ditto],
  ["''", ditto],
  ['〃', ditto],
  ['do.', ditto],
  ['ditto', ditto],
]);

/**
 * What is wrong with a cell that holds no value but one of the trade's marks for having none: `NC`, `-`,
 * `spare`, `blank`, `n/a`, ditto. They mean different things to different authors, so each is asked about.
 *
 * @param text - the cell, not blank
 * @param what - what the cell should name, such as `cavity`
 * @param remedy - what to write instead
 * @returns the fault, or null when the text is no such mark
 */
export function emptyMark(text: string, what: string, remedy: string): CellFault | null {
  const mark = marks.get(text.toLowerCase());
  if (mark === undefined) return null;
  return {
    code: mark.code,
    message: `${quoteText(text)} in place of a ${what} ${mark.meanings}`,
    help: remedy,
  };
}
