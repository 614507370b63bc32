import type { Diagnostic, Source } from '../text/index.ts';
import { makeDiagnostic, sortDiagnostics } from '../text/index.ts';
import { chooseVariant, meetsCondition, type Variant, variantAxes, variantsOf } from './choose-variant.ts';
import { embedTables, type TableLoader } from './embed-tables.ts';
import type { KitFile, KitVariant } from './kit-file.ts';
import { KitsBelow } from './kits-below.ts';
import { kitLimits } from './limits.ts';
import type { Located } from './located.ts';
import { entryOf, textsUnder, textUnder } from './located.ts';
import { type ChosenDocument, otherWork } from './other-work.ts';
import { type Reading, readDocument } from './read-document.ts';
import { ReadingBudget } from './reading-budget.ts';
import { resolveVariants } from './resolve-variants.ts';

/**
 * Reads a kit file and resolves its variants. All complaints of all variants come in one run; where there is one of
 * error level there is no value, and nothing is judged.
 * @param source - the kit file.
 * @param load - gives the text of a table that the kit names, or null when it is not there.
 * @param wanted - `axis=value` conditions that a variant must meet; all variants when empty.
 */
export function readKit(source: Source, load: TableLoader, wanted: readonly string[] = []): Reading<KitFile> {
  return readOnChain(source, load, wanted, topmost());
}

/** Where a kit stands: the kits that stand on it, the topmost first, and what may still be read. */
interface Standing {
  readonly chain: readonly string[];
  readonly budget: ReadingBudget;
}

function topmost(): Standing {
  return { chain: [], budget: new ReadingBudget() };
}

function readOnChain(
  source: Source,
  load: TableLoader,
  wanted: readonly string[],
  standing: Standing,
): Reading<KitFile> {
  const read = readDocument(source);
  if (read.value === null) return { value: null, diagnostics: read.diagnostics };
  return resolveOnChain(read.value, load, wanted, standing);
}

/** The same for a document that a program made; see `locate`. */
export function resolveKit(
  document: Located,
  load: TableLoader,
  wanted: readonly string[] = [],
): Reading<KitFile> {
  return resolveOnChain(document, load, wanted, topmost());
}

function resolveOnChain(
  document: Located,
  load: TableLoader,
  wanted: readonly string[],
  { chain, budget }: Standing,
): Reading<KitFile> {
  const found: Diagnostic[] = [];
  const axes = variantAxes(document);
  const all = variantsOf(document);
  found.push(...all.diagnostics);
  const variants = (all.value ?? []).filter((variant) =>
    wanted.every((condition) => meetsCondition(variant, condition)),
  );
  for (const condition of wanted) {
    const [name = '', value = ''] = condition.split('=');
    const axis = axes.find((one) => one.name === name);
    if (axis === undefined || !axis.values.some((one) => one.name === value)) {
      const known = axes.flatMap((one) => one.values.map((each) => `${one.name}=${each.name}`));
      found.push(
        makeDiagnostic({
          code: 'variant',
          message: `this kit has no variant \`${condition}\``,
          help: known.length === 0 ? 'the kit has no variants' : `one of: ${known.join(', ')}`,
        }),
      );
    }
  }
  if (variants.length === 0 && found.length === 0) {
    found.push(makeDiagnostic({ code: 'variant', message: 'no variant matches' }));
  }
  const below = new KitsBelow(
    load,
    (source, loader, way) => readOnChain(source, loader, [], { chain: way, budget }),
    chain,
  );
  const tables = embedTables(document, load, budget, below.stocksOf(document));
  found.push(...tables.diagnostics);
  const resolved: KitVariant[] = [];
  const companions: KitVariant[] = [];
  const cautions = new Set<string>();
  const beside = companionsOf(document, variants, all.value ?? []);
  // Every variant may be confused with one that was asked for, but few callers want to know what comes of it.
  const chosenAll = (): readonly ChosenDocument[] =>
    (all.value ?? []).flatMap((variant) => {
      const { value } = chooseVariant(tables.document, variant, axes);
      return value === null ? [] : [{ variant, document: value }];
    });
  if (!found.some((one) => one.severity === 'error')) {
    const { resolved: all, diagnostics } = resolveVariants(
      tables,
      [...variants, ...beside],
      axes,
      below,
      budget,
    );
    found.push(...diagnostics);
    for (const { variant, document: chosen, below: under, job } of all) {
      const isBeside = beside.includes(variant);
      if (!isBeside) for (const node of textsUnder(chosen, 'cautions')) cautions.add(node.text);
      if (job === null) continue;
      const own: ChosenDocument = { variant, document: chosen };
      (isBeside ? companions : resolved).push({
        variant,
        job,
        below: under,
        document: chosen,
        otherWork: () => otherWork(own, chosenAll()),
      });
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
