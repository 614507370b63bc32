import type { SizeFamily } from '../wire/standard-sizes.ts';
import { type AmpacityTable, ac4313Ampacity, cfr183Table5, engineSpace105 } from './ampacity-tables.ts';
import { type OvercurrentRule, overcurrentRules } from './overcurrent-rules.ts';
import { type VoltageDropLimit, voltageDropLimits } from './voltage-drop-limits.ts';

/** The texts that one trade judges by. A kit chooses one; none is applied unasked. */
export interface RuleSet {
  readonly id: 'small-craft' | 'aircraft';
  readonly title: string;
  readonly dropLimits: readonly VoltageDropLimit[];
  readonly overcurrentRules: readonly OvercurrentRule[];
  readonly ampacityTables: readonly AmpacityTable[];
  readonly sizeFamilies: readonly SizeFamily[];
}

const dropLimits = (...ids: readonly string[]): readonly VoltageDropLimit[] =>
  voltageDropLimits.filter(({ id }) => ids.includes(id));

const rules = (...ids: readonly string[]): readonly OvercurrentRule[] =>
  overcurrentRules.filter(({ id }) => ids.includes(id));

/** The rule sets known to this program. */
export const ruleSets: readonly RuleSet[] = [
  {
    id: 'small-craft',
    title: 'small craft (33 CFR 183 / ISO 10133 / ABYC E-11)',
    dropLimits: dropLimits('V1', 'V2', 'V3', 'V4'),
    overcurrentRules: rules('O1', 'O2', 'O3', 'O4', 'O5', 'O9', 'O10'),
    ampacityTables: [cfr183Table5, engineSpace105],
    sizeFamilies: ['awg', 'iec60228-class5', 'abyc-e11'],
  },
  {
    id: 'aircraft',
    title: 'aircraft (FAA AC 43.13-1B)',
    dropLimits: dropLimits('V5', 'V6', 'V7', 'V8', 'V9', 'V10', 'V11', 'V12', 'V13', 'V14'),
    overcurrentRules: rules('O7'),
    ampacityTables: [ac4313Ampacity],
    sizeFamilies: ['ac4313-table-11-9'],
  },
];
