import type { Job } from '@loomproof/netlist';
import type { SheetRow, SheetTable } from './sheet-table.ts';
import { wireData } from './wire-words.ts';

/** The wires of the bag as they are made: colour, size, length, and at both ends the mark, the preparation and the parts. */
export function cutList(job: Job): SheetTable {
  const rows = job.wires.flatMap((wire, index): readonly SheetRow[] => {
    if (wire.origin !== 'kit') return [];
    const { colour, size, length } = wireData(job, index);
    const ends = wire.ends.flatMap((end, side) => endCells(job, end, wire.stripMm[side] ?? null));
    const told = [colour, size, length].map((one) => (one === '' ? 'not said' : one));
    return [{ cells: [wire.name, ...told, ...ends], changed: false }];
  });
  const end = (name: string): readonly string[] => [
    `${name} mark`,
    `${name} strip`,
    `${name} terminal`,
    `${name} seal`,
  ];
  return { head: ['wire', 'colour', 'size', 'length', ...end('from'), ...end('to')], rows };
}

/** What comes on an end: before the bag is closed, or by a step on the machine. */
interface EndParts {
  readonly part: string | null;
  /** The number of the step that puts the part on, or null where it comes so out of the bag. */
  readonly step: number | null;
  readonly stripped: boolean;
}

function endCells(job: Job, end: number, ownStrip: number | null): readonly string[] {
  const there = job.ends[end];
  if (there === undefined) return ['', '', '', ''];
  const mark = there.name.slice(there.name.lastIndexOf('@') + 1);
  const asMade = partsAsMade(job, end);
  const { part, step, stripped } = asMade ?? partsByStep(job, end);
  const when = step === null ? '' : `at step ${step}:`;
  const known = job.parts.get(part ?? '');
  const strip = ownStrip ?? (known?.is === 'terminal' || known?.is === 'splice' ? known.stripMm : null);
  // A length comes from the maker's data and from nowhere else, so one that is not said is asked for.
  const length = strip === null ? 'length not said' : `${strip} mm`;
  const square = 'no, cut square';
  const stripCell =
    step === null ? (stripped ? length : square) : stripped ? `${square}; ${when} ${length}` : square;
  const terminal =
    part === null ? (stripped ? 'as the connector takes' : '') : step === null ? part : `${when} ${part}`;
  return [mark, stripCell, terminal, sealCell(job, end)];
}

/** The seal that comes on an end out of the bag, and the one that a step puts on it in its place. */
function sealCell(job: Job, end: number): string {
  const cells = [job.ends[end]?.seal ?? ''];
  for (const { action, number } of job.steps) {
    const fits =
      (action.kind === 'fit seal' && action.end === end) ||
      (action.kind === 'fit terminal' && action.ends.includes(end));
    const part =
      action.kind === 'fit seal' ? action.part : action.kind === 'fit terminal' ? action.seal : null;
    if (fits && part !== null) cells.push(`at step ${number}: ${part}`);
  }
  return cells.filter((cell) => cell !== '').join('; ');
}

/** What is on an end that is ready made, or null for one that is cut and no more. */
function partsAsMade(job: Job, end: number): EndParts | null {
  const there = job.ends[end];
  if (there === undefined || there.home.kind === 'cut') return null;
  const base = { step: null, stripped: true };
  if (there.home.kind === 'joint') return { ...base, part: job.joints[there.home.joint]?.part ?? null };
  if (there.home.terminal >= 0) return { ...base, part: job.terminals[there.home.terminal]?.part ?? null };
  return there.home.kind === 'free' && there.home.stripped ? { ...base, part: null } : null;
}

/** What the first step that crimps, joins or taps the end puts on it. */
function partsByStep(job: Job, end: number): EndParts {
  for (const { action, number } of job.steps) {
    if (action.kind === 'fit terminal' && action.ends.includes(end))
      return {
        part: job.terminals[action.terminal]?.part ?? null,
        step: number,
        stripped: true,
      };
    if (action.kind === 'join' && action.ends.includes(end))
      return { part: job.joints[action.joint]?.part ?? null, step: number, stripped: true };
    if (action.kind === 'tap' && action.branch === end)
      return { part: job.joints[action.joint]?.part ?? null, step: number, stripped: false };
  }
  return { part: null, step: null, stripped: false };
}
