import { type Job, readKit } from '@loomproof/netlist';
import { type FaultTable, faultTable } from '../../packages/verify/src/checks/fault-table.ts';
import type { Stage } from '../../packages/verify/src/readings/stage.ts';
import { readFixture, tablesBeside } from './fixture-folder.ts';
import { kitNames, kitPath } from './kit-fixtures.ts';

/** A fault table of one variant of a fixture. */
export interface NamedTable {
  readonly name: string;
  readonly table: FaultTable;
}

/** The jobs of a fixture by the names of its variants. */
export function jobsOf(name: string): ReadonlyMap<string, Job> {
  const { value } = readKit(readFixture(kitPath(name)), tablesBeside(kitPath(name)));
  if (value === null) throw new Error(`${name} cannot be used`);
  return new Map(value.variants.map(({ variant, job }) => [variant.name, job]));
}

/** A table for at most two variants of every fixture: the first and the last. */
export function fixtureTables(stage: Stage = { is: 'unplugged' }): readonly NamedTable[] {
  return kitNames.flatMap((name) => {
    const jobs = [...jobsOf(name)];
    const chosen = jobs.length > 2 ? [jobs[0], jobs[jobs.length - 1]] : jobs;
    return chosen.flatMap((one) => {
      if (one === undefined) return [];
      const [variant, job] = one;
      const variants = new Map(jobs.filter(([other]) => other !== variant));
      return [{ name: `${name} ${variant}`, table: faultTable(job, { stage, variants }) }];
    });
  });
}
