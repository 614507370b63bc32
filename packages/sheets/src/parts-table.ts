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
