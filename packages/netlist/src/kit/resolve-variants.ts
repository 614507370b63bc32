import type { Job } from '../harness/job.ts';
import { resolveJob } from '../resolve/resolve-job.ts';
import { type Diagnostic, makeDiagnostic } from '../text/index.ts';
import { checkDocument } from './check-document.ts';
import { chooseVariant, type Picked, type Variant, type VariantAxis } from './choose-variant.ts';
import type { EmbeddedTables } from './embed-tables.ts';
import type { KitBelow } from './kit-file.ts';
import type { KitsBelow, Stood } from './kits-below.ts';
import { kitLimits } from './limits.ts';
import { entryOf, type Located, rowsUnder } from './located.ts';
import type { ReadingBudget } from './reading-budget.ts';

/** A variant's document, and its job where both its form and its names are right. */
export interface ResolvedVariant {
  readonly variant: Variant;
  /** With the harness that the kit below leaves as its stock. */
  readonly document: Located;
  readonly below: KitBelow | null;
  readonly job: Job | null;
}

/**
 * Chooses, checks and resolves the variants one after the other. Variants for which every choice of the file picks the same
 * are one job under two names: it is resolved once, and they share all its lists.
 *
 * @param tables - the document with its tables
 * @param variants - those that are asked for, and those that they are compared with
 * @param axes - the axes of the kit
 * @param below - the kits that it stands on
 * @param budget - what may still be resolved
 * @returns one entry a variant whose values are all given, and every complaint
 */
export function resolveVariants(
  tables: EmbeddedTables,
  variants: readonly Variant[],
  axes: readonly VariantAxis[],
  below: KitsBelow,
  budget: ReadingBudget,
): { readonly resolved: readonly ResolvedVariant[]; readonly diagnostics: readonly Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const nameOfPick = picksByName();
  const stood = new Map<string, Stood & { readonly chosen: Located }>();
  const choices: Choice[] = [];
  for (const variant of variants) {
    const chosen = chooseVariant(tables.document, variant, axes);
    const drawn = tables.drawn === null ? null : chooseVariant(tables.drawn, variant, axes);
    diagnostics.push(...chosen.diagnostics);
    // The blank that stands for a value nobody gave would only be complained of again.
    if (chosen.value === null || chosen.diagnostics.length > 0) continue;
    const picks = [...chosen.picked, ...(drawn?.picked ?? [])].map(nameOfPick).join();
    choices.push({ variant, drawn: drawn?.value ?? null, picks });
    if (stood.has(picks)) continue;
    const one = below.stand(chosen.value);
    stood.set(picks, { ...one, chosen: chosen.value });
    diagnostics.push(...one.diagnostics);
    if (!budget.takeConductors(conductorsOf(one.document)))
      return { resolved: [], diagnostics: [tooMany(variants.length)] };
  }
  const sound = new WeakSet<Located>();
  const jobs = new Map<string, Job | null>();
  const resolved = choices.flatMap(({ variant, drawn, picks }): readonly ResolvedVariant[] => {
    const standing = stood.get(picks);
    if (standing === undefined) return [];
    const of = { variant, document: standing.document, below: standing.below };
    const known = jobs.get(picks);
    if (known !== undefined)
      return [{ ...of, job: known === null ? null : { ...known, variant: variant.name } }];
    const form = checkDocument(standing.chosen, sound);
    diagnostics.push(...form);
    let job: Job | null = null;
    // Where the kit below cannot be used, every name of its harness would be missed.
    if (entryOf(standing.document, 'stock') !== null) {
      const reading = resolveJob(standing.document, variant.name, drawn);
      // Names are looked up even where the form is wrong elsewhere, so that all complaints come at once.
      diagnostics.push(...reading.diagnostics.filter((one) => form.length === 0 || standsAlone(one, form)));
      if (form.length === 0) job = reading.value;
    }
    jobs.set(picks, job);
    return [{ ...of, job }];
  });
  return { resolved, diagnostics };
}

interface Choice {
  readonly variant: Variant;
  readonly drawn: Located | null;
  /** Names of what was picked; equal for variants that see the very same document. */
  readonly picks: string;
}

function conductorsOf(document: Located): number {
  return ['stock', 'bag'].reduce(
    (sum, section) => sum + rowsUnder(entryOf(document, section), 'wires').length,
    0,
  );
}

/** Gives what was picked a short name that nothing else picked has. */
function picksByName(): (picked: Picked) => string {
  const names = new Map<Picked, string>();
  return (picked) => {
    const known = names.get(picked);
    if (known !== undefined) return known;
    const name = String(names.size);
    names.set(picked, name);
    return name;
  };
}

function tooMany(variants: number): Diagnostic {
  return makeDiagnostic({
    code: 'too-many',
    message: `the kits and variants of one run hold more than ${kitLimits.conductors} conductors together`,
    help: variants > 1 ? 'judge fewer variants in a run, with `--variant axis=value`' : null,
  });
}

/** Whether a complaint about a name is not only an echo of a wrong form at the same place, or of one without a place. */
function standsAlone(one: Diagnostic, form: readonly Diagnostic[]): boolean {
  const { span } = one;
  if (span === null || one.severity !== 'error' || span.start === span.end) return false;
  // What a kit that is not read in full lacks says nothing.
  if (one.code === 'no-step' || one.code === 'nothing-wanted') return false;
  return form.every(
    (other) =>
      other.span === null ||
      other.span.source !== span.source ||
      other.span.end <= span.start ||
      other.span.start >= span.end,
  );
}
