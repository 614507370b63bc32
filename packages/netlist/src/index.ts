export { appendTo } from './append-to.ts';
export {
  type CavitySight,
  type Face,
  hitsUnderMisreading,
  type Misreading,
  type MisreadingHit,
  misreadings,
  neighbours,
  type Occupancy,
  parsePlace,
  placeInWords,
  type Side,
  viewFrom,
} from './face/index.ts';
export { grouped } from './grouped.ts';
export { type ConductorRecord, type ExtractedNets, extractNets } from './harness/extract-nets.ts';
export { type FlatHarness, flatHarness, homeKinds } from './harness/flat-harness.ts';
export { type HarnessNames, harnessNames } from './harness/harness-names.ts';
export { type ConductorRow, type HarnessTable, tableOfPins, tableOfRework } from './harness/harness-table.ts';
export type * from './harness/job.ts';
export { type Conducts, type Hop, netLabels, reachedFrom, shortestPath } from './harness/nets.ts';
export type { NodeMarks } from './harness/node-marks.ts';
export { oppositeCavities } from './harness/opposite-cavities.ts';
export { rootIn, UnionFind, uniteIn } from './harness/union-find.ts';
export { beforeWork, type EdgeKind, never, WiringGraph } from './harness/wiring-graph.ts';
export { InvariantError } from './invariant-error.ts';
export { meetsCondition, type Variant, type VariantAxis } from './kit/choose-variant.ts';
export type { TableLoader } from './kit/embed-tables.ts';
export { inputDigest, shortDigest } from './kit/input-digest.ts';
export type { KitBelow, KitFile, KitVariant } from './kit/kit-file.ts';
export { kitJsonSchema } from './kit/kit-json-schema.ts';
export { kitSchema } from './kit/kit-schema.ts';
export { type Located, locate, type PlainKit } from './kit/located.ts';
export type { Reading } from './kit/read-document.ts';
export { readKit, resolveKit } from './kit/read-kit.ts';
export { type EndPreparation, type JointState, Rework } from './rework/rework.ts';
export type { BreachReason, RefusalReason, StepOutcome, Touch } from './rework/step-outcome.ts';
export {
  detectDelimiter,
  formatPinTable,
  isBlankRow,
  type PinTable,
  type PinTableRow,
  protectCell,
  readPinTable,
  splitRows,
  unprotectCell,
} from './table/index.ts';
export {
  compareText,
  type Diagnostic,
  makeDiagnostic,
  nearestName,
  positionAt,
  renderDiagnostic,
  type Source,
  type Span,
  visibleText,
} from './text/index.ts';
export {
  type Colour,
  formatColour,
  formatSize,
  parseLength,
  parseNumber,
  parseQuantity,
  parseSize,
  type Size,
  sameColour,
} from './value/index.ts';
