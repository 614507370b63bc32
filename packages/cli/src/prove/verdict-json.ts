import type { Diagnostic } from '@loomproof/netlist';
import type { KitVerdict, VariantVerdict } from '@loomproof/verify';
import type * as z from 'zod';
import { diagnosticJson } from '../output/diagnostic-json.ts';
import type { verdictSchema } from './verdict-schema.ts';

type Frozen<T> = T extends (infer Item)[]
  ? readonly Frozen<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Frozen<T[Key]> }
    : T;

/** The JSON of `prove`; held to the published schema by its type. */
export type VerdictJson = Frozen<z.infer<typeof verdictSchema>>;

/**
 * The whole verdict as plain data, in the order in which it is printed.
 *
 * @param verdict - what was judged, or null when the kit could not be read so far
 * @param digest - of the inputs, or null
 * @param diagnostics - of the reading; those of the verdict are added
 */
export function verdictJson(
  verdict: KitVerdict | null,
  digest: string | null,
  diagnostics: readonly Diagnostic[],
): VerdictJson {
  const all = [...diagnostics, ...(verdict?.diagnostics ?? [])];
  return {
    kit: verdict?.kit ?? null,
    revision: verdict?.revision ?? null,
    digest,
    verdict: verdict?.verdict ?? null,
    variants: verdict?.variants.map(variantJson) ?? [],
    judged: verdict?.variants.length ?? 0,
    variantCount: verdict?.variantCount ?? 0,
    notClaimed: verdict?.notClaimed ?? [9, 10],
    standsOn: verdict?.standsOn ?? [],
    diagnostics: all.map(diagnosticJson),
  };
}

/** Key by key, so that the model behind a verdict never gets into what is printed. */
function variantJson(one: VariantVerdict): VerdictJson['variants'][number] {
  const { variant, verdict, findings, obligations, stubs, disturbed, deviations, advice } = one;
  const circuits = one.circuits.map(({ proof, ...circuit }) => ({
    ...circuit,
    proof: proof?.hops() ?? null,
  }));
  return { variant, verdict, circuits, findings, obligations, stubs, disturbed, deviations, advice };
}
