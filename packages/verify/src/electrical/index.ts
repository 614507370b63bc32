export { ElectricalMisuseError } from './electrical-misuse-error.ts';
export { effectiveResistance, type Ohmmeter, type OhmmeterResult } from './network/effective-resistance.ts';
export type {
  CurrentSource,
  Diode,
  Joint,
  Network,
  NetworkElement,
  Resistor,
  VoltageSource,
} from './network/network.ts';
export type {
  ElementState,
  NetworkSolution,
  NoConsistentState,
  SolvedNetwork,
  SourceConflict,
} from './network/network-solution.ts';
export { type SolveOptions, solveNetwork } from './network/solve-network.ts';
export { voltsBetween } from './network/volts-between.ts';
export { ac4313Table113, type ProtectorRow } from './rules/ac4313-table-11-3.ts';
export { ampacity } from './rules/ampacity.ts';
export {
  type AmpacityPlace,
  type AmpacityRow,
  type AmpacityTable,
  ac4313Ampacity,
  cfr183Table5,
  engineSpace105,
} from './rules/ampacity-tables.ts';
export { type BladeFuse, bladeFuses } from './rules/blade-fuses.ts';
export { limitInVolt } from './rules/limit-in-volt.ts';
export { type OvercurrentRule, overcurrentRules } from './rules/overcurrent-rules.ts';
export {
  keepsProtectorLimit,
  type ProtectorLimit,
  type ProtectorQuestion,
  type ProtectorRule,
  protectorLimit,
} from './rules/protector-limit.ts';
export { type RuleSet, ruleSets } from './rules/rule-sets.ts';
export { type VoltageDropLimit, voltageDropLimits } from './rules/voltage-drop-limits.ts';
export { awgLabel, awgNumber, awgToMm2, awgWithin } from './wire/awg.ts';
export { circularMilToMm2, mm2ToCircularMil } from './wire/circular-mil.ts';
export {
  type ConductorMaterial,
  conductorMaterials,
  type MaterialConstants,
} from './wire/conductor-material.ts';
export {
  type Conductor,
  type ConductorResistance,
  conductorResistance,
  type ResistanceBasis,
} from './wire/conductor-resistance.ts';
export { type Iec60228Row, iec60228 } from './wire/iec60228.ts';
export { type Iso6722Row, iso6722 } from './wire/iso6722.ts';
export type { Published } from './wire/published.ts';
export { sizeResistance } from './wire/size-resistance.ts';
export { type SizeAnswer, type SizeQuestion, smallestSize } from './wire/smallest-size.ts';
export { type SizeFamily, type StandardSize, standardSizes } from './wire/standard-sizes.ts';
export { temperatureFactor } from './wire/temperature-factor.ts';
export { type DropSegment, type VoltDrop, voltDrop } from './wire/volt-drop.ts';
