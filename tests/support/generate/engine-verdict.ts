import { locate, type PlainKit, resolveKit } from '@loomproof/netlist';
import { type KitVerdict, proveKit, type VariantVerdict } from '@loomproof/verify';
import type { KitDocument } from '../oracle/kit-document.ts';

/** What the program says of a kit: complaints about the input, or a verdict on its one variant. */
export type EngineVerdict =
  | { readonly is: 'unreadable'; readonly complaints: readonly string[] }
  | { readonly is: 'judged'; readonly verdict: KitVerdict; readonly variant: VariantVerdict };

/** Reads and judges a kit that a generator made. */
export function engineVerdict(kit: KitDocument): EngineVerdict {
  const file = resolveKit(locate(kit as PlainKit), () => null);
  if (file.value === null)
    return { is: 'unreadable', complaints: file.diagnostics.map((one) => one.message) };
  const verdict = proveKit(file.value);
  const [variant] = verdict.variants;
  if (variant === undefined)
    return { is: 'unreadable', complaints: verdict.diagnostics.map((one) => one.message) };
  return { is: 'judged', verdict, variant };
}

/** The verdict words of obligations 1 to 7 in one line, such as `1 proved, 2 refuted`. */
export function obligationsInWords(variant: VariantVerdict): string {
  return variant.obligations
    .filter((one) => one.obligation <= 7)
    .map((one) => `${one.obligation} ${one.verdict}`)
    .join(', ');
}

/** Every step that a verdict blames: culprits, and the steps that made a hop of a path that should not be there. */
export function culpritsOf(variant: VariantVerdict): ReadonlySet<number> {
  const blamed = new Set<number>();
  for (const { culprits, step, consequences, witness } of variant.findings) {
    for (const one of [...culprits, step, ...consequences.map((each) => each.step)])
      if (one !== null) blamed.add(one);
    if (witness.is !== 'nets') continue;
    for (const { path } of witness.joins)
      for (const { made } of path) if (typeof made === 'number') blamed.add(made);
  }
  return blamed;
}
