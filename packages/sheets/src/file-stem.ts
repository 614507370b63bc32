/**
 * Names of files for variants: letters, digits, dots and hyphens only, so that no name leads out of the folder, and no two
 * alike.
 */
export function fileStems(variants: readonly string[]): readonly string[] {
  const used = new Set<string>();
  return variants.map((variant) => {
    const plain =
      variant
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 80) || 'variant';
    let stem = plain;
    for (let count = 2; used.has(stem); count += 1) stem = `${plain}-${count}`;
    used.add(stem);
    return stem;
  });
}
