import type { DropRow, VariantVerdict } from '@loomproof/verify';
import { dropPicture } from './drop-picture.ts';
import { htmlText } from './html-text.ts';
import type { CellTable, VariantLimits } from './limit-cells.ts';

/** What a page of limits says of itself. */
export interface LimitsPageHead {
  readonly kit: string;
  readonly revision: string;
  /** That ties the page to its inputs. */
  readonly digest: string;
  /** What was asked to be different from the kit file, in words. */
  readonly changes: readonly string[];
}

/** A variant with its limits, and those as tables. */
export interface PageVariant {
  readonly variant: VariantVerdict;
  readonly limits: VariantLimits;
  readonly tables: readonly CellTable[];
}

/**
 * The tables of limits as one page that prints and fits a phone, with a picture for each circuit: the volts lost along
 * its way, from the supply to its load and back.
 *
 * @param head - for the top of the page
 * @param variants - in the order of the kit
 */
export function limitsPage(head: LimitsPageHead, variants: readonly PageVariant[]): string {
  const title = `Electrical limits: ${htmlText(head.kit)}`;
  const changed =
    head.changes.length === 0
      ? ''
      : `<p class="banner">Not as the kit file says: ${head.changes.map(htmlText).join('; ')}</p>\n`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${title}</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<style>${style}</style></head>
<body><main><h1>${title}</h1>
<p>Revision ${htmlText(head.revision)}, inputs ${htmlText(head.digest.slice(0, 12))}. Computed from the model in the kit file, not measured on the metal.</p>
${changed}${variants.map(variantText).join('\n')}
</main></body></html>
`;
}

const style = `:root{color-scheme:light dark}
body{font:16px/1.4 sans-serif;margin:1em;color:CanvasText;background:Canvas}
.pan{overflow-x:auto}
table{border-collapse:collapse;margin:1em 0;font-size:.9em}
caption{text-align:left;font-weight:bold}
th,td{border:1px solid;padding:.2em .5em;text-align:left;vertical-align:top}
h1,h2,li,p,figcaption{overflow-wrap:anywhere}
.banner{border:3px solid;padding:.5em;font-weight:bold}
figure{margin:1em 0;max-width:40em;break-inside:avoid}
svg{width:100%;font-size:13px;fill:currentColor}
svg path{fill:none;stroke:currentColor}
svg .drop{stroke-width:2.5}
svg .limit{stroke-dasharray:6 4}
svg .load{stroke-dasharray:1 4}
summary{padding:.75em 0}
@page{margin:12mm}
@media print{:root{color-scheme:light}body{margin:0;font-size:10pt}.pan{overflow:visible}table{width:100%;font-size:8pt}
th,td{overflow-wrap:anywhere;hyphens:auto}thead{display:table-header-group}tr{break-inside:avoid}}`;

function variantText({ variant, limits, tables }: PageVariant): string {
  const word = variant.obligations.find(({ obligation }) => obligation === 9)?.verdict ?? 'not claimed';
  const findings = variant.findings.filter(({ obligation }) => obligation === 9);
  const banner =
    word === 'proved'
      ? ''
      : `<p class="banner">The limits are not proved to be kept: ${htmlText(word)}</p>\n`;
  const list =
    findings.length === 0
      ? ''
      : `<ul>${findings.map((one) => `<li>${htmlText(one.message)}</li>`).join('')}</ul>\n`;
  const pictures = (rows: readonly DropRow[]): string => rows.map(dropPicture).filter(Boolean).join('\n');
  const [losses = '', fuses = '', carried = '', lossesAlone = '', carriedAlone = ''] = tables.map(tableText);
  return `<section><h2>${htmlText(variant.variant)}: ${htmlText(word)}</h2>
${banner}${list}${losses}
${pictures(limits.judged.drops)}
${fuses}
${carried}
${lossesAlone}
${pictures(limits.leftAlone.drops)}
${carriedAlone}</section>`;
}

function tableText({ title: said, head, rows, none }: CellTable): string {
  const title = `${said.slice(0, 1).toUpperCase()}${said.slice(1)}`;
  if (rows.length === 0) return `<p>${htmlText(title)}: ${htmlText(none)}.</p>`;
  const headText = head.map((cell) => `<th scope="col">${htmlText(cell)}</th>`).join('');
  const body = rows
    .map((row) => `<tr>${row.map((cell) => `<td>${htmlText(cell)}</td>`).join('')}</tr>`)
    .join('\n');
  return `<div class="pan" tabindex="0" role="region" aria-label="${htmlText(title)}"><table><caption>${htmlText(title)}</caption><thead><tr>${headText}</tr></thead><tbody>
${body}
</tbody></table></div>`;
}
