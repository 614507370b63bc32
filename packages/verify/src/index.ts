export type { BackFeedBudget, BackFeedJudgement } from './backfeed/judge-back-feed.ts';
export type { Check, ProbeProof } from './checks/check.ts';
export { type Checklist, checklistWork, makeChecklist } from './checks/checklist.ts';
export { type FaultTable, faultTable, isOfPart } from './checks/fault-table.ts';
export { finishNow, type LongWork, type Progress } from './checks/long-work.ts';
export type { Separation } from './checks/separating-check.ts';
export {
  type ConductorChange,
  diffHarness,
  type HarnessDifference,
  type NetChange,
} from './compare/diff-harness.ts';
export { type CavityNet, type CavityTrace, traceCavity } from './compare/trace-cavity.ts';
export type { ResultClass } from './diagnose/classify.ts';
export { type Diagnosis, diagnose, diagnosisWork } from './diagnose/diagnose.ts';
export {
  type DiagnosisReport,
  diagnosisReport,
  type ExplanationWords,
  everyReadingDecides,
} from './diagnose/diagnosis-report.ts';
export type { Explanation } from './diagnose/hypothesis.ts';
export { otherLimits } from './diagnose/other-limits.ts';
export {
  type HarnessCandidate,
  isMislabelled,
  type RankedCandidate,
  rankCandidates,
  rankCandidatesWork,
} from './diagnose/rank-candidates.ts';
export { readReadings, type WrittenReading } from './diagnose/read-readings.ts';
export type { Reading } from './diagnose/reading.ts';
export type { ListedFault, UnreadableFault } from './faults/fault.ts';
export { partsAlike } from './faults/parts-alike.ts';
export { untouchedLosses } from './limits/judge-limits.ts';
export type { DropRow, LimitTable, LoadingRow, ProtectionRow } from './limits/limit-table.ts';
export { shortestPieceMm } from './limits/shortest-piece.ts';
export {
  type Consequence,
  type DriveState,
  type Finding,
  type FindingKind,
  type Fragment,
  findingKinds,
  type LossPart,
  type Made,
  type Obligation,
  type OpenNet,
  obligationOf,
  type PathHop,
  type SourceReach,
  type Stop,
  undecidedKinds,
  type VerdictWord,
  type Witness,
  type WrongJoin,
} from './prove/finding.ts';
export type { StubReport } from './prove/judge-stubs.ts';
export type { CircuitReport, JobJudgement } from './prove/prove-job.ts';
export {
  type KitVerdict,
  type ObligationVerdict,
  proveKit,
  type UsedDeviation,
  type VariantVerdict,
} from './prove/prove-kit.ts';
export { type Bands, defaultBands, type Outcome, outcomeOf } from './readings/bands.ts';
export { type Asked, expectedText, fitsExpected, isOhmRange } from './readings/expected.ts';
export { parseOhms } from './readings/parse-ohms.ts';
export { neverProbed, type Stage, stageNames } from './readings/stage.ts';
export { type WrittenLimits, writtenLimits } from './readings/written-limits.ts';
