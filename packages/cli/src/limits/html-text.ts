import { visibleText } from '@loomproof/netlist';

/** Text of a kit as it may stand in HTML, between tags and in quoted attributes. */
export function htmlText(text: string): string {
  return visibleText(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
