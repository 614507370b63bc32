import { cssText } from './css-text.ts';
import { type Markup, type MarkupValue, markup, trusted } from './markup.ts';
import type { SheetHead } from './sheet-head.ts';
import { sheetStyle } from './sheet-style.ts';

const policy =
  "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; worker-src blob:; img-src data:; base-uri 'none'; form-action 'none'";

/**
 * A whole sheet in one file that asks nothing of any network. On paper every page carries kit, revision, variant, digest
 * and its number, and where the kit is not proved, that too, in the margin of the page.
 *
 * @param title - what sheet it is
 * @param body - its content
 * @param end - what stands after it, such as a script
 * @param style - what it needs beside the style of every sheet
 */
export function page(
  head: SheetHead,
  title: string,
  body: MarkupValue,
  end: MarkupValue = null,
  style = '',
): string {
  const told = `${head.kit}, revision ${head.revision}, ${variantWords(head.variant)}, ${head.digest.slice(0, 12)}`;
  const banner = head.proved ? null : bannerWords(head);
  const margins = `@page { margin: 16mm 12mm 18mm; @bottom-left { content: ${cssText(`${title}: ${told}`)}; font: 8pt sans-serif; width: 85%; text-align: left; } @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; } ${banner === null ? '' : `@top-center { content: ${cssText(banner)}; font: bold 11pt sans-serif; width: 100%; }`} }`;
  const whole = markup`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta http-equiv="Content-Security-Policy" content="${policy}"><title>${title}: ${told}</title><link rel="icon" href="data:,"><style>${trusted(sheetStyle + style + margins)}</style></head>
<body>${banner === null ? null : markup`<aside class="unproved" id="unproved" aria-label="Verdict">${banner}</aside>`}<header class="head"><h1>${title}</h1><dl>${facts(head)}</dl></header>
<main>${body}</main>
<footer>${told}. In full: ${head.digest}</footer>${end}</body></html>
`;
  return whole.text;
}

/** What is said across the top of every sheet of a kit that is not proved. */
function bannerWords({ verdict, elsewhere }: SheetHead): string {
  const found =
    elsewhere === null ? `NOT PROVED (${verdict})` : `KIT NOT PROVED (${elsewhere} in another variant)`;
  return `${found}: do not build, fit or power by this sheet`;
}

/** The variant as a sheet names it. */
function variantWords(variant: string): string {
  return variant === 'only' ? 'one variant' : variant;
}

/** What was found, where that is not that the kit is proved. */
export function notProvedWords({ verdict, elsewhere }: SheetHead): string {
  return elsewhere === null ? `not proved, ${verdict}` : `kit not proved, ${elsewhere} in another variant`;
}

function facts(head: SheetHead): readonly Markup[] {
  return [
    ['Kit', head.kit],
    ['Revision', head.revision],
    ['Variant', variantWords(head.variant)],
    ['Digest', head.digest.slice(0, 12)],
    ['Verdict', head.proved ? 'proved' : notProvedWords(head)],
  ].map(([name = '', value = '']) => markup`<div><dt>${name}</dt><dd>${value}</dd></div>`);
}
