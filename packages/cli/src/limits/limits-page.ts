import { visibleText } from '@loomproof/netlist';
import type { DropRow, VariantVerdict } from '@loomproof/verify';
import { dropHead, type LimitCells, loadingHead, protectionHead } from './limit-cells.ts';

const width = 640;
const height = 220;
const left = 48;
const bottom = 28;

/**
 * The tables of limits as a page for printing, with one picture for each variant: the volts lost along the way of the
 * circuit that has the least margin, from the supply to its load and back.
 *
 * @param kit - its name and revision
 * @param variants - each with its cells
 */
export function limitsPage(
  kit: string,
  variants: readonly (readonly [VariantVerdict, LimitCells])[],
): string {
  const parts = variants.map(
    ([variant, cells]) =>
      `<section><h2>${htmlText(variant.variant)}: ${variant.obligations.find(({ obligation }) => obligation === 9)?.verdict ?? 'not claimed'}</h2>
${tableText('Losses out and return', dropHead, cells.drops)}
${picture(variant)}
${tableText('Conductors and the fuse ahead of them', protectionHead, cells.protection)}
${tableText('What fuses and outputs carry', loadingHead, cells.loading)}
${findingsText(variant)}</section>`,
  );
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Limits: ${htmlText(kit)}</title>
<style>body{font:14px sans-serif;margin:2em;color:#000;background:#fff}table{border-collapse:collapse;margin:1em 0}
caption{text-align:left;font-weight:bold}th,td{border:1px solid #555;padding:.2em .5em;text-align:left;vertical-align:top}
section{break-inside:avoid}@page{margin:15mm}</style></head>
<body><h1>Electrical limits: ${htmlText(kit)}</h1>
<p>Computed from the model in the kit file, not measured on the metal.</p>
${parts.join('\n')}
</body></html>
`;
}

function tableText(title: string, head: readonly string[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return `<p>${htmlText(title)}: none in the part that the kit touches.</p>`;
  const headText = head.map((cell) => `<th scope="col">${htmlText(cell)}</th>`).join('');
  const body = rows
    .map((row) => `<tr>${row.map((cell) => `<td>${htmlText(cell)}</td>`).join('')}</tr>`)
    .join('\n');
  return `<table><caption>${htmlText(title)}</caption><thead><tr>${headText}</tr></thead><tbody>\n${body}\n</tbody></table>`;
}

function findingsText(variant: VariantVerdict): string {
  const found = variant.findings.filter(({ obligation }) => obligation === 9);
  if (found.length === 0) return '';
  return `<ul>${found.map((one) => `<li>${htmlText(one.message)}</li>`).join('')}</ul>`;
}

function picture(variant: VariantVerdict): string {
  const rows = variant.judgement.electrical?.limits.drops ?? [];
  const tightest = rows.reduce<DropRow | null>((least, row) => {
    if (row.marginVolt === null || row.parts.length === 0) return least;
    return least === null || row.marginVolt < (least.marginVolt ?? 0) ? row : least;
  }, null);
  if (tightest === null) return '';
  const most = Math.max(tightest.limitVolt ?? 0, tightest.dropVolt ?? 0) * 1.1;
  const x = (index: number): string =>
    (left + (index * (width - left - 8)) / tightest.parts.length).toFixed(1);
  const y = (volts: number): string => (8 + (volts / most) * (height - bottom - 8)).toFixed(1);
  let lost = 0;
  const steps = [`M ${x(0)} ${y(0)}`];
  const names: string[] = [];
  for (const [index, part] of tightest.parts.entries()) {
    lost += part.volts;
    steps.push(`L ${x(index + 1)} ${y(lost)}`);
    names.push(`<li>${htmlText(part.what)}: ${part.volts.toFixed(3)} V, together ${lost.toFixed(3)} V</li>`);
  }
  const limit = tightest.limitVolt ?? 0;
  const title = `Volts lost along the way of ${tightest.circuit}`;
  return `<figure><svg role="img" aria-label="${htmlText(title)}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">
<path d="M ${left} 8 V ${height - bottom} H ${width - 8}" fill="none" stroke="#000"/>
<path d="M ${left} ${y(limit)} H ${width - 8}" stroke="#000" stroke-dasharray="6 4"/>
<text x="2" y="${y(limit)}" font-size="11">${limit.toFixed(2)} V</text><text x="2" y="16" font-size="11">0 V</text>
<text x="${left}" y="${height - 8}" font-size="11">supply, out to the load and back: ${tightest.parts.length} parts; dashed: the limit</text>
<path d="${steps.join(' ')}" fill="none" stroke="#000" stroke-width="2"/></svg>
<figcaption>${htmlText(title)}</figcaption><ol>${names.join('')}</ol></figure>`;
}

function htmlText(text: string): string {
  return visibleText(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
