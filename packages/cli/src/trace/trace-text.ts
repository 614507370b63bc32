import { appendTo, type KitFile, shortDigest, visibleText } from '@loomproof/netlist';
import type { CavityNet } from '@loomproof/verify';
import { listText } from '../output/list-text.ts';
import type { Paint } from '../output/paint.ts';
import { treeLines } from '../prove/tree-lines.ts';
import type { VariantTrace } from './trace-kit.ts';

/**
 * What a cavity is joined to before and after the work, for people.
 *
 * @param kit - for its name, revision and number of variants
 * @param address - the cavity
 * @param traces - of every variant that was read
 * @param how - digest and colours
 * @returns text that ends with a line end
 */
export function traceText(
  kit: KitFile,
  address: string,
  traces: readonly VariantTrace[],
  { digest, paint }: { readonly digest: string; readonly paint: Paint },
): string {
  const groups = new Map<string, string[]>();
  for (const one of traces) {
    const body = bodyOf(address, one)
      .map((line) => visibleText(`  ${line}`))
      .join('\n');
    appendTo(groups, body, one.variant);
  }
  const lines = [
    `${paint(visibleText(address), 'bold')}  ${visibleText(`${kit.kit}, revision ${kit.revision}`)}`,
    `${scopeText(traces.length, kit.variantCount)}; digest ${shortDigest(digest)}`,
    ...[...groups].flatMap(([body, variants]) => ['', `${visibleText(listText(variants, 64))}:`, body]),
    '',
    'As the kit file says, nothing is judged here; see `loomproof prove`.',
  ];
  return `${lines.join('\n')}\n`;
}

function bodyOf(address: string, { before, after }: VariantTrace): readonly string[] {
  if (before === null || after === null) return [`there is no ${address}`];
  return [...momentLines('before', address, before), ...momentLines('after', address, after)];
}

function momentLines(moment: string, address: string, { places, path }: CavityNet): readonly string[] {
  if (places.length === 0) return [`${moment}: ${address} is joined to no other place`];
  return [
    `${moment}: joined to ${listText(places, 64)}, by copper and plugged connectors`,
    ...treeLines(path).map((line) => `  ${line}`),
  ];
}

function scopeText(traced: number, all: number): string {
  return all === 1 ? 'the only variant' : `${traced} of ${all} variants`;
}
