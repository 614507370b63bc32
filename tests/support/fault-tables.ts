import { type Job, type KitVariant, readKit } from '@loomproof/netlist';
import { type FaultTable, faultTable } from '../../packages/verify/src/checks/fault-table.ts';
import type { Stage } from '../../packages/verify/src/readings/stage.ts';
import { readFixture, tablesBeside } from './fixture-folder.ts';
import { kitNames, kitPath } from './kit-fixtures.ts';

/** A fault table of one variant of a fixture. */
export interface NamedTable {
  readonly name: string;
  readonly table: FaultTable;
}

/** The variants of a fixture, resolved. */
function variantsOf(name: string): readonly KitVariant[] {
  const { value } = readKit(readFixture(kitPath(name)), tablesBeside(kitPath(name)));
  if (value === null) throw new Error(`${name} cannot be used`);
  return value.variants;
}

/** The jobs of a fixture by the names of its variants. */
export function jobsOf(name: string): ReadonlyMap<string, Job> {
  return new Map(variantsOf(name).map(({ variant, job }) => [variant.name, job]));
}

/** At most two variants of every fixture: the first and the last. */
export function fixtureJobs(): readonly (KitVariant & { readonly name: string })[] {
  return kitNames.flatMap((name) => {
    const all = variantsOf(name);
    const chosen = all.length > 2 ? [all[0], all[all.length - 1]] : all;
    return chosen.flatMap((one) =>
      one === undefined ? [] : [{ ...one, name: `${name} ${one.variant.name}` }],
    );
  });
}

/** A table for each of {@link fixtureJobs}. */
export function fixtureTables(stage: Stage = { is: 'unplugged' }): readonly NamedTable[] {
  return fixtureJobs().map(({ name, job, otherWork }) => ({
    name,
    table: faultTable(job, { stage, otherWork: otherWork?.() ?? new Map<string, Job>() }),
  }));
}
