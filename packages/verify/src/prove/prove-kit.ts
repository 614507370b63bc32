import {
  compareText,
  type Deviation,
  type Diagnostic,
  type Job,
  type KitBelow,
  type KitFile,
  type KitVariant,
  makeDiagnostic,
} from '@loomproof/netlist';
import { describeFinding } from './describe-finding.ts';
import {
  type Finding,
  findingKinds,
  type Obligation,
  obligationOf,
  type RawFinding,
  undecidedKinds,
  type VerdictWord,
} from './finding.ts';
import { judgeAgreement } from './judge-agreement.ts';
import type { StubReport } from './judge-stubs.ts';
import { type CircuitReport, type JobJudgement, proveJob } from './prove-job.ts';
import { sortCauses } from './sort-causes.ts';

/** An obligation with its verdict; `note` says why there was nothing to judge. */
export interface ObligationVerdict {
  readonly obligation: Obligation;
  readonly verdict: VerdictWord;
  readonly note: string | null;
}

/** A deviation and the finding that it excuses. */
export interface UsedDeviation {
  readonly allows: string;
  readonly at: string | null;
  readonly by: string;
  readonly why: string;
  readonly excuses: readonly string[];
}

/** Everything that is said of one variant. */
export interface VariantVerdict {
  readonly variant: string;
  readonly verdict: VerdictWord;
  readonly obligations: readonly ObligationVerdict[];
  readonly circuits: readonly CircuitReport[];
  readonly findings: readonly Finding[];
  readonly stubs: readonly StubReport[];
  readonly disturbed: readonly string[];
  readonly deviations: readonly UsedDeviation[];
  readonly advice: readonly string[];
  /** The judged model, for those who draw or walk it; it is not part of any printed result. */
  readonly judgement: JobJudgement;
}

/** A kit that another one stands on, with those of its variants that matter. */
export interface LowerKit {
  readonly file: string;
  readonly kit: string;
  readonly revision: string;
  readonly variants: readonly string[];
}

/** The verdict on a kit; null, with diagnostics, when the input could not be used. */
export interface KitVerdict {
  readonly kit: string;
  readonly revision: string;
  readonly verdict: VerdictWord | null;
  /** How many variants were judged, of how many there are. */
  readonly judged: number;
  readonly variantCount: number;
  /** Obligations of which nothing is said: 9 and 10 while the kit gives no electrical data. */
  readonly notClaimed: readonly Obligation[];
  /** The kits whose finished harness is the stock of this one; none where the stock is written out. */
  readonly standsOn: readonly LowerKit[];
  readonly variants: readonly VariantVerdict[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Proves or refutes every variant of a kit: obligations 1 to 8, and 9 and 10 once the kit
 * gives any electrical data; worst verdict wins. Pure: the same kit gives the same
 * verdict, down to the bytes of its JSON.
 */
export function proveKit(kit: KitFile): KitVerdict {
  const diagnostics: Diagnostic[] = [];
  const claimed = [...kit.variants, ...kit.companions].some(({ job }) => job.electrical.claimed);
  const judged: { readonly variant: KitVariant; readonly judgement: JobJudgement }[] = [];
  const prove = oncePerJob((job) => proveJob(job, claimed));
  for (const variant of kit.variants) {
    const one = prove(variant.job);
    diagnostics.push(
      ...one.diagnostics.map((each) =>
        kit.variants.length === 1 ? each : inVariant(each, variant.variant.name),
      ),
    );
    if (one.value !== null) judged.push({ variant, judgement: one.value });
  }
  diagnostics.push(...unprovedBelow(kit));
  const head = {
    kit: kit.kit,
    revision: kit.revision,
    judged: kit.variants.length,
    variantCount: kit.variantCount,
    standsOn: lowerKits(kit),
    notClaimed: claimed ? [] : ([9, 10] as const),
  };
  if (diagnostics.length > 0)
    return { ...head, verdict: null, variants: [], diagnostics: distinct(diagnostics) };
  const proveBeside = oncePerJob((job) => proveJob(job, false));
  const beside = kit.companions.flatMap((variant) => {
    const one = proveBeside(variant.job).value;
    return one === null ? [] : [{ variant, judgement: one }];
  });
  const agreement = judgeAgreement(
    [...judged, ...beside].map(({ variant, judgement }) => ({
      variant: variant.variant,
      job: variant.job,
      netsBefore: judgement.netsBefore,
      after: judgement.after,
    })),
  );
  const variants = judged.map(({ variant, judgement }) =>
    verdictOf(variant, judgement, agreement.get(variant.variant.name) ?? []),
  );
  return { ...head, verdict: worst(variants.map((one) => one.verdict)), variants, diagnostics: [] };
}

function lowerKits(kit: KitFile): readonly LowerKit[] {
  const found = new Map<KitFile, { readonly file: string; readonly variants: Set<string> }>();
  for (const { below } of kit.variants) {
    if (below == null) continue;
    const known = found.get(below.kit) ?? { file: below.file, variants: new Set<string>() };
    known.variants.add(below.variant.variant.name);
    found.set(below.kit, known);
  }
  return [...found].map(([lower, { file, variants }]) => ({
    file,
    kit: lower.kit,
    revision: lower.revision,
    variants: [...variants],
  }));
}

/** Nothing stands on a kit that is not proved: what it leaves would not be what its steps are meant to leave. */
function unprovedBelow(kit: KitFile): readonly Diagnostic[] {
  const below = new Map<KitVariant, KitBelow>();
  for (const one of [...kit.variants, ...kit.companions])
    if (one.below != null) below.set(one.below.variant, one.below);
  return [...below.values()].flatMap(({ file, kit: under, variant, span }) => {
    const { verdict, diagnostics } = proveKit({ ...under, variants: [variant] });
    if (verdict === 'proved') return [];
    const name = variant.variant.name === 'only' ? '' : `, ${variant.variant.name},`;
    return [
      ...diagnostics,
      makeDiagnostic({
        code: 'before-unproved',
        message:
          verdict === null
            ? `\`${file}\`${name} cannot be judged, so nothing stands on it`
            : `\`${file}\`${name} is ${verdict}, so nothing stands on it`,
        span,
        help: `see \`loomproof prove ${file}\``,
      }),
    ];
  });
}

/** Reading gives variants that are the same job under two names the same lists, and such a job is judged once. */
function oncePerJob<T>(judge: (job: Job) => T): (job: Job) => T {
  const known = new Map<Job['steps'], { readonly job: Job; readonly made: T }>();
  return (job) => {
    const found = known.get(job.steps);
    if (found !== undefined && isSameButForName(found.job, job)) return found.made;
    const made = judge(job);
    known.set(job.steps, { job, made });
    return made;
  };
}

function isSameButForName(a: Job, b: Job): boolean {
  const keys = Object.keys(a) as (keyof Job)[];
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => key === 'variant' || Object.is(a[key], b[key]))
  );
}

function inVariant(diagnostic: Diagnostic, variant: string): Diagnostic {
  return diagnostic.span === null
    ? { ...diagnostic, message: `${variant}: ${diagnostic.message}` }
    : diagnostic;
}

function distinct(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const seen = new Map(
    diagnostics.map((one) => [`${one.span?.source.name ?? ''} ${one.span?.start ?? ''} ${one.message}`, one]),
  );
  return [...seen.values()];
}

function worst(verdicts: readonly VerdictWord[]): VerdictWord {
  if (verdicts.includes('refuted')) return 'refuted';
  return verdicts.includes('undecided') ? 'undecided' : 'proved';
}

function verdictOf(
  variant: KitVariant,
  judgement: JobJudgement,
  agreement: readonly RawFinding[],
): VariantVerdict {
  const { job } = variant;
  const excused = applyDeviations(job.wanted.deviations, [...judgement.findings, ...agreement]);
  const claims = judgement.electrical === null ? firstEight : allTen;
  const obligations = claims.map((obligation): ObligationVerdict => {
    const against = excused.findings.filter((one) => obligationsOf(one).has(obligation));
    const refuted = against.some((one) => !undecidedKinds.has(one.kind));
    return {
      obligation,
      verdict: refuted ? 'refuted' : against.length > 0 ? 'undecided' : 'proved',
      note: noteOf(obligation, judgement, job),
    };
  });
  const findings = sortCauses(excused.findings, job).map(
    ({ cause, consequences, culprits }): Finding => ({
      kind: cause.kind,
      obligation: obligationOf(cause.kind),
      message: describeFinding(cause),
      step: cause.step,
      points: [...cause.points].sort(compareText),
      witness: cause.witness,
      culprits,
      consequences,
    }),
  );
  return {
    variant: variant.variant.name,
    verdict: worst(obligations.map((one) => one.verdict)),
    obligations,
    circuits: judgement.circuits,
    findings: findings.sort(compareFindings),
    stubs: judgement.stubs,
    disturbed: judgement.disturbed,
    deviations: excused.used,
    advice: judgement.advice,
    judgement,
  };
}

const firstEight: readonly Obligation[] = [1, 2, 3, 4, 5, 6, 7, 8];
const allTen: readonly Obligation[] = [...firstEight, 9, 10];

function noteOf(obligation: Obligation, judgement: JobJudgement, job: Job): string | null {
  if (obligation === 8 && job.wanted.agree === null) return 'no pairing of variants is declared';
  if (obligation === 9) return judgement.electrical?.limitCoverage ?? null;
  return obligation === 10 ? (judgement.electrical?.coverage ?? null) : null;
}

/** A disturbed net may break several obligations at once; each of them is refuted. */
function obligationsOf(finding: RawFinding): ReadonlySet<Obligation> {
  const broken = new Set<Obligation>([obligationOf(finding.kind)]);
  if (finding.witness.is === 'nets') {
    if (finding.witness.joins.length > 0) broken.add(2);
    for (const open of finding.witness.opens) broken.add(open.circuit === null ? 3 : 1);
  }
  return broken;
}

function compareFindings(a: Finding, b: Finding): number {
  return (
    a.obligation - b.obligation ||
    (a.step ?? 0) - (b.step ?? 0) ||
    compareText(a.kind, b.kind) ||
    compareText(a.points.join('\n'), b.points.join('\n'))
  );
}

/** A deviation may excuse a named finding of obligations 6, 7 and 9, never of 1 to 5 or 10; one that matches nothing is a finding. */
function applyDeviations(
  deviations: readonly Deviation[],
  findings: readonly RawFinding[],
): { findings: readonly RawFinding[]; used: readonly UsedDeviation[] } {
  let left = [...findings];
  const used: UsedDeviation[] = [];
  for (const deviation of deviations) {
    const possible = left.filter(
      (one) =>
        one.kind === deviation.allows &&
        isExcusable(one.kind) &&
        (deviation.at === null || one.points.includes(deviation.at)),
    );
    // It excuses one finding: where several are of that kind, it must say at which place.
    const matching = deviation.at === null && possible.length > 1 ? [] : possible;
    left = left.filter((one) => !matching.includes(one));
    if (matching.length === 0) {
      left.push({
        kind: 'deviation-unmatched',
        step: null,
        points: deviation.at === null ? [deviation.allows] : [deviation.allows, deviation.at],
        witness: {
          is: 'state',
          what: deviation.allows,
          expected: 'one finding to excuse',
          found: possible.length > 1 ? `${possible.length}, and no place is said` : 'none',
        },
        culprits: [],
        keys: [],
      });
    }
    used.push({
      allows: deviation.allows,
      at: deviation.at,
      by: deviation.by,
      why: deviation.why,
      excuses: matching.map((one) => describeFinding(one)),
    });
  }
  return { findings: left, used };
}

function isExcusable(kind: string): boolean {
  const obligation = new Map<string, Obligation>(Object.entries(findingKinds)).get(kind);
  // A deviation that excuses nothing is never excused by another.
  return kind !== 'deviation-unmatched' && (obligation === 6 || obligation === 7 || obligation === 9);
}
