import type { KitFile } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';

/** What every sheet carries, so that it can be tied to what was proved. */
export interface SheetHead {
  readonly kit: string;
  readonly revision: string;
  readonly variant: string;
  /** Digest of the inputs in full; sheets show its beginning. */
  readonly digest: string;
  /** Whether this variant is proved in all that is claimed. */
  readonly proved: boolean;
  readonly verdict: string;
}

/** The head of the sheets of one variant. */
export function sheetHead(kit: KitFile, verdict: VariantVerdict, digest: string): SheetHead {
  return {
    kit: kit.kit,
    revision: kit.revision,
    variant: verdict.variant,
    digest,
    proved: verdict.verdict === 'proved',
    verdict: verdict.verdict,
  };
}
