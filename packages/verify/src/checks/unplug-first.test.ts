import { expect, it } from 'vitest';
import { circuitKit } from '../../../../tests/support/circuit-kit.ts';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import { unplugFirst } from './unplug-first.ts';

/** A wire from LAST to S0, and a load that leads the same way round by a second wire. */
function tableOf(ohm: number): FaultTable {
  const text = circuitKit(2, [{ from: 0, to: 1, is: `is: load, resistance: ${ohm} ohm` }]).replace(
    '    link:',
    '    round: { from: S1, to: LAST }\n    link:',
  );
  return faultTable(jobOf(text), { stage: { is: 'in place', pulled: new Set() }, filter: { scope: 'all' } });
}

function unplugOf(table: FaultTable): readonly string[] {
  const at = (name: string): number => table.points.findIndex((point) => point.name === name);
  return unplugFirst(table, { a: at('LAST'), b: at('S0'), expected: 'whole' });
}

it('names the load beside the wire that would read under five times the limit', () => {
  expect(unplugOf(tableOf(4))).toEqual(['D0']);
  expect(unplugOf(tableOf(5))).toEqual([]);
});

it('has nothing to unplug for a reading that is to be open, or of copper only', () => {
  const table = tableOf(4);
  expect(unplugFirst(table, { a: 0, b: 1, expected: 'open' })).toEqual([]);
  expect(unplugFirst({ ...table, stage: { is: 'unplugged' } }, { a: 0, b: 1, expected: 'whole' })).toEqual(
    [],
  );
});
