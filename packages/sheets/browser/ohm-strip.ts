import { type Asked, type Bands, expectedText, isOhmRange, type Outcome } from '@loomproof/verify';
import { element } from './element.ts';

/** Powers of ten between which a strip shows ohms. */
interface Scale {
  readonly least: number;
  readonly most: number;
}

/** From a hundredth of an ohm to a hundred megohms. */
const allOhms: Scale = { least: -2, most: 8 };

/** Ohms that are due are looked at closely: half of them to twice as many. */
const around = 0.3;

/** A wider range, such as that of a diode, is seen on the strip of all ohms. */
const closeUpTo = 100;

/**
 * A strip of ohms on which a reading lies: with the two limits, or where known ohms are due, with fewer and more of them.
 *
 * @param ohm - null for open
 */
export function ohmStrip(
  ohm: number | null,
  outcome: Outcome,
  { wholeOhm, openOhm }: Bands,
  due: Asked | null,
): HTMLElement {
  if (due !== null && isOhmRange(due) && due.highOhm < closeUpTo * due.lowOhm) {
    const { lowOhm, highOhm } = due;
    const scale = { least: Math.log10(lowOhm) - around, most: Math.log10(highOhm) + around };
    const isFewer = ohm !== null && ohm < lowOhm;
    const where = isFewer ? 'below' : ohm === null || ohm > highOhm ? 'above' : 'within';
    return strip(ohm, scale, `the reading lies ${where} ${expectedText(due)}, which is due`, [
      ['between', lowOhm, 'fewer'],
      ['due', highOhm, 'due'],
      ['between', Number.POSITIVE_INFINITY, 'more'],
    ]);
  }
  return strip(ohm, allOhms, `the reading lies where it is ${outcome}`, [
    ['whole', wholeOhm, 'whole'],
    ['between', openOhm, 'between'],
    ['open', Number.POSITIVE_INFINITY, 'open'],
  ]);
}

/** Parts from the left, each up to so many ohms. */
function strip(
  ohm: number | null,
  { least, most }: Scale,
  label: string,
  parts: readonly (readonly [kind: string, upTo: number, text: string])[],
): HTMLElement {
  const across = (value: number): number =>
    (100 * (Math.min(most, Math.max(least, Math.log10(Math.max(value, 1e-9)))) - least)) / (most - least);
  let from = 0;
  const shown = parts.map(([kind, upTo, text]) => {
    const style = `left:${from}%;width:${across(upTo) - from}%`;
    from = across(upTo);
    return element('span', { class: kind, attributes: [['style', style]] }, text);
  });
  const mark = element('i', { attributes: [['style', `left:${ohm === null ? 100 : across(ohm)}%`]] });
  const attributes = [
    ['role', 'img'],
    ['aria-label', label],
  ] as const;
  return element('div', { class: 'ohms', attributes }, ...shown, mark);
}
