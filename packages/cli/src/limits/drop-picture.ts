import { visibleText } from '@loomproof/netlist';
import type { DropRow } from '@loomproof/verify';
import { htmlText } from './html-text.ts';

const width = 400;
const height = 210;
const left = 54;
const right = width - 10;
const top = 18;
const bottom = height - 46;

/**
 * A drawing of the volts lost along the way of one circuit, from the supply out to its load and back, one step for each
 * conductor, joint and contact, with the limit as a dashed line and a list of the steps below. Letters are large enough
 * to be read where the drawing is 320 pixels wide.
 *
 * @param row - with its parts in the order of the current
 * @returns nothing where nothing is known of the way
 */
export function dropPicture(row: DropRow): string {
  const { parts, outParts, dropVolt, limitVolt, circuit } = row;
  if (parts.length === 0 || dropVolt === null) return '';
  const most = Math.max(limitVolt ?? 0, dropVolt, 1e-9) * 1.1;
  const x = (index: number): string => (left + (index * (right - left)) / parts.length).toFixed(1);
  const y = (volts: number): string => (top + (volts / most) * (bottom - top)).toFixed(1);
  let lost = 0;
  const steps = [`M ${x(0)} ${y(0)}`];
  const items: string[] = [];
  for (const [index, part] of parts.entries()) {
    lost += part.volts;
    steps.push(`L ${x(index + 1)} ${y(lost)}`);
    items.push(`<li>${htmlText(part.what)}: ${part.volts.toFixed(3)} V, together ${lost.toFixed(3)} V</li>`);
  }
  const title = `Volts lost along the way of ${circuit}`;
  const limit =
    limitVolt === null
      ? ''
      : `<path class="limit" d="M ${left} ${y(limitVolt)} H ${right}"/>
<text x="${left - 4}" y="${y(limitVolt)}" text-anchor="end" dominant-baseline="middle">${limitVolt.toFixed(2)} V</text>`;
  return `<figure>
<svg role="img" aria-label="${htmlText(title)}" viewBox="0 0 ${width} ${height}">
<path class="axis" d="M ${left} ${top} V ${bottom} H ${right}"/>
<path class="load" d="M ${x(outParts)} ${top} V ${bottom}"/>
${limit}
<text x="${left - 4}" y="${top}" text-anchor="end" dominant-baseline="middle">0 V</text>
<text x="${left}" y="${bottom + 18}">supply</text>
<text x="${x(outParts)}" y="${top - 6}" text-anchor="middle">load</text>
<text x="${right}" y="${bottom + 18}" text-anchor="end">return</text>
<text x="${left}" y="${bottom + 38}">${parts.length} parts${limitVolt === null ? '' : '; dashed: the limit'}</text>
<path class="drop" d="${steps.join(' ')}"/></svg>
<figcaption>${htmlText(title)}: ${dropVolt.toFixed(3)} V${stateText(row)}</figcaption>
<details open><summary>The ${parts.length} parts</summary><ol>${items.join('')}</ol></details></figure>`;
}

function stateText({ state }: DropRow): string {
  return state.length === 0 ? '' : ` with ${htmlText(visibleText(state.join(', ')))}`;
}
