export {
  type ConductorChange,
  diffHarness,
  type HarnessDifference,
  type NetChange,
} from './compare/diff-harness.ts';
export { type CavityNet, type CavityTrace, traceCavity } from './compare/trace-cavity.ts';
export {
  type Consequence,
  type Finding,
  type FindingKind,
  type Fragment,
  findingKinds,
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
  notClaimed,
  type ObligationVerdict,
  proveKit,
  type UsedDeviation,
  type VariantVerdict,
} from './prove/prove-kit.ts';
