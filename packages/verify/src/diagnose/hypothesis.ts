import { type FaultTable, faultyState } from '../checks/fault-table.ts';
import type { ListedFault } from '../faults/fault.ts';
import { fitsExpected, isOhmRange, type Prediction } from '../readings/expected.ts';
import type { HarnessState } from '../readings/harness-state.ts';
import { StateInPart } from '../readings/state-in-part.ts';
import type { Reading } from './reading.ts';

/** One way to explain readings: no fault (as designed), one, or two. */
export interface Explanation {
  readonly faults: readonly ListedFault[];
}

/** An explanation with what it predicts in each stage that was read in. */
export interface Hypothesis extends Explanation {
  readonly stateIn: (table: FaultTable) => Prediction;
}

/** Whether a reading may come from a state. */
export function agrees(state: Prediction, reading: Omit<Reading, 'line' | 'table'>): boolean {
  return fitsExpected(state.expected(reading.a, reading.b), reading);
}

/** Whether a reading decides something: one between the limits does only where the design says how many ohms it is. */
export function decides(main: FaultTable, { a, b, outcome, table = main }: Reading): boolean {
  return outcome !== 'between' || isOhmRange(table.designed.expected(a, b));
}

/** As designed, then every single fault of a table, in its order. */
export function singleHypotheses(table: FaultTable): readonly Hypothesis[] {
  return [
    { faults: [], stateIn: (where) => where.designed },
    ...table.list.faults.map((one, index): Hypothesis => {
      return { faults: [one], stateIn: (where) => where.states[index] ?? where.designed };
    }),
  ];
}

/** Every fault of a table that may be there only in part, in its order. */
export function hypothesesInPart(table: FaultTable): readonly Hypothesis[] {
  return table.list.faults.flatMap(({ inPart, ...one }, index): readonly Hypothesis[] => {
    if (inPart === undefined) return [];
    const stateIn = ({ designed, states, bands }: FaultTable): Prediction =>
      new StateInPart(designed, states[index] ?? designed, bands);
    return [{ faults: [{ ...one, ...inPart, id: `${one.id}, in part` }], stateIn }];
  });
}

/** States of pairs that were simulated already, by the state as designed of their table; each is asked for every reading. */
const known = new WeakMap<HarnessState, Map<string, HarnessState>>();

/**
 * Every pair of faults of a table; one is simulated only when it is asked what it predicts. The other variant's
 * work is a harness of its own and is not paired.
 */
export function* pairHypotheses({ list }: FaultTable): Generator<Hypothesis, void, void> {
  const faults = list.faults.filter((one) => one.fault.is !== 'other variant');
  for (const [later, second] of faults.entries())
    for (const first of faults.slice(0, later)) {
      const both = [first, second];
      const name = `${first.id} + ${second.id}`;
      yield { faults: both, stateIn: (where) => stateOfPair(where, name, both) };
    }
}

function stateOfPair(table: FaultTable, name: string, both: readonly ListedFault[]): HarnessState {
  let states = known.get(table.designed);
  if (states === undefined) {
    states = new Map();
    known.set(table.designed, states);
  }
  let state = states.get(name);
  if (state === undefined) {
    state = faultyState(table, both);
    states.set(name, state);
  }
  return state;
}
