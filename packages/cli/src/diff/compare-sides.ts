import { diffHarness, type HarnessDifference } from '@loomproof/verify';
import type { HarnessSide, NamedHarness } from './harness-side.ts';

/** The comparison of one harness with its namesake. */
export interface Comparison {
  readonly variant: string | null;
  readonly state: NamedHarness['state'];
  readonly difference: HarnessDifference;
}

/** The comparison of two files. */
export interface SideDifference {
  readonly equal: boolean;
  readonly comparisons: readonly Comparison[];
  /** Variants that only the first, or only the second, has. */
  readonly onlyBefore: readonly string[];
  readonly onlyAfter: readonly string[];
}

/**
 * Compares each harness of one file with the harness of the same variant and state in the other.
 *
 * @param before - the first file
 * @param after - the second file
 */
export function compareSides(before: HarnessSide, after: HarnessSide): SideDifference {
  const second = new Map(after.harnesses.map((one) => [keyOf(one), one]));
  const comparisons = before.harnesses.flatMap((one): Comparison[] => {
    const other = second.get(keyOf(one));
    if (other === undefined) return [];
    return [{ variant: one.variant, state: one.state, difference: diffHarness(one.harness, other.harness) }];
  });
  const [onlyBefore, onlyAfter] = [variantsMissing(before, after), variantsMissing(after, before)];
  const equal =
    onlyBefore.length + onlyAfter.length === 0 && comparisons.every((one) => one.difference.equal);
  return { equal, comparisons, onlyBefore, onlyAfter };
}

function keyOf({ variant, state }: NamedHarness): string {
  return `${state}\n${variant ?? ''}`;
}

function variantsMissing(here: HarnessSide, there: HarnessSide): readonly string[] {
  const known = new Set(there.harnesses.map((one) => one.variant));
  const names = new Set(here.harnesses.map((one) => one.variant).filter((one) => !known.has(one)));
  return [...names].filter((one) => one !== null);
}
