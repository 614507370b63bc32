import type { Job } from '@loomproof/netlist';
import type { SheetRow, SheetTable } from './sheet-table.ts';
import { wireData } from './wire-words.ts';

/** The wires of the bag as they are made: colour, size, length, and at both ends the mark, the preparation and the parts. */
export function cutList(job: Job): SheetTable {
  const rows = job.wires.flatMap((wire, index): readonly SheetRow[] => {
    if (wire.origin !== 'kit') return [];
    const { colour, size, length } = wireData(job, index);
    const ends = wire.ends.flatMap((end) => endCells(job, end));
    return [{ cells: [wire.name, colour, size, length, ...ends], changed: false }];
  });
  const end = (name: string): readonly string[] => [
    `${name} mark`,
    `${name} strip`,
    `${name} terminal`,
    `${name} seal`,
  ];
  return { head: ['wire', 'colour', 'size', 'length', ...end('from'), ...end('to')], rows };
}

function endCells(job: Job, end: number): readonly string[] {
  const there = job.ends[end];
  if (there === undefined) return ['', '', '', ''];
  const mark = there.name.slice(there.name.lastIndexOf('@') + 1);
  const terminal = 'terminal' in there.home ? there.home.terminal : -1;
  const part = terminal < 0 ? '' : (job.terminals[terminal]?.part ?? 'as the connector takes');
  const strip =
    there.home.kind === 'joint' || terminal >= 0 || (there.home.kind === 'free' && there.home.stripped);
  return [mark, strip ? 'yes' : 'no, cut square', part, there.seal ?? ''];
}
