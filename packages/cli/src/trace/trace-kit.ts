import { type Diagnostic, type KitFile, Rework } from '@loomproof/netlist';
import { type CavityNet, traceCavity } from '@loomproof/verify';
import { unknownPlace } from '../input/unknown-place.ts';

/** A cavity in one variant; null where the variant has no such cavity. */
export interface VariantTrace {
  readonly variant: string;
  readonly before: CavityNet | null;
  readonly after: CavityNet | null;
}

/**
 * Traces a place through every variant that was read. Nothing is judged.
 *
 * @param kit - the kit
 * @param address - such as `K10:4`
 * @returns a trace for each variant, or a diagnostic when none of them has the place
 */
export function traceKit(
  kit: KitFile,
  address: string,
): { readonly value: readonly VariantTrace[] | null; readonly diagnostics: readonly Diagnostic[] } {
  const value = kit.variants.map(({ variant, job }): VariantTrace => {
    const rework = new Rework(job);
    for (const step of job.steps) rework.apply(step);
    const trace = traceCavity(rework, address);
    return { variant: variant.name, before: trace?.before ?? null, after: trace?.after ?? null };
  });
  if (value.some((one) => one.after !== null)) return { value, diagnostics: [] };
  const known = new Set(kit.variants.flatMap(({ job }) => job.places.map((place) => place.address)));
  return { value: null, diagnostics: [unknownPlace(address, [...known])] };
}
