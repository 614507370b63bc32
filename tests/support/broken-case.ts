import { posix } from 'node:path';
import type { Located } from '../../packages/netlist/src/kit/located.ts';
import { entryOf, itemsUnder, textUnder } from '../../packages/netlist/src/kit/located.ts';
import { readDocument } from '../../packages/netlist/src/kit/read-document.ts';
import { readFixture } from './fixture-folder.ts';

/**
 * One seeded mistake, as a small patch on a kit that proves without it. Each text that a change looks for occurs
 * exactly once in the kit as it stands; all changes are found before any is made, so two texts can be exchanged.
 */
export interface BrokenCase {
  readonly name: string;
  /** Path of the kit below the fixtures. */
  readonly kit: string;
  /** What went wrong, in a sentence. */
  readonly why: string;
  readonly changes: readonly Change[];
  readonly verdict: string;
  readonly findings: readonly ExpectedFinding[];
}

/** `put` replaces the text, `drop` takes its whole line out, `below` adds a line under its line, as far to the right. */
export type Change =
  | { readonly is: 'put'; readonly find: string; readonly put: string }
  | { readonly is: 'drop'; readonly find: string }
  | { readonly is: 'below'; readonly find: string; readonly add: string };

/** A finding that the case must give, in one variant or, where none is named, in each. */
export interface ExpectedFinding {
  readonly kind: string;
  readonly obligation: number;
  readonly step: number | null;
  readonly variant: string | null;
}

/** Reads `broken/NAME/case.yaml`; a case that is not well formed is an error of the tests. */
export function readBrokenCase(name: string): BrokenCase {
  const path = `broken/${name}/case.yaml`;
  const read = readDocument(readFixture(path));
  if (read.value === null) throw new Error(`${path}: ${read.diagnostics[0]?.message ?? 'cannot be read'}`);
  const said = (node: Located | null, key: string): string => {
    const text = textUnder(node, key)?.text;
    if (text === undefined || text === '') throw new Error(`${path}: \`${key}\` is missing`);
    return text;
  };
  const expect = entryOf(read.value, 'expect');
  return {
    name,
    kit: posix.join('broken', name, said(read.value, 'kit')),
    why: said(read.value, 'why'),
    changes: itemsUnder(read.value, 'change').map(changeOf),
    verdict: said(expect, 'verdict'),
    findings: itemsUnder(expect, 'findings').map((row) => ({
      kind: said(row, 'kind'),
      obligation: Number(said(row, 'obligation')),
      step: said(row, 'step') === 'none' ? null : Number(said(row, 'step')),
      variant: textUnder(row, 'in')?.text ?? null,
    })),
  };
}

/** Reads a change; one that says nothing known finds the empty text, which no kit holds exactly once. */
export function changeOf(row: Located): Change {
  const text = (key: string): string => textUnder(row, key)?.text ?? '';
  if (text('drop') !== '') return { is: 'drop', find: text('drop') };
  if (text('below') !== '') return { is: 'below', find: text('below'), add: text('add') };
  return { is: 'put', find: text('find'), put: text('put') };
}

/** The kit's text with the mistake in it. */
export function breakKit(text: string, { name, changes }: Pick<BrokenCase, 'name' | 'changes'>): string {
  const edits = changes.map((change) => editOf(text, change, name)).sort((a, b) => a.start - b.start);
  let broken = '';
  let done = 0;
  for (const { start, end, text: replacement } of edits) {
    if (start < done) throw new Error(`${name}: two changes touch the same text`);
    broken += text.slice(done, start) + replacement;
    done = end;
  }
  return broken + text.slice(done);
}

function editOf(text: string, change: Change, name: string): { start: number; end: number; text: string } {
  const start = text.indexOf(change.find);
  if (start < 0 || text.indexOf(change.find, start + 1) >= 0)
    throw new Error(`${name}: \`${change.find}\` occurs ${start < 0 ? 'nowhere' : 'more than once'}`);
  if (change.is === 'put') return { start, end: start + change.find.length, text: change.put };
  const lineStart = text.lastIndexOf('\n', start) + 1;
  const lineEnd = text.indexOf('\n', start) + 1;
  if (change.is === 'drop') return { start: lineStart, end: lineEnd, text: '' };
  const indent = /^ */.exec(text.slice(lineStart))?.[0] ?? '';
  return { start: lineEnd, end: lineEnd, text: `${indent}${change.add}\n` };
}

/** The kinds of rework step in the lines that a case changes. */
export function stepKindsChanged(text: string, { changes }: Pick<BrokenCase, 'changes'>): readonly string[] {
  const lines = changes.flatMap((change) => {
    const start = text.lastIndexOf('\n', text.indexOf(change.find)) + 1;
    const line = text.slice(start, text.indexOf('\n', start));
    const lastLine = change.find.slice(change.find.lastIndexOf('\n') + 1);
    return change.is === 'below' ? [change.add] : [line, lastLine];
  });
  return lines.flatMap((line) => /\bdo: ([a-z -]+?)(?=,| })/.exec(line)?.[1] ?? []);
}
