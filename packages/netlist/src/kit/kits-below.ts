import { Rework } from '../rework/rework.ts';
import { type Diagnostic, makeDiagnostic, type Source } from '../text/index.ts';
import { meetsCondition } from './choose-variant.ts';
import type { TableLoader } from './embed-tables.ts';
import { inputDigest } from './input-digest.ts';
import type { KitBelow, KitFile, KitVariant } from './kit-file.ts';
import { kitLimits } from './limits.ts';
import {
  entryOf,
  type Located,
  type LocatedText,
  rowsUnder,
  textsBelow,
  textsUnder,
  textUnder,
  withEntry,
} from './located.ts';
import type { Reading } from './read-document.ts';
import { stockAfter, unfinished } from './stock-after.ts';

/** A document with its stock in place, and the kit that this is from. */
export interface Stood {
  readonly document: Located;
  readonly below: KitBelow | null;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads a kit file that a kit stands on. */
export type ReadBelow = (source: Source, load: TableLoader, chain: readonly string[]) => Reading<KitFile>;

interface Sections {
  readonly stock: Located;
  readonly parts: Located | null;
  /** Why nothing can stand on it, or null. */
  readonly lacks: string | null;
}

interface Opened {
  readonly kit: KitFile | null;
  readonly digest: string;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The kits that a document may stand on, in any of its variants: each file is read once, with all that it stands on itself,
 * and its work is done once for each variant that is stood on.
 */
export class KitsBelow {
  readonly #load: TableLoader;
  readonly #read: ReadBelow;
  readonly #chain: readonly string[];
  readonly #opened = new Map<string, Opened>();
  readonly #sections = new Map<KitVariant, Sections>();

  /**
   * @param load - gives files by the names that the document uses
   * @param read - reads a kit file
   * @param chain - the kits on the way here, the topmost first
   */
  constructor(load: TableLoader, read: ReadBelow, chain: readonly string[]) {
    this.#load = load;
    this.#read = read;
    this.#chain = chain;
  }

  /** The stock sections of every kit that the document names, for whoever must know which names there are. */
  stocksOf(document: Located): readonly Located[] {
    const names = new Set(kitsNamed(entryOf(document, 'before')).map((node) => node.text));
    return [...names].flatMap((name) =>
      (this.#open(name)?.kit?.variants ?? []).map((variant) => this.#sectionsOf(variant).stock),
    );
  }

  /** The document of one variant with the harness that the kit below leaves as its stock; as it is where it names none. */
  stand(document: Located): Stood {
    const diagnostics: Diagnostic[] = [];
    const complain = (
      code: string,
      message: string,
      at: Located | null,
      help: string | null = null,
    ): void => {
      diagnostics.push(makeDiagnostic({ code, message, span: at?.span ?? null, help }));
    };
    const before = entryOf(document, 'before');
    const [name, digest] = [textUnder(before, 'kit'), textUnder(before, 'digest')];
    const isNamed = before !== null && name !== null && digest !== null;
    const refused = (): Stood => ({ document, below: null, diagnostics });
    // A stock of its own beside it is complained of as a matter of form.
    if (!isNamed || entryOf(document, 'stock') !== null) return refused();
    const file = joined('', name.text);
    if (this.#chain.includes(file)) {
      complain('before-cycle', `\`${name.text}\` stands on itself`, name, chainWords([...this.#chain, file]));
      return refused();
    }
    if (this.#chain.length >= kitLimits.kitsBelow) {
      complain(
        'before-depth',
        `at most ${kitLimits.kitsBelow} kits stand on each other`,
        name,
        chainWords([...this.#chain, file]),
      );
      return refused();
    }
    const opened = this.#open(name.text);
    if (opened === null) {
      complain(
        'no-kit',
        `the kit file \`${name.text}\` cannot be read`,
        name,
        'name a kit file beside this one',
      );
      return refused();
    }
    diagnostics.push(...opened.diagnostics);
    if (!isDigest(digest.text)) {
      complain(
        'before-digest',
        `\`${digest.text}\` is no digest`,
        digest,
        'write the 12 or 64 digits that `loomproof prove` prints for that kit',
      );
    } else if (!opened.digest.startsWith(digest.text.toLowerCase())) {
      complain(
        'before-digest',
        `\`${name.text}\` is not the kit that is meant: its digest is ${opened.digest.slice(0, Math.max(12, digest.text.length))}, and ${digest.text} is asked for`,
        digest,
        'prove that kit as it is now, see that this one still fits it, and write its new digest',
      );
    }
    if (opened.kit === null) {
      complain('before-unusable', `\`${name.text}\` cannot be used, so nothing stands on it`, name);
      return refused();
    }
    const variant = this.#variantOf(opened.kit, before, name, complain);
    if (variant === null) return refused();
    const { stock, parts, lacks } = this.#sectionsOf(variant);
    if (lacks !== null) {
      complain('before-unusable', `\`${name.text}\` leaves no finished harness: ${lacks}`, name);
      return refused();
    }
    for (const { key, keySpan } of rowsUnder(document, 'parts')) {
      if (entryOf(parts, key) !== null)
        diagnostics.push(
          makeDiagnostic({
            code: 'written-twice',
            message: `the part \`${key}\` is known from \`${name.text}\` already`,
            span: keySpan,
            help: 'every name is written once: take it out here',
          }),
        );
    }
    const merged = mergedParts(parts, entryOf(document, 'parts'));
    const withStock = withEntry(document, ['stock'], stock);
    return {
      document: merged === null ? withStock : withEntry(withStock, ['parts'], merged),
      below: { file, kit: opened.kit, variant, span: name.span },
      diagnostics,
    };
  }

  #variantOf(
    kit: KitFile,
    before: Located,
    name: LocatedText,
    complain: (code: string, message: string, at: Located | null, help?: string | null) => void,
  ): KitVariant | null {
    const conditions = textsUnder(before, 'variant').flatMap((node) =>
      node.text.split(/[\s,]+/).filter((one) => one !== ''),
    );
    const found = kit.variants.filter(({ variant }) =>
      conditions.every((condition) => meetsCondition(variant, condition)),
    );
    const [only] = found;
    if (only !== undefined && found.length === 1) return only;
    complain(
      'before-variant',
      found.length === 0
        ? `\`${name.text}\` has no variant \`${conditions.join(' ')}\``
        : `\`${name.text}\` has ${found.length} such variants, and this kit stands on one`,
      entryOf(before, 'variant') ?? name,
      `say which under \`variant\`: ${kit.variants
        .map(({ variant }) => variant.name)
        .slice(0, 8)
        .join(', ')}`,
    );
    return null;
  }

  #sectionsOf(variant: KitVariant): Sections {
    const known = this.#sections.get(variant);
    if (known !== undefined) return known;
    const document: Located = variant.document ?? { kind: 'map', entries: new Map(), span: null };
    const rework = new Rework(variant.job);
    for (const step of variant.job.steps) rework.apply(step);
    const made = {
      stock: stockAfter(document, rework),
      parts: entryOf(document, 'parts'),
      lacks: unfinished(rework),
    };
    this.#sections.set(variant, made);
    return made;
  }

  #open(name: string): Opened | null {
    const file = joined('', name);
    const known = this.#opened.get(file);
    if (known !== undefined) return known;
    if (this.#chain.includes(file) || this.#chain.length >= kitLimits.kitsBelow) return null;
    const source = this.#load(name);
    if (source === null) return null;
    const folder = file.slice(0, file.lastIndexOf('/') + 1);
    const files = new Map<string, string>();
    const load: TableLoader = (inner) => {
      const found = this.#load(joined(folder, inner));
      if (found !== null) files.set(inner, found.text);
      return found;
    };
    // Names lead into the own folder and below, so what lies outside cannot be met again.
    const chain = [...this.#chain, file].map((one) =>
      one.startsWith(folder) ? one.slice(folder.length) : `../${one}`,
    );
    const { value, diagnostics } = this.#read(source, load, chain);
    const opened = { kit: value, digest: inputDigest(source.text, files), diagnostics };
    this.#opened.set(file, opened);
    return opened;
  }
}

/** Every name of a kit under `before`, whichever variant it is for; the form of a kit file bounds the depth. */
function kitsNamed(node: Located | null): readonly LocatedText[] {
  if (node?.kind !== 'map') return [];
  return [...node.entries.values()].flatMap(({ key, value }) =>
    key === 'kit' ? textsBelow(value) : kitsNamed(value),
  );
}

/** A name within a folder without the `.` of those who write `./a.yaml`. */
function joined(folder: string, name: string): string {
  return [...folder.split('/'), ...name.split(/[/\\]/)].filter((one) => one !== '' && one !== '.').join('/');
}

function chainWords(chain: readonly string[]): string {
  return `the way here: ${chain.map((one) => `\`${one}\``).join(', ')}`;
}

function isDigest(text: string): boolean {
  return /^(?:[0-9a-f]{12}|[0-9a-f]{64})$/i.test(text);
}

function mergedParts(below: Located | null, own: Located | null): Located | null {
  if (below?.kind !== 'map') return own;
  if (own === null) return below;
  if (own.kind !== 'map') return own;
  return { ...own, entries: new Map([...below.entries, ...own.entries]) };
}
