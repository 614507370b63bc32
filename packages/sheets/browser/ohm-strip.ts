import type { Bands, Outcome } from '@loomproof/verify';
import { element } from './element.ts';

/** The strip shows from a hundredth of an ohm to a hundred megohms. */
const least = -2;
const most = 8;

/** A strip of ohms, each tenfold one step, with the two limits and where a reading lies. */
export function ohmStrip(ohm: number | null, outcome: Outcome, { wholeOhm, openOhm }: Bands): HTMLElement {
  const across = (value: number): number =>
    (100 * (Math.min(most, Math.max(least, Math.log10(Math.max(value, 1e-9)))) - least)) / (most - least);
  const part = (kind: string, from: number, to: number, text: string): HTMLElement =>
    element('span', { class: kind, attributes: [['style', `left:${from}%;width:${to - from}%`]] }, text);
  const [whole, open] = [across(wholeOhm), across(openOhm)];
  return element(
    'div',
    {
      class: 'ohms',
      attributes: [
        ['role', 'img'],
        ['aria-label', `the reading lies where it is ${outcome}`],
      ],
    },
    part('whole', 0, whole, 'whole'),
    part('between', whole, open, 'between'),
    part('open', open, 100, 'open'),
    element('i', { attributes: [['style', `left:${ohm === null ? 100 : across(ohm)}%`]] }),
  );
}
