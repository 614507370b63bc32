import type { Job, Rework, StepAction } from '@loomproof/netlist';
import type { SheetRow, SheetTable } from './sheet-table.ts';
import { wireData } from './wire-words.ts';

/**
 * What is in the bag, with the number of each and the steps that use it; and what is left over as scrap.
 *
 * @param after - the harness after the last step
 */
export function partsTable(after: Rework): SheetTable {
  const { job } = after;
  const rows: SheetRow[] = [];
  const row = (...cells: readonly string[]): void => void rows.push({ cells, changed: false });
  for (const [name, count] of job.bag) {
    if (count === 0) continue;
    row(
      name,
      job.parts.get(name)?.is ?? 'part',
      String(count),
      stepsThat(job, (action) => partOf(job, action) === name),
    );
  }
  for (const [name, kind, count] of onBagWires(job)) row(name, kind, String(count), '');
  for (const connector of job.connectors) {
    if (connector.origin !== 'kit') continue;
    const kind = connector.device ? 'device' : `connector, ${connector.placeCount} cavities`;
    row(
      connector.name,
      kind,
      '1',
      stepsThat(job, (action) => usesConnector(job, action, connector.name)),
    );
  }
  for (const [index, wire] of job.wires.entries()) {
    if (wire.origin !== 'kit') continue;
    const { colour, size, length } = wireData(job, index);
    row(wire.name, ['wire', colour, size, length].filter((one) => one !== '').join(' '), '1', '');
  }
  for (const [index, name] of scrapOf(job)) row(name, 'scrap', '1', String(index));
  return { head: ['part', 'kind', 'quantity', 'steps'], rows };
}

/** What is on the wires and connectors of the bag before it is closed, by part name. */
function onBagWires(job: Job): readonly (readonly [string, string, number])[] {
  const kit = (end: number): boolean => job.wires[job.ends[end]?.wire ?? -1]?.origin === 'kit';
  const counts = new Map<string, { readonly name: string; readonly kind: string; count: number }>();
  const add = (name: string, kind: string): void => {
    const key = JSON.stringify([kind, name]);
    const one = counts.get(key) ?? { name, kind, count: 0 };
    one.count += 1;
    counts.set(key, one);
  };
  for (const { ends, part, place } of job.terminals) {
    if (!ends.some(kit)) continue;
    const half = job.connectors[job.places[place]?.connector ?? -1];
    add(part ?? `terminal that ${half?.name ?? 'its place'} takes`, 'terminal, on wires of the bag');
  }
  for (const [end, { seal }] of job.ends.entries())
    if (seal !== null && kit(end)) add(seal, 'seal, on wires of the bag');
  for (const { part, name, kind, origin, before } of job.joints)
    if (origin === 'kit' && before !== 'absent' && kind === 'splice')
      add(part ?? `splice ${name}`, 'splice, on wires of the bag');
  for (const { origin, blanked, address } of job.places)
    if (origin === 'kit' && blanked) add(`plug in ${address}`, 'plug, in a connector of the bag');
  return [...counts.values()].map(({ name, kind, count }) => [name, kind, count]);
}

function stepsThat(job: Job, uses: (action: StepAction) => boolean): string {
  return job.steps
    .filter(({ action }) => uses(action))
    .map(({ number }) => number)
    .join(' ');
}

function partOf(job: Job, action: StepAction): string | null {
  switch (action.kind) {
    case 'join':
    case 'tap':
      return job.joints[action.joint]?.part ?? null;
    case 'fit terminal':
      return job.terminals[action.terminal]?.part ?? null;
    default:
      return 'part' in action ? action.part : null;
  }
}

function usesConnector(job: Job, action: StepAction, name: string): boolean {
  if (action.kind === 'interpose')
    return [action.near, action.far].some((one) => job.connectors[one]?.name === name);
  return (
    (action.kind === 'place' || action.kind === 'plug') && job.connectors[action.connector]?.name === name
  );
}

/** What comes off and is kept apart, with the step at which it does. */
function scrapOf(job: Job): readonly (readonly [number, string])[] {
  return job.steps.flatMap(({ number, action }): readonly (readonly [number, string])[] => {
    switch (action.kind) {
      case 'remove off-cut':
        return [[number, `off-cut ${job.pieces[action.piece]?.name ?? ''}`]];
      case 'remove plug':
        return [[number, `plug of ${job.places[action.place]?.address ?? ''}`]];
      case 'remove tap':
        return [[number, `tap ${job.joints[action.joint]?.name ?? ''}`]];
      case 'remove fuse':
        return [[number, `fuse of ${job.elements[action.element]?.name ?? ''}`]];
      case 'remove seal':
        return [[number, `seal of ${job.ends[action.end]?.name ?? ''}`]];
      default:
        return [];
    }
  });
}
