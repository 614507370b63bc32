import { visibleText } from '@loomproof/netlist';

/** Text as a quoted CSS string in which every character but letters, digits and blanks is written by its number. */
export function cssText(text: string): string {
  return `"${[...visibleText(text)].map((one) => (/[A-Za-z0-9 ]/.test(one) ? one : `\\${one.codePointAt(0)?.toString(16)} `)).join('')}"`;
}
