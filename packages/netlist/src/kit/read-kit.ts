import type { Job } from '../harness/job.ts';
import { resolveJob } from '../resolve/resolve-job.ts';
import type { Diagnostic, Source } from '../text/index.ts';
import { sortDiagnostics } from '../text/index.ts';
import { checkDocument } from './check-document.ts';
import { chooseVariant, type Variant, type VariantAxis, variantAxes, variantsOf } from './choose-variant.ts';
import { embedTables, type TableLoader } from './embed-tables.ts';
import { kitLimits } from './limits.ts';
import type { Located } from './located.ts';
import { entryOf, textsUnder, textUnder } from './located.ts';
import { type Reading, readDocument } from './read-document.ts';

/** One variant with its resolved job. */
export interface KitVariant {
  readonly variant: Variant;
  readonly job: Job;
}

/** A kit file that can be judged: every variant that was asked for is resolved. */
export interface KitFile {
  readonly kit: string;
  readonly revision: string;
  readonly axes: readonly VariantAxis[];
  /** The kit's own cautions, of every variant that was asked for. */
  readonly cautions: readonly string[];
  /** How many variants the kit has, asked for or not. */
  readonly variantCount: number;
  readonly variants: readonly KitVariant[];
  /** Variants that were not asked for, but that an asked one is declared to agree with. */
  readonly companions: readonly KitVariant[];
}

/**
 * Reads a kit file and resolves its variants. All complaints of all variants come in one run; where there is one of
 * error level there is no value, and nothing is judged.
 * @param source - the kit file.
 * @param load - gives the text of a table that the kit names, or null when it is not there.
 * @param wanted - `axis=value` conditions that a variant must meet; all variants when empty.
 */
export function readKit(source: Source, load: TableLoader, wanted: readonly string[] = []): Reading<KitFile> {
  const read = readDocument(source);
  if (read.value === null) return { value: null, diagnostics: read.diagnostics };
  return resolveKit(read.value, load, wanted);
}

/** The same for a document that a program made; see `locate`. */
export function resolveKit(
  document: Located,
  load: TableLoader,
  wanted: readonly string[] = [],
): Reading<KitFile> {
  const found: Diagnostic[] = [];
  const axes = variantAxes(document);
  const all = variantsOf(document);
  found.push(...all.diagnostics);
  const variants = (all.value ?? []).filter((variant) =>
    wanted.every((condition) => meets(condition, variant)),
  );
  for (const condition of wanted) {
    const [name = '', value = ''] = condition.split('=');
    const axis = axes.find((one) => one.name === name);
    if (axis === undefined || !axis.values.some((one) => one.name === value)) {
      const known = axes.flatMap((one) => one.values.map((each) => `${one.name}=${each.name}`));
      found.push({
        code: 'variant',
        severity: 'error',
        message: `this kit has no variant \`${condition}\``,
        span: null,
        related: [],
        help: known.length === 0 ? 'the kit has no variants' : `one of: ${known.join(', ')}`,
      });
    }
  }
  if (variants.length === 0 && found.length === 0) {
    found.push({
      code: 'variant',
      severity: 'error',
      message: 'no variant matches',
      span: null,
      related: [],
      help: null,
    });
  }
  const tables = embedTables(document, load);
  found.push(...tables.diagnostics);
  const resolved: KitVariant[] = [];
  const companions: KitVariant[] = [];
  const cautions = new Set<string>();
  const beside = companionsOf(document, variants, all.value ?? []);
  if (!found.some((one) => one.severity === 'error')) {
    for (const variant of [...variants, ...beside]) {
      const chosen = chooseVariant(tables.document, variant, axes);
      // The blank that stands for a value nobody gave would only be complained of again.
      const form = chosen.diagnostics.length > 0 ? [] : checkDocument(chosen.value ?? document);
      found.push(...chosen.diagnostics, ...form);
      if (chosen.value === null || chosen.diagnostics.length > 0) continue;
      if (!beside.includes(variant))
        for (const node of textsUnder(chosen.value, 'cautions')) cautions.add(node.text);
      const drawn = tables.drawn === null ? null : chooseVariant(tables.drawn, variant, axes).value;
      const job = resolveJob(chosen.value, variant.name, drawn);
      // Names are looked up even where the form is wrong elsewhere, so that all complaints come at once.
      found.push(...job.diagnostics.filter((one) => form.length === 0 || standsAlone(one, form)));
      if (job.value !== null && form.length === 0)
        (beside.includes(variant) ? companions : resolved).push({ variant, job: job.value });
    }
  }
  const diagnostics = sortDiagnostics(distinct(found));
  if (diagnostics.some((one) => one.severity === 'error')) return { value: null, diagnostics };
  const value: KitFile = {
    kit: textUnder(document, 'kit')?.text ?? '',
    revision: textUnder(document, 'revision')?.text ?? '',
    axes,
    cautions: [...cautions],
    variantCount: all.value?.length ?? 0,
    variants: resolved,
    companions,
  };
  return { value, diagnostics };
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

/** The same complaint in several variants is one complaint. */
function distinct(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const seen = new Map<string, Diagnostic>();
  for (const one of diagnostics) {
    const place = one.span === null ? '' : `${one.span.source.name}:${one.span.start}:${one.span.end}`;
    const key = `${place} ${one.code} ${one.message}`;
    if (!seen.has(key)) seen.set(key, one);
  }
  const all = [...seen.values()];
  const rest = all.length - kitLimits.diagnostics;
  if (rest <= 0) return all;
  const more: Diagnostic = {
    code: 'and-more',
    severity: 'error',
    message: `and ${rest} more like these`,
    span: null,
    related: [],
    help: null,
  };
  return [...all.slice(0, kitLimits.diagnostics), more];
}

function meets(condition: string, variant: Variant): boolean {
  const equals = condition.indexOf('=');
  return variant.values.get(condition.slice(0, equals)) === condition.slice(equals + 1);
}

/** The variants that a declared pairing compares the asked ones with. */
function companionsOf(
  document: Located,
  asked: readonly Variant[],
  all: readonly Variant[],
): readonly Variant[] {
  const agree = entryOf(entryOf(document, 'wanted'), 'agree');
  const axis = textUnder(agree, 'axis')?.text;
  if (axis === undefined) return [];
  const isPair = (one: Variant, other: Variant): boolean =>
    one !== other &&
    [...one.values].every(([name, value]) => name === axis || other.values.get(name) === value);
  return all.filter((other) => !asked.includes(other) && asked.some((one) => isPair(one, other)));
}
