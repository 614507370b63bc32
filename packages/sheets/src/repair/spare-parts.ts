import { formatSize, type Job, type Part, type Size } from '@loomproof/netlist';
import type { RepairDraft } from './repair-plan.ts';

/**
 * A splice for two ends of one wire, beside the bag: of the kit's own kind where one fits as it comes, else by what it must
 * be. Rated wet, since such a splice is right in every zone.
 */
export function spareSplice(job: Job, size: Size, draft: RepairDraft): string {
  const fits = (part: Part): boolean =>
    part.is === 'splice' && part.tube === 'built in' && part.zone === 'wet' && holds(part.size, size.mm2 * 2);
  const own = [...job.parts.values()].find(fits);
  if (own !== undefined) return draft.need(own, `1 ${own.name} more than the bag holds`);
  const name = `splice for ${formatSize(size)}`;
  const part: Part = {
    is: 'splice',
    name,
    size: { min: size.mm2, max: size.mm2 * 2 },
    ends: 2,
    tube: 'built in',
    zone: 'wet',
    stripMm: null,
  };
  return draft.need(part, `1 splice for two ends of ${formatSize(size)}, with its own tube, for wet places`);
}

/** A sleeve that can be laid round a wire that goes on, for the wound of a tap. */
export function spareSleeve(size: Size, draft: RepairDraft): string {
  const part: Part = {
    is: 'cover',
    name: `wrap-round sleeve for ${formatSize(size)}`,
    size: { min: 0, max: size.mm2 * 2 },
    zone: 'wet',
  };
  return draft.need(
    part,
    `1 sleeve for ${formatSize(size)} that closes round a wire that goes on, for wet places`,
  );
}

function holds(range: { readonly min: number; readonly max: number } | null, mm2: number): boolean {
  return range !== null && range.min <= mm2 && mm2 <= range.max;
}
