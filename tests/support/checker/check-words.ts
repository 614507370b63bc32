import type { HarnessRecord } from './harness-record.ts';
import type { FindingJson, KitJson, VariantJson } from './verdict-json.ts';

/** Findings that say what is not known; all others say that something is wrong. */
const undecided: ReadonlySet<string> = new Set([
  'apart-unknown',
  'stub-unknown',
  'zone-unknown',
  'range-unknown',
  'electrical-unknown',
  'back-feed-unknown',
]);

/** Looks whether the words fit one another: the worst of the parts is the word for the whole, and nothing is hidden. */
export function checkWords(kit: KitJson): readonly string[] {
  const problems: string[] = [];
  if (kit.verdict === null) {
    if (kit.variants.length > 0) problems.push('a verdict of null judges variants');
    return problems;
  }
  if (kit.judged !== kit.variants.length) problems.push(`${kit.judged} variants are said to be judged`);
  if (kit.verdict !== worst(kit.variants.map((one) => one.verdict)))
    problems.push(`the kit is ${kit.verdict}, its variants are not`);
  for (const variant of kit.variants) {
    if (variant.verdict !== worst(variant.obligations.map((one) => one.verdict)))
      problems.push(`${variant.variant} is ${variant.verdict}, its obligations are not`);
    problems.push(...checkObligations(variant).map((one) => `${variant.variant}: ${one}`));
  }
  return problems;
}

function checkObligations(variant: VariantJson): readonly string[] {
  const problems: string[] = [];
  const claimed = variant.obligations.map((one) => one.obligation).join();
  // The electrical ones are claimed only where the kit gives electrical data.
  if (!['1,2,3,4,5,6,7,8', '1,2,3,4,5,6,7,8,9,10'].includes(claimed))
    problems.push(`obligations ${claimed} are claimed`);
  for (const { obligation, verdict } of variant.obligations) {
    const kinds = variant.findings.flatMap((finding) => [
      ...(broken(finding).has(obligation) ? [finding.kind] : []),
      ...finding.consequences.flatMap((one) => (one.obligation === obligation ? [one.kind] : [])),
    ]);
    const word = kinds.some((kind) => !undecided.has(kind))
      ? 'refuted'
      : kinds.length > 0
        ? 'undecided'
        : 'proved';
    // What a consequence shows is not told in full, so it may break more than its kind says.
    const hidden = variant.findings.some((finding) =>
      finding.consequences.some((one) =>
        ['wrong-connection', 'circuit-open', 'net-split'].includes(one.kind),
      ),
    );
    if (word !== verdict && !(hidden && obligation <= 3))
      problems.push(`obligation ${obligation} is ${verdict}, and its findings say ${word}`);
  }
  return problems;
}

function broken(finding: FindingJson): ReadonlySet<number> {
  const numbers = new Set([finding.obligation]);
  if (finding.witness.is === 'nets') {
    if (finding.witness.joins.length > 0) numbers.add(2);
    for (const open of finding.witness.opens) numbers.add(open.circuit === null ? 3 : 1);
  }
  return numbers;
}

function worst(words: readonly string[]): string {
  for (const word of ['refuted', 'undecided']) if (words.includes(word)) return word;
  return 'proved';
}

/** Looks whether every step that is blamed is a step, named once and in order. */
export function checkBlame(finding: FindingJson, record: HarnessRecord): readonly string[] {
  const numbers = new Set(record.steps.map((step) => step.number));
  const problems: string[] = [];
  const { culprits, step, consequences } = finding;
  const blamed = [step, ...culprits, ...consequences.map((one) => one.step)];
  for (const one of blamed)
    if (one !== null && !numbers.has(one)) problems.push(`step ${one} is no step of this variant`);
  if (culprits.some((one, index) => index > 0 && one <= (culprits[index - 1] ?? 0)))
    problems.push(`the steps to blame are out of order: ${culprits.join(', ')}`);
  if (finding.points.some((one, index) => index > 0 && one < (finding.points[index - 1] ?? '')))
    problems.push(`the points are out of order: ${finding.points.join(', ')}`);
  return problems;
}

/** Counts the parts anew that the steps took which were done. */
export function checkCount(
  witness: { readonly part: string; readonly inBag: number; readonly used: number },
  record: HarnessRecord,
  refused: ReadonlySet<number>,
): readonly string[] {
  // A wire or a device counts as one piece, and is spoken of only when it was not used.
  const isPiece =
    record.ends.some((end) => end.wire === witness.part) ||
    record.connectors.some((one) => one.name === witness.part);
  const inBag = record.bag.get(witness.part) ?? (isPiece ? 1 : 0);
  const used = record.steps
    .filter((step) => !refused.has(step.number))
    .flatMap((step) => step.takes)
    .filter((part) => part === witness.part).length;
  if (inBag === witness.inBag && used === witness.used) return [];
  return [`${witness.part}: ${inBag} in the bag and ${used} used, not ${witness.inBag} and ${witness.used}`];
}
