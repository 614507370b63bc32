import type { KitFile } from '@loomproof/netlist';
import type { KitVerdict, VariantVerdict } from '@loomproof/verify';

/** What every sheet carries, so that it can be tied to what was proved. */
export interface SheetHead {
  readonly kit: string;
  readonly revision: string;
  readonly variant: string;
  /** Digest of the inputs in full; sheets show its beginning. */
  readonly digest: string;
  /** Whether the kit is proved: this variant in all that is claimed, and every other one with it. */
  readonly proved: boolean;
  /** What was found of this variant. */
  readonly verdict: string;
  /** What was found of the kit where another variant keeps it from being proved, else null. */
  readonly elsewhere: string | null;
}

/** The head of the sheets of one variant. A kit goes out whole or not at all, so one variant speaks for all. */
export function sheetHead(
  kit: KitFile,
  { verdict: whole }: KitVerdict,
  verdict: VariantVerdict,
  digest: string,
): SheetHead {
  const isProved = verdict.verdict === 'proved';
  return {
    kit: kit.kit,
    revision: kit.revision,
    variant: verdict.variant,
    digest,
    proved: isProved && whole === 'proved',
    verdict: verdict.verdict,
    elsewhere: isProved && whole !== 'proved' ? (whole ?? 'undecided') : null,
  };
}
