import { nearestName, quoteText } from '../text/index.ts';
import { emptyMark } from './empty-mark.ts';
import { recoverLabel } from './recover-label.ts';
import { type SpoiledForm, spoiledForm } from './spoiled-form.ts';
import type { CellFault, TableCode } from './table-code.ts';

const spoiledCodes = {
  date: 'TABLE_DATE',
  scientific: 'TABLE_SCIENTIFIC',
  decimal: 'TABLE_DECIMAL',
} as const;
const looks = {
  date: 'looks like a date or a time that a spreadsheet made',
  scientific: 'looks like a number in scientific form that a spreadsheet made',
  decimal: 'looks like a number with decimals that a spreadsheet made',
} as const;
const mostOffered = 4;

function offer(labels: readonly string[]): string {
  const shown = labels.slice(0, mostOffered).map(quoteText).join(' or ');
  return labels.length > mostOffered ? `${shown} or others` : shown;
}

/**
 * What a label that may be spoiled looks like, in words.
 *
 * @param what - what the cell names, such as `cavity`
 * @param text - the cell
 * @param form - the form that `spoiledForm` found
 * @returns code and message
 */
export function spoiledMessage(
  what: string,
  text: string,
  form: SpoiledForm,
): { code: TableCode; message: string } {
  return { code: spoiledCodes[form.kind], message: `${what} ${quoteText(text)} ${looks[form.kind]}` };
}

function withoutList(label: string, connector: string): CellFault | null {
  const form = spoiledForm(label);
  if (form === null) return null;
  const whose = connector === '' ? 'the connector' : `connector ${quoteText(connector)}`;
  return {
    ...spoiledMessage('cavity', label, form),
    help: `give the list of cavity labels of ${whose}, or type the label into a column formatted as text`,
  };
}

function withoutLeadingZeros(label: string): string {
  return label.replace(/^0+(?=\d)/, '');
}

function withList(label: string, connector: string, labels: ReadonlySet<string>): CellFault {
  const place = `connector ${quoteText(connector)}`;
  const form = spoiledForm(label);
  if (form !== null) {
    const recovered = recoverLabel(form, labels);
    const help = recovered.length > 0 ? `${place} has ${offer(recovered)}` : `see the labels of ${place}`;
    return {
      ...spoiledMessage('cavity', label, form),
      help: `${help}; type the label into a column formatted as text`,
    };
  }
  const same = [...labels].filter((one) => withoutLeadingZeros(one) === withoutLeadingZeros(label));
  if (same.length > 0) {
    return {
      code: 'TABLE_LEADING_ZERO',
      message: `cavity ${quoteText(label)} of ${place} differs in leading zeros from a label that exists`,
      help: `${place} has ${offer(same)}`,
    };
  }
  const nearest = nearestName(label, labels);
  return {
    code: 'TABLE_CAVITY_UNKNOWN',
    message: `${place} has no cavity ${quoteText(label)}`,
    help: nearest === null ? `it has ${offer([...labels])}` : `did you mean ${quoteText(nearest)}?`,
  };
}

/**
 * Checks the label of a cavity. With the connector's own list, exactly the labels of the list are right,
 * whatever they look like. Without it, a label is right unless it looks spoiled.
 *
 * @param label - the cell, not blank
 * @param connector - the connector's name, for the message
 * @param labels - the connector's own labels, or null when they are not known
 * @returns the fault, or null when the label is right
 */
export function checkCavity(
  label: string,
  connector: string,
  labels: ReadonlySet<string> | null,
): CellFault | null {
  if (labels?.has(label)) return null;
  const mark = emptyMark(
    label,
    'cavity',
    'take the row out when no wire is there, otherwise write the label',
  );
  if (mark !== null) return mark;
  return labels === null ? withoutList(label, connector) : withList(label, connector, labels);
}
