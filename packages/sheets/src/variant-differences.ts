import { appendTo } from '@loomproof/netlist';

/** Something in which the variants of a kit are not alike: one text a variant, in their order. */
export interface VariantDifference {
  readonly about: string;
  readonly texts: readonly string[];
}

/** What is said of each variant about each subject, by subject. */
export type VariantFacts = readonly ReadonlyMap<string, string>[];

/**
 * Only what differs; what a variant does not have is said so. A subject that the first variants lack stands after the one
 * that it follows in its own variant, so that steps keep their order.
 */
export function variantDifferences(facts: VariantFacts): readonly VariantDifference[] {
  return inOrder(facts).flatMap((about) => {
    const texts = facts.map((one) => one.get(about) ?? 'not in this variant');
    return new Set(texts).size < 2 ? [] : [{ about, texts }];
  });
}

function inOrder(facts: VariantFacts): readonly string[] {
  const [first, ...others] = facts;
  let subjects = [...(first?.keys() ?? [])];
  for (const other of others) {
    const known = new Set(subjects);
    // What a variant adds, by the known subject that it follows; null for what comes first of all.
    const added = new Map<string | null, string[]>();
    let last: string | null = null;
    for (const subject of other.keys()) {
      if (known.has(subject)) last = subject;
      else appendTo(added, last, subject);
    }
    subjects = [null, ...subjects].flatMap((one) => [
      ...(one === null ? [] : [one]),
      ...(added.get(one) ?? []),
    ]);
  }
  return subjects;
}
