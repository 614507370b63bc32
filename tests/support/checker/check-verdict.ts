import { checkCircuits } from './check-circuits.ts';
import { checkLimit } from './check-limit.ts';
import { checkOpenNet, checkWrongJoin } from './check-nets.ts';
import { checkCopperPath } from './check-path.ts';
import { checkPower, checkTie } from './check-power.ts';
import { checkLiveWork, checkStubs } from './check-reach.ts';
import { checkRefusal } from './check-refusals.ts';
import { checkBlame, checkCount, checkWords } from './check-words.ts';
import { assembledCopper } from './copper-walk.ts';
import type { HarnessRecord } from './harness-record.ts';
import type { FindingJson, KitJson, VariantJson } from './verdict-json.ts';
import { type Moment, replayWork } from './work-replay.ts';

/** How much was walked, so that a check that looks at nothing is seen. */
export type Walked = Map<string, number>;

/**
 * Walks every proof and every witness of a verdict over the harness as it is told, without the program.
 * @param kit - the printed verdict.
 * @param records - one record for each variant, in the same order.
 * @param walked - counts by kind what was walked.
 * @returns what does not hold, in words; nothing when all of it does.
 */
export function checkVerdict(
  kit: KitJson,
  records: readonly HarnessRecord[],
  walked: Walked = new Map(),
): readonly string[] {
  const problems = [...checkWords(kit)];
  if (records.length !== kit.variants.length) problems.push(`${records.length} variants are told`);
  for (const [index, variant] of kit.variants.entries()) {
    const record = records[index];
    if (record !== undefined)
      problems.push(...checkVariant(variant, record, walked).map((one) => `${variant.variant}: ${one}`));
  }
  return problems;
}

function checkVariant(variant: VariantJson, record: HarnessRecord, walked: Walked): readonly string[] {
  const refused = new Set<number>();
  for (const finding of variant.findings)
    for (const one of [finding, ...finding.consequences])
      if (one.kind === 'step-refused' && one.step !== null) refused.add(one.step);
  const moments = replayWork(record, refused);
  const end = moments[moments.length - 1];
  if (end === undefined) return ['there is no moment'];
  const view = assembledCopper(record, end, moments.length - 1);
  count(walked, 'circuit', variant.circuits.length);
  count(walked, 'proof hop', variant.circuits.flatMap((circuit) => circuit.proof ?? []).length);
  count(walked, 'stub', variant.stubs.length);
  const problems = [...checkCircuits(variant, record, view), ...checkStubs(variant, record, moments)];
  for (const finding of variant.findings) {
    const found = [
      ...checkBlame(finding, record),
      ...checkWitness(finding, variant, record, moments, refused, walked),
    ];
    problems.push(...found.map((one) => `${finding.kind} ${finding.points.join(', ')}: ${one}`));
  }
  return problems;
}

function checkWitness(
  finding: FindingJson,
  variant: VariantJson,
  record: HarnessRecord,
  moments: readonly Moment[],
  refused: ReadonlySet<number>,
  walked: Walked,
): readonly string[] {
  const { witness } = finding;
  count(walked, `${witness.is} witness`, 1);
  switch (witness.is) {
    case 'nets':
      count(walked, 'wrong join', witness.joins.length);
      count(walked, 'open net', witness.opens.length);
      return [
        ...checkKind(finding.kind, witness.joins.length, witness.opens),
        ...witness.joins.flatMap((join) => checkWrongJoin(join, record, moments)),
        ...witness.opens.flatMap((open) =>
          checkOpenNet(open, witness.joins, variant.circuits, record, moments),
        ),
      ];
    case 'path': {
      const end = moments[moments.length - 1];
      if (end === undefined) return [];
      const path = checkCopperPath(witness.path, assembledCopper(record, end, moments.length - 1));
      const reaches = [witness.path[0]?.from ?? '', witness.path[witness.path.length - 1]?.to ?? ''];
      return reaches.every((point) => finding.points.includes(point))
        ? path
        : [...path, `the path leads from ${reaches.join(' to ')}`];
    }
    case 'touch': {
      const unknown = witness.steps.filter((step) => !record.steps.some((one) => one.number === step));
      return unknown.map((step) => `step ${step} is no step`);
    }
    case 'bare':
      return checkLiveWork(finding, record, moments);
    case 'refusal': {
      const index = record.steps.findIndex((one) => one.number === finding.step);
      const [step, before] = [record.steps[index], moments[index]];
      if (step === undefined || before === undefined) return [`step ${finding.step} is no step`];
      return checkRefusal(step, witness.reason, before, record, index + 1);
    }
    case 'count':
      return [...checkCount(witness, record, refused), ...checkCountKind(finding.kind, witness)];
    case 'limit':
    case 'power':
    case 'tie': {
      const end = moments[moments.length - 1];
      if (end === undefined) return [];
      const view = assembledCopper(record, end, moments.length - 1);
      if (witness.is === 'limit') return checkLimit(finding, witness, record, view, end);
      return witness.is === 'power'
        ? checkPower(witness, finding.kind, record, view, end)
        : checkTie(witness, record, view, end);
    }
    default:
      return [];
  }
}

function checkKind(
  kind: string,
  joins: number,
  opens: readonly { readonly circuit: string | null }[],
): readonly string[] {
  const right =
    joins > 0
      ? 'wrong-connection'
      : opens.some((open) => open.circuit !== null)
        ? 'circuit-open'
        : 'net-split';
  const shown = joins + opens.length > 0 ? [] : ['it shows nothing'];
  return kind === right ? shown : [...shown, `its witness shows ${right}`];
}

function checkCountKind(
  kind: string,
  witness: { readonly inBag: number; readonly used: number },
): readonly string[] {
  const right = witness.used > witness.inBag ? 'part-missing' : 'part-unused';
  return kind === right && witness.used !== witness.inBag
    ? []
    : [`${witness.used} of ${witness.inBag} is ${right}`];
}

function count(walked: Walked, what: string, more: number): void {
  walked.set(what, (walked.get(what) ?? 0) + more);
}
