import type { SizeUnit } from './size.ts';

/**
 * Reads a unit of conductor size: `mm2`, `mm²`, `mm^2`, `sq mm`, `sqmm`, `qmm` or `AWG`, in any case.
 *
 * @param text - the unit alone
 * @returns the unit, or null when the text is none
 */
export function parseSizeUnit(text: string): SizeUnit | null {
  const word = text.trim().toLowerCase();
  if (word === 'awg') return 'awg';
  return /^(?:mm2|mm²|mm\^2|sq\.? ?mm|qmm)$/.test(word) ? 'mm2' : null;
}
