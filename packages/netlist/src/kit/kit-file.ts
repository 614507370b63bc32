import type { Job } from '../harness/job.ts';
import type { Span } from '../text/index.ts';
import type { Variant, VariantAxis } from './choose-variant.ts';
import type { Located } from './located.ts';

/** One variant with its resolved job. */
export interface KitVariant {
  readonly variant: Variant;
  readonly job: Job;
  /** The kit whose finished harness is this one's stock; null or not there where the stock is written out. */
  readonly below?: KitBelow | null;
  /** What the kit file says of this variant; not there where a program made the job. */
  readonly document?: Located;
  /**
   * The work of the other variants done on this one's machine, by their names, resolved when it is asked for; not there
   * where a program made the job.
   */
  readonly otherWork?: () => ReadonlyMap<string, Job>;
}

/** A kit file that can be judged: every variant that was asked for is resolved. */
export interface KitFile {
  readonly kit: string;
  readonly revision: string;
  readonly axes: readonly VariantAxis[];
  /** The kit's own cautions, of every variant that was asked for. */
  readonly cautions: readonly string[];
  /** How many variants the kit has, asked for or not. */
  readonly variantCount: number;
  readonly variants: readonly KitVariant[];
  /** Variants that were not asked for, but that an asked one is declared to agree with. */
  readonly companions: readonly KitVariant[];
}

/** The kit that another one stands on: the variant whose finished harness is the stock of the other. */
export interface KitBelow {
  /** The name under which the upper kit names it. */
  readonly file: string;
  readonly kit: KitFile;
  readonly variant: KitVariant;
  /** Where it is named. */
  readonly span: Span | null;
}
