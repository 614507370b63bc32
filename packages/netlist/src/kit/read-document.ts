import type { Document, Node } from 'yaml';
import { isAlias, isMap, isPair, isScalar, isSeq, parseAllDocuments } from 'yaml';
import type { Diagnostic, Source, Span } from '../text/index.ts';
import { kitLimits } from './limits.ts';
import type { Located, LocatedEntry } from './located.ts';

/** What reading gives: a value or null, and every complaint at once. */
export interface Reading<T> {
  readonly value: T | null;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads YAML (or JSON, which is YAML) to located values. Every scalar keeps its source text, because YAML readers turn
 * `3:10`, `01`, `1.10` and `on` into something else. Anchors, aliases and tags are refused: every name is written once.
 * Never throws on bad input.
 */
export function readDocument(source: Source): Reading<Located> {
  const diagnostics: Diagnostic[] = [];
  const complain = (code: string, message: string, span: Span | null, help: string | null = null): void => {
    diagnostics.push({ code, severity: 'error', message, span, related: [], help });
  };
  const whole: Span = { source, start: 0, end: Math.min(1, source.text.length) };
  if (source.text.length > kitLimits.characters || countLines(source.text) > kitLimits.lines) {
    complain(
      'file-too-large',
      `a kit file holds at most ${kitLimits.characters} characters and ${kitLimits.lines} lines`,
      whole,
      'put long wire lists into a CSV file beside it and name it under `wire table`',
    );
    return { value: null, diagnostics };
  }
  const control = unwantedControl(source.text);
  if (control >= 0) {
    complain('control-character', 'control character in the file', {
      source,
      start: control,
      end: control + 1,
    });
    return { value: null, diagnostics };
  }
  if (nestsDeeperThan(source.text, kitLimits.depth * 4)) {
    complain('nested-too-deep', 'brackets are nested too deep for a kit file', whole);
    return { value: null, diagnostics };
  }
  let documents: readonly Document.Parsed[];
  try {
    const parsed = parseAllDocuments(source.text, {
      schema: 'failsafe',
      uniqueKeys: false,
      prettyErrors: false,
      logLevel: 'silent',
    });
    documents = Array.isArray(parsed) ? parsed : [];
  } catch (failure) {
    // The parser is recursive inside; only its stack overflow may be read as bad input.
    if (!(failure instanceof RangeError)) throw failure;
    complain('nested-too-deep', 'the file is nested too deep to be read', whole);
    return { value: null, diagnostics };
  }
  const document = documents[0];
  for (const one of documents) {
    for (const error of [...one.errors, ...one.warnings]) {
      const [start, end] = error.pos;
      const span = { source, start, end: Math.max(end, start + 1) };
      // The parser catches its own stack overflow and lists it as if the text were at fault.
      if (/call stack/i.test(error.message)) {
        complain('nested-too-deep', 'the file is nested too deep to be read', whole);
        return { value: null, diagnostics: diagnostics.slice(-1) };
      }
      if (error.code === 'TAG_RESOLVE_FAILED') complain('tag', 'YAML tags are not read', span);
      else complain('yaml', error.message.split('\n')[0] ?? error.message, span);
    }
  }
  if (diagnostics.length > 0) return { value: null, diagnostics };
  if (document === undefined || document.contents === null) {
    complain('empty-file', 'the file holds nothing', whole, 'a kit file begins with `kit:` and `revision:`');
    return { value: null, diagnostics };
  }
  if (documents.length > 1) complain('many-documents', 'the file holds more than one document', whole);
  const value = convert(document.contents, source, 0, complain);
  return { value: diagnostics.length > 0 ? null : value, diagnostics };
}

/** What YAML and JSON write for no value. As a text it would be a name that no editor takes for one. */
const nothing = /^(?:~|null|Null|NULL)$/;

type Complain = (code: string, message: string, span: Span | null, help?: string | null) => void;

/** Depth is bounded by `kitLimits.depth`, so this recursion is over the form of a file and not over a graph. */
function convert(node: Node | null, source: Source, depth: number, complain: Complain): Located {
  const range = node?.range ?? [0, 0, 0];
  const span: Span = { source, start: range[0], end: Math.max(range[1], range[0]) };
  if (depth > kitLimits.depth) {
    complain('nested-too-deep', 'nested too deep for a kit file', span);
    return { kind: 'text', text: '', span };
  }
  if (isAlias(node)) {
    complain('alias', 'YAML aliases are not read', span, 'write the value where it is used');
    return { kind: 'text', text: '', span };
  }
  if (node !== null && 'anchor' in node && node.anchor) complain('alias', 'YAML anchors are not read', span);
  // A scalar has a tag only where one is written; a list or map always has that of its kind.
  if (node?.tag !== undefined && (isScalar(node) || !/^tag:yaml\.org,2002:(map|seq)$/.test(node.tag))) {
    complain('tag', 'YAML tags are not read', span);
  }
  if (isScalar(node)) {
    const text = typeof node.value === 'string' ? node.value : (node.source ?? '');
    if (node.type === 'PLAIN' && nothing.test(text)) {
      complain(
        'nothing',
        `\`${text}\` says that there is nothing`,
        span,
        'leave the key out; where it is a name, write it in quotes',
      );
    }
    return { kind: 'text', text, span };
  }
  if (isSeq(node)) {
    const items = node.items.map((item) => convert(item as Node | null, source, depth + 1, complain));
    return { kind: 'list', items, span };
  }
  const entries = new Map<string, LocatedEntry>();
  if (isMap(node)) {
    for (const pair of node.items) {
      if (!isPair(pair)) continue;
      const keyNode = pair.key as Node | null;
      const keyRange = keyNode?.range ?? range;
      const keySpan: Span = { source, start: keyRange[0], end: Math.max(keyRange[1], keyRange[0]) };
      if (!isScalar(keyNode)) {
        complain('key', 'a key must be plain text', keySpan);
        continue;
      }
      const key = typeof keyNode.value === 'string' ? keyNode.value : String(keyNode.source ?? '');
      const earlier = entries.get(key);
      if (earlier !== undefined) {
        complain('written-twice', `\`${key}\` is written twice`, keySpan, 'every name is written once');
        continue;
      }
      const value = convert((pair.value ?? null) as Node | null, source, depth + 1, complain);
      entries.set(key, {
        key,
        keySpan,
        value: value.span?.start === 0 && value.span.end === 0 ? blank(keySpan) : value,
      });
    }
  }
  return { kind: 'map', entries, span };
}

function blank(span: Span): Located {
  return { kind: 'text', text: '', span };
}

function countLines(text: string): number {
  let count = 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** Index of the first control character that has no place in a text file, or -1. */
function unwantedControl(text: string): number {
  return text.search(/[^\t\n\r -~\u0080-\uffff]/);
}

/** A cheap look at flow brackets before the recursive parser sees them; quotes are ignored on purpose. */
function nestsDeeperThan(text: string, limit: number): boolean {
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 91 || code === 123) {
      depth += 1;
      if (depth > limit) return true;
    } else if (code === 93 || code === 125) depth = Math.max(0, depth - 1);
  }
  return false;
}
