import type { Job } from '../harness/job.ts';
import { resolveJob } from '../resolve/resolve-job.ts';
import type { Variant } from './choose-variant.ts';
import type { Located, LocatedEntry } from './located.ts';

/** What comes with the kit and not with the machine. */
const partsOfKit = ['bag', 'work', 'wanted'] as const;

/** The document of one variant as chosen from the kit file. */
export interface ChosenDocument {
  readonly variant: Variant;
  readonly document: Located;
}

/**
 * The work of the other variants done on the machine of this one: its harness with their bags and steps. A variant
 * whose steps name something that this machine does not have is left out, since whoever does them notices at once.
 *
 * @param own - the variant of the machine
 * @param all - every variant of the kit, chosen already
 * @returns jobs by the name of the variant whose work is done
 */
export function otherWork(own: ChosenDocument, all: readonly ChosenDocument[]): ReadonlyMap<string, Job> {
  const found = new Map<string, Job>();
  for (const { variant, document } of all) {
    if (variant.name === own.variant.name) continue;
    const { value } = resolveJob(withKitOf(own.document, document), variant.name, null);
    if (value !== null) found.set(variant.name, value);
  }
  return found;
}

function withKitOf(machine: Located, kit: Located): Located {
  if (machine.kind !== 'map' || kit.kind !== 'map') return machine;
  const entries = new Map<string, LocatedEntry>(machine.entries);
  for (const key of partsOfKit) {
    const entry = kit.entries.get(key);
    if (entry === undefined) entries.delete(key);
    else entries.set(key, entry);
  }
  return { ...machine, entries };
}
