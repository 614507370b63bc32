import { shortDigest, visibleText } from '@loomproof/netlist';
import type { KitVerdict, VariantVerdict, VerdictWord } from '@loomproof/verify';
import { countText } from '../output/count-text.ts';
import { listText } from '../output/list-text.ts';
import type { Paint } from '../output/paint.ts';
import { variantLines } from './variant-lines.ts';

/** How a verdict is shown. */
export interface VerdictTextOptions {
  readonly digest: string;
  readonly paint: Paint;
  /** Whether every proof and every long list is shown to its end. */
  readonly everything: boolean;
}

const colours = { proved: 'green', refuted: 'red', undecided: 'yellow' } as const;

/**
 * The verdict for a person at a bench: the verdict itself first, then the few lines that matter. Variants of which
 * the same is to be said stand together.
 *
 * @param verdict - with a verdict, not with diagnostics
 * @param options - how to show it
 * @returns text that ends with a line end; nothing hidden in it but colours
 */
export function verdictText(verdict: KitVerdict, options: VerdictTextOptions): string {
  const { digest, paint, everything } = options;
  const word = verdict.verdict ?? 'undecided';
  const groups = grouped(verdict.variants.map((one) => [one, variantLines(one, everything)] as const));
  const lines = [
    `${paint(word.toUpperCase(), colours[word])}  ${visibleText(headText(verdict))}`,
    `${visibleText(scopeText(verdict))}; digest ${shortDigest(digest)}`,
    ...verdict.standsOn.map((lower) => visibleText(standsOnText(lower))),
    ...groups.flatMap(({ variants, body }) => [
      '',
      `${visibleText(listText(variants.map(nameOf), 64))}: ${wordText(variants[0], paint)}`,
      ...body.map((line) => visibleText(`  ${line}`)),
    ]),
    '',
    ...(verdict.notClaimed.length === 0
      ? []
      : [`Not claimed: ${listText(verdict.notClaimed.map(claimText))}; the kit gives no electrical data.`]),
    `${word === 'proved' ? 'Proved' : 'Judged'} of the model in the kit file, not measured on the metal.`,
  ];
  return `${lines.join('\n')}\n`;
}

function standsOnText({ file, kit, revision, variants }: KitVerdict['standsOn'][number]): string {
  const which = variants.length === 1 && variants[0] === 'only' ? '' : `, ${listText(variants, 64)}`;
  return `stands on ${file}: ${kit}, revision ${revision}${which}, proved as well`;
}

function headText({ kit, revision, variants }: KitVerdict): string {
  const deviations = new Set(variants.flatMap((one) => one.deviations).map((one) => JSON.stringify(one)))
    .size;
  return `${kit}, revision ${revision}${deviations === 0 ? '' : `, with ${countText(deviations, 'deviation')}`}`;
}

function scopeText({ judged, variantCount, variants }: KitVerdict): string {
  if (variantCount === 1) return 'the only variant judged';
  const all = judged === variantCount;
  const sums = (['proved', 'refuted', 'undecided'] as const).flatMap((word) => {
    const count = variants.filter((one) => one.verdict === word).length;
    return count === 0 ? [] : [`${count} ${word}`];
  });
  const rest = all ? '' : '; nothing is said of the others';
  return `${judged} of ${variantCount} variants judged, ${listText(sums)}${rest}`;
}

function nameOf({ variant }: VariantVerdict): string {
  return variant;
}

function wordText(variant: VariantVerdict | undefined, paint: Paint): string {
  const word: VerdictWord = variant?.verdict ?? 'undecided';
  const counts = [
    ...(variant === undefined || variant.findings.length === 0
      ? []
      : [countText(variant.findings.length, 'finding')]),
    ...(variant === undefined || variant.deviations.length === 0
      ? []
      : [`with ${countText(variant.deviations.length, 'deviation')}`]),
  ];
  return [paint(word, colours[word]), ...counts].join(', ');
}

function claimText(obligation: number): string {
  return obligation === 9 ? '9 electrical' : obligation === 10 ? '10 back-feed' : String(obligation);
}

function grouped(
  variants: readonly (readonly [VariantVerdict, readonly string[]])[],
): readonly { readonly variants: readonly VariantVerdict[]; readonly body: readonly string[] }[] {
  const groups = new Map<string, { variants: VariantVerdict[]; body: readonly string[] }>();
  for (const [variant, body] of variants) {
    const key = [variant.verdict, ...body].join('\n');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { variants: [variant], body });
    else group.variants.push(variant);
  }
  return [...groups.values()];
}
