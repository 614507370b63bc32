import type { Job } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { fixtureJobs } from '../../../../tests/support/fault-tables.ts';
import { slowInPlace } from '../../../../tests/support/slow-in-place.ts';
import { type Expected, isOhmRange, tellsApart } from '../readings/expected.ts';
import type { Stage } from '../readings/stage.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import { shortList } from './short-list.ts';

/** Every fixture with the harness connectors pulled that the work touches, so that probes reach something. */
function tables(): readonly { readonly name: string; readonly table: FaultTable }[] {
  return fixtureJobs().map(({ name, job, otherWork }) => {
    const pulled = new Set(
      job.connectors.flatMap(({ device }, index) => (!device && index % 2 === 0 ? [index] : [])),
    );
    const stage: Stage = { is: 'in place', pulled };
    return { name, table: faultTable(job, { stage, otherWork: otherWork?.() ?? new Map<string, Job>() }) };
  });
}

/** Flooding tells no ohms. */
function plain(expected: Expected): string {
  return isOhmRange(expected) ? 'through' : expected;
}

describe('coverage in place recounted by flooding through metal and devices', { timeout: 30_000 }, () => {
  it('has faults that reach through devices to be recounted', () => {
    const shown = tables().map(({ table }) => shortList(table).detected.length);
    expect(shown.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(100);
  });

  it.each(tables())('$name: what the short list claims is so', ({ table }) => {
    const { checks, detected } = shortList(table);
    const right = slowInPlace(table, []);
    for (const { a, b, expected } of checks) expect(right(a, b)).toBe(plain(expected));
    const claimed = new Set(detected);
    for (const [index, fault] of table.list.faults.entries()) {
      const wrong = slowInPlace(table, [fault]);
      const state = table.states[index];
      if (state === undefined) throw new Error('no state');
      let byList = false;
      for (const { a, b, expected } of checks) {
        const claims = tellsApart(expected, state.expected(a, b));
        byList ||= claims;
        const found = wrong(a, b);
        // What leads through devices only may read anything; all else is as flooding finds it.
        if (claims && found !== 'through') expect(found, fault.words).not.toBe(plain(expected));
        else if (claims) expect(state.expected(a, b), fault.words).not.toEqual(expected);
        else if (found !== 'through') expect(found, fault.words).toBe(plain(expected));
      }
      expect(byList, fault.words).toBe(claimed.has(index));
    }
  });
});
