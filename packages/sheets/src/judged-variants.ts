import type { KitFile, KitVariant } from '@loomproof/netlist';
import type { KitVerdict, VariantVerdict } from '@loomproof/verify';
import { fileStems } from './file-stem.ts';
import { type SheetHead, sheetHead } from './sheet-head.ts';

/** A variant of a kit with what was proved of it and what its sheets carry. */
export interface JudgedVariant {
  readonly one: KitVariant;
  readonly verdict: VariantVerdict;
  readonly head: SheetHead;
  /** Beginning of the names of its files. */
  readonly stem: string;
}

/** The variants of a kit that were judged, in the order of the kit. */
export function judgedVariants(kit: KitFile, verdict: KitVerdict, digest: string): readonly JudgedVariant[] {
  const stems = fileStems(kit.variants.map(({ variant }) => variant.name));
  return kit.variants.flatMap((one, index) => {
    const found = verdict.variants.find(({ variant }) => variant === one.variant.name);
    const stem = stems[index];
    if (found === undefined || stem === undefined) return [];
    return [{ one, verdict: found, head: sheetHead(kit, verdict, found, digest), stem }];
  });
}
