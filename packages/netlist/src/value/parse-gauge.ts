import { quoteText } from '../text/index.ts';
import { awgToMm2, thickestAwg, thinnestAwg } from './awg-to-mm2.ts';
import type { Parsed } from './parsed.ts';
import { problem } from './problem.ts';
import type { Size } from './size.ts';

const example = 'write it like `AWG 18`, or `AWG 4/0` for the thick ones';

function gaugeNumber(text: string): number | null {
  const zeros = /^0{1,4}$/.test(text) ? text.length : null;
  if (zeros !== null) return 1 - zeros;
  const aught = /^([1-4])\/0$/.exec(text);
  if (aught !== null) return 1 - Number(aught[1]);
  return /^[1-9]\d?$/.test(text) ? Number(text) : null;
}

/**
 * Reads an American wire gauge without its unit: `18`, `0`, `00`, `2/0`, `4/0`.
 *
 * @param text - the gauge alone
 * @param raw - the text as it was written, kept in the size
 * @returns the size, or what is wrong with it
 */
export function parseGauge(text: string, raw: string): Parsed<Size> {
  const awg = gaugeNumber(text);
  if (awg === null) return problem(`${quoteText(text)} is not a wire gauge`, example);
  if (awg < thickestAwg || awg > thinnestAwg) {
    return problem(`gauge ${quoteText(text)} is outside 4/0 to ${thinnestAwg}`, example);
  }
  return { ok: true, value: { unit: 'awg', mm2: awgToMm2(awg), awg, raw } };
}
