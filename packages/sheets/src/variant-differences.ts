/** Something in which the variants of a kit are not alike: one text a variant, in their order. */
export interface VariantDifference {
  readonly about: string;
  readonly texts: readonly string[];
}

/** What is said of each variant about each subject, by subject. */
export type VariantFacts = readonly ReadonlyMap<string, string>[];

/** Only what differs, in the order in which subjects are first met; what a variant does not have is said so. */
export function variantDifferences(facts: VariantFacts): readonly VariantDifference[] {
  const subjects = new Set(facts.flatMap((one) => [...one.keys()]));
  return [...subjects].flatMap((about) => {
    const texts = facts.map((one) => one.get(about) ?? 'not in this variant');
    return new Set(texts).size < 2 ? [] : [{ about, texts }];
  });
}
