import type { StepKind } from '@loomproof/netlist';

/** A moment at which the machine gets power, and the readings that have to be closed before it. */
export interface CheckMoment {
  /** Name of the group of readings. */
  readonly group: string;
  /** How many steps are done when its readings are taken. */
  readonly done: number;
  /** Indices of the steps that give power and stay locked until the group is closed. */
  readonly locks: readonly number[];
}

/** Steps that change no copper of the harness as it lies unplugged. */
const plugsOnly: ReadonlySet<StepKind> = new Set<StepKind>([
  'plug',
  'close latch',
  'place',
  'fasten',
  'tie back',
  'fit fuse',
  'prove dead',
  'reconnect',
]);

/** Steps that leave every wire, terminal, tap, plug and seal of the machine as it was found. */
const leavesAsFound: ReadonlySet<StepKind> = new Set<StepKind>([
  'disconnect',
  'prove dead',
  'unplug',
  'open latch',
  'open lock',
]);

/**
 * The moments of a work at which readings are due. Power that comes back while work is still to be done has readings of
 * its own, of the harness as it is then. The last moment is that of the whole work.
 *
 * @param kinds - what the steps do, in order
 * @param plugged - whether readings are taken with everything plugged: then just before power, else before plugging
 * @param live - for each step whether some source is on when it is done: then a fuse gives power, and a plug may
 */
export function checkMoments(
  kinds: readonly StepKind[],
  plugged: boolean,
  live: readonly boolean[],
): readonly CheckMoment[] {
  const found: { done: number; locks: number[] }[] = [];
  let changed = 0;
  let current: { done: number; locks: number[] } | null = null;
  for (const [index, kind] of kinds.entries()) {
    const isLive = live[index] === true && changed > 0;
    if (kind === 'reconnect' || (isLive && (kind === 'fit fuse' || (kind === 'plug' && !plugged)))) {
      if (current === null) {
        current = { done: plugged ? index : changed, locks: [] };
        found.push(current);
      }
      current.locks.push(index);
    }
    if (plugsOnly.has(kind)) continue;
    changed = index + 1;
    if (kind !== 'disconnect') current = null;
  }
  // Work that ends without power coming back is read all the same.
  if (current === null) found.push({ done: plugged ? kinds.length : changed, locks: [] });
  return found.map((one, index) => ({ ...one, group: `power-${index + 1}` }));
}

/** The index of the first step that changes anything; readings of the machine as found are due before it. */
export function firstChange(kinds: readonly StepKind[]): number {
  return Math.max(
    0,
    kinds.findIndex((kind) => !leavesAsFound.has(kind)),
  );
}
