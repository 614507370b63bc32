import type { Diagnostic, Span } from '../text/index.ts';
import { nearestName } from '../text/index.ts';
import { kitLimits } from './limits.ts';
import type { Located, LocatedEntry, LocatedMap } from './located.ts';
import { itemsUnder, rowsUnder } from './located.ts';
import type { Reading } from './read-document.ts';

/** One combination of axis values, in the order the axes are written. */
export interface Variant {
  /** `side=left option=heater`, or `only` where the kit has no axes. */
  readonly name: string;
  readonly values: ReadonlyMap<string, string>;
}

/** An axis with its values and, where given, how each is recognised on the machine. */
export interface VariantAxis {
  readonly name: string;
  readonly values: readonly { readonly name: string; readonly recognise: string | null }[];
}

/** The axes that a kit file declares. */
export function variantAxes(document: Located): readonly VariantAxis[] {
  return rowsUnder(document, 'variants').map(({ key, value }) => ({
    name: key,
    values:
      value.kind === 'list'
        ? value.items.flatMap((item) => (item.kind === 'text' ? [{ name: item.text, recognise: null }] : []))
        : value.kind === 'map'
          ? [...value.entries.values()].map((entry) => ({
              name: entry.key,
              recognise: entry.value.kind === 'text' ? entry.value.text : null,
            }))
          : [],
  }));
}

/** Every combination of the axes that is built, or diagnostics when there are none or too many. */
export function variantsOf(document: Located): Reading<readonly Variant[]> {
  const diagnostics: Diagnostic[] = [];
  const axes = variantAxes(document);
  let variants: Variant[] = [{ name: 'only', values: new Map() }];
  for (const axis of axes) {
    const seen = new Set<string>();
    for (const value of axis.values) {
      if (seen.has(value.name)) {
        diagnostics.push(error('variant', `\`${axis.name}=${value.name}\` is listed twice`, document.span));
      }
      seen.add(value.name);
    }
    if (variants.length * axis.values.length > kitLimits.variants) {
      diagnostics.push(error('variant', `more than ${kitLimits.variants} variants`, document.span));
      return { value: null, diagnostics };
    }
    variants = variants.flatMap((variant) =>
      axis.values.map(({ name }) => ({
        name: `${variant.values.size === 0 ? '' : `${variant.name} `}${axis.name}=${name}`,
        values: new Map([...variant.values, [axis.name, name]]),
      })),
    );
  }
  const unbuilt = itemsUnder(document, 'not built').map((item) =>
    item.kind === 'list' ? item.items : [item],
  );
  const built = variants.filter(
    (variant) =>
      !unbuilt.some(
        (conditions) =>
          conditions.length > 0 &&
          conditions.every(
            (one) => one.kind === 'text' && holds(one.text, { variant, axes, diagnostics }, one.span),
          ),
      ),
  );
  if (built.length === 0) diagnostics.push(error('variant', 'no variant is left to be built', document.span));
  return { value: diagnostics.length > 0 ? null : built, diagnostics };
}

/** The document as one variant sees it, with what was picked at each choice on the way. */
export interface ChosenVariant extends Reading<Located> {
  /** In the order of the document: variants with equal lists see the very same document. */
  readonly picked: readonly Picked[];
}

/**
 * The document as one variant sees it: a map whose keys are `axis=value` conditions becomes the value that holds, and
 * rows whose `only` does not hold are gone. Step rows keep their number, because dropped ones leave a gap that
 * {@link droppedSteps} remembers through the position in the written list.
 */
export function chooseVariant(
  document: Located,
  variant: Variant,
  axes: readonly VariantAxis[],
): ChosenVariant {
  const diagnostics: Diagnostic[] = [];
  const picked: Picked[] = [];
  const value = choose(document, { variant, axes, diagnostics, picked }, []) ?? document;
  return { value, diagnostics, picked };
}

/** Whether a variant has the value that a condition `axis=value` asks for. */
export function meetsCondition({ values }: Variant, condition: string): boolean {
  const equals = condition.indexOf('=');
  return values.get(condition.slice(0, equals)) === condition.slice(equals + 1);
}

/** What was done at one choice: the entry that was picked, or whether a row with `only` stays. */
export type Picked = LocatedEntry | 'kept' | 'dropped';

interface Choosing {
  readonly variant: Variant;
  readonly axes: readonly VariantAxis[];
  readonly diagnostics: Diagnostic[];
  readonly picked: Picked[];
}

/** The key under which a chosen step remembers its number in the written list. */
export const stepNumberKey = '#';

/** What does not depend on the variant is the same object in every variant, so that it is neither copied nor checked anew. */
function choose(node: Located, choosing: Choosing, path: readonly string[]): Located | null {
  if (node.kind === 'text') return node;
  if (node.kind === 'list') {
    const items: Located[] = [];
    let same = true;
    const isWork = path.length === 1 && path[0] === 'work';
    const below = [...path, '-'];
    for (const [index, item] of node.items.entries()) {
      const chosen = choose(item, choosing, below);
      same &&= chosen === item && !isWork;
      if (chosen === null) continue;
      items.push(isWork && chosen.kind === 'map' ? numbered(chosen, index + 1) : chosen);
    }
    return same ? node : { ...node, items };
  }
  if (isChoice(node)) return chosenOf(node, choosing, path);
  // The axes themselves are about all variants at once, also one that is called `only`.
  if (path[0] === 'variants') return node;
  const only = node.entries.get('only');
  if (only !== undefined) {
    const conditions = only.value.kind === 'list' ? only.value.items : [only.value];
    const all = conditions.map((one) => one.kind === 'text' && holds(one.text, choosing, one.span));
    const stays = all.every(Boolean);
    choosing.picked.push(stays ? 'kept' : 'dropped');
    if (!stays) return null;
  }
  let entries: Map<string, LocatedEntry> | null = null;
  for (const entry of node.entries.values()) {
    if (entry.key === 'only' || entry.value.kind === 'text') continue;
    const value = choose(entry.value, choosing, [...path, entry.key]);
    if (value === entry.value) continue;
    entries ??= new Map(node.entries);
    if (value === null) entries.delete(entry.key);
    else entries.set(entry.key, { ...entry, value });
  }
  return entries === null ? node : { ...node, entries };
}

function numbered(step: LocatedMap, number: number): LocatedMap {
  const entries = new Map(step.entries);
  entries.set(stepNumberKey, {
    key: stepNumberKey,
    keySpan: step.span,
    value: { kind: 'text', text: String(number), span: step.span },
  });
  return { ...step, entries };
}

function isChoice(node: LocatedMap): boolean {
  if (node.entries.size === 0) return false;
  let conditions = 0;
  for (const key of node.entries.keys()) {
    if (key === 'else') continue;
    // One condition, or several with blanks between, as in `only`.
    if (!key.split(/[\s,]+/).every((one) => /^[^=]+=[^=]+$/.test(one))) return false;
    conditions += 1;
  }
  return conditions > 0;
}

function chosenOf(node: LocatedMap, choosing: Choosing, path: readonly string[]): Located | null {
  const { variant, diagnostics } = choosing;
  const matching: LocatedEntry[] = [];
  for (const entry of node.entries.values()) {
    if (entry.key !== 'else' && holds(entry.key, choosing, entry.keySpan)) matching.push(entry);
  }
  const fallback = node.entries.get('else');
  const picked = matching[0] ?? fallback;
  if (matching.length > 1) {
    diagnostics.push(
      error('variant', `two values hold for ${variant.name}`, matching[1]?.keySpan ?? node.span),
    );
  }
  if (picked === undefined) {
    diagnostics.push(
      error(
        'variant',
        `no value is given for ${variant.name}`,
        node.span,
        'add the missing `axis=value`, or `else`',
      ),
    );
    return { kind: 'text', text: '', span: node.span };
  }
  choosing.picked.push(picked);
  return choose(picked.value, choosing, path);
}

/** Whether `axis=value`, `axis=value|other` or several of these with spaces hold for a variant. */
function holds(
  condition: string,
  { variant, axes, diagnostics }: Pick<Choosing, 'variant' | 'axes' | 'diagnostics'>,
  span: Span | null,
): boolean {
  return condition
    .trim()
    .split(/[\s,]+/)
    .every((one) => {
      const equals = one.indexOf('=');
      const name = one.slice(0, Math.max(0, equals));
      const axis = axes.find((candidate) => candidate.name === name);
      if (axis === undefined) {
        const near = nearestName(
          equals < 0 ? one : name,
          axes.map((candidate) => candidate.name),
        );
        diagnostics.push(
          error(
            'variant',
            `\`${one}\` names no axis of this kit`,
            span,
            near === null ? 'write axis=value' : `did you mean \`${near}\`?`,
          ),
        );
        return false;
      }
      const names = one.slice(equals + 1).split('|');
      for (const value of names) {
        if (axis.values.some((candidate) => candidate.name === value)) continue;
        const near = nearestName(
          value,
          axis.values.map((candidate) => candidate.name),
        );
        diagnostics.push(
          error(
            'variant',
            `\`${name}\` has no value \`${value}\``,
            span,
            near === null ? null : `did you mean \`${near}\`?`,
          ),
        );
      }
      return names.includes(variant.values.get(name) ?? '');
    });
}

function error(code: string, message: string, span: Span | null, help: string | null = null): Diagnostic {
  return { code, severity: 'error', message, span, related: [], help };
}
