import type { Edge, GridFace } from './face.ts';
import type { FaceForm } from './face-schema.ts';
import type { BlockScheme, FaceScheme, LabelStyle } from './face-scheme.ts';
import { defaultSkippedLetters } from './label-series.ts';

type BlockForm = NonNullable<FaceForm['blocks']>[number];

const bodies = ['rows', 'blocks', 'written', 'round', 'rings'] as const;
const numberingKeys = [
  'columns',
  'count',
  'labels',
  'first',
  'start',
  'blocked',
  'blocked positions',
  'skip',
] as const;
const firstLabels: Readonly<Record<LabelStyle, string>> = {
  numbers: '1',
  letters: 'A',
  'row letters': 'A1',
  'column letters': 'A1',
};

/** The keys that go with each body; any other key beside it would be silently without effect, so it is refused. */
const companions: Readonly<Record<(typeof bodies)[number], readonly string[]>> = {
  rows: numberingKeys,
  blocks: ['stand'],
  written: [],
  round: [],
  rings: ['turn', 'labels', 'first', 'skip'],
};

/** The scheme that a `face` entry states, or null with the problems. */
export function readScheme(form: FaceForm, problems: string[]): FaceScheme | null {
  const given = bodies.filter((key) => form[key] !== undefined);
  const [body] = given;
  if (body === undefined || given.length > 1) {
    const found = given.length === 0 ? 'no cavities are given' : `${given.join(' and ')} are given together`;
    problems.push(`${found}: expected one of rows and columns, blocks, written, round, rings`);
    return null;
  }
  for (const key of [...numberingKeys, 'stand', 'turn'] as const) {
    if (form[key] !== undefined && !companions[body].includes(key)) {
      problems.push(`\`${key}\` means nothing beside \`${body}\`: leave it out`);
    }
  }
  const scheme =
    body === 'round' || body === 'rings' ? readRound(form, body, problems) : readGrid(form, body, problems);
  return problems.length === 0 ? scheme : null;
}

function readRound(form: FaceForm, body: 'round' | 'rings', problems: string[]): FaceScheme {
  if (form.latch !== undefined || form.key !== undefined) {
    problems.push("a round face has its key at 12 o'clock: leave out `latch` and `key`");
  }
  const seenFrom = form['seen from'];
  if (body === 'round') return { kind: 'written round', seenFrom, rings: listOf(form.round) };
  const labels = form.labels ?? 'numbers';
  if (labels !== 'numbers' && labels !== 'letters')
    problems.push(`rings have no ${labels}: expected numbers or letters`);
  const kind = labels === 'letters' ? 'letters' : 'numbers';
  return {
    kind: 'even round',
    seenFrom,
    rings: listOf(form.rings),
    turn: form.turn ?? 'clockwise',
    labels: kind,
    first: form.first ?? firstLabels[kind],
    skip: readSkip(form.skip, problems),
  };
}

function readGrid(form: FaceForm, body: 'rows' | 'blocks' | 'written', problems: string[]): FaceScheme {
  const frame = { seenFrom: form['seen from'], ...readMark(form, problems) };
  if (body === 'written') return { kind: 'written', ...frame, rows: listOf(form.written) };
  const blocks = body === 'rows' ? [form] : (form.blocks ?? []);
  if (blocks.length === 0)
    problems.push('`blocks` is empty: expected at least one block with rows and columns');
  return {
    kind: 'blocks',
    ...frame,
    blocks: blocks.map((block) => readBlock(block, problems)),
    stand: form.stand ?? 'side by side',
  };
}

function readMark(form: FaceForm, problems: string[]): Pick<GridFace, 'mark'> & { readonly edge: Edge } {
  if (form.latch !== undefined && form.key !== undefined) {
    problems.push('both `latch` and `key` are given: expected the one by which a person turns the face');
  }
  if (form.latch !== undefined) return { mark: 'latch', edge: form.latch };
  if (form.key === undefined) {
    problems.push(
      'it is not said how the face is turned: expected `latch` (or `key`) with top, bottom, left or right',
    );
  }
  return { mark: 'key', edge: form.key ?? 'top' };
}

function readBlock(block: BlockForm, problems: string[]): BlockScheme {
  const labels = block.labels ?? 'numbers';
  const lettered = labels === 'row letters' || labels === 'column letters';
  if (lettered && block.count !== undefined) {
    problems.push(`\`count\` means nothing with ${labels}: leave it out`);
  }
  return {
    rows: readCount('rows', block.rows, problems),
    columns: readCount('columns', block.columns, problems),
    count: block.count ?? 'rows',
    labels,
    first: block.first ?? firstLabels[labels],
    start: block.start ?? 'top left',
    blocked: readBlocked(block.blocked),
    blockedCounted: block['blocked positions'] !== 'not counted',
    skip: readSkip(block.skip, problems),
  };
}

function readCount(key: string, text: string | undefined, problems: string[]): number {
  const count = /^\d{1,5}$/.test(text ?? '') ? Number(text) : 0;
  if (count > 0) return count;
  problems.push(
    `\`${key}\` is ${text === undefined ? 'missing' : `\`${text}\``}: expected a whole number from 1 to 99999`,
  );
  return 1;
}

/** A list, or one text with commas between the entries. */
function readBlocked(texts: string | readonly string[] | undefined): readonly string[] {
  return listOf(texts).flatMap((text) => {
    return text
      .split(',')
      .map((entry) => entry.trim().replace(/\s+/g, ' '))
      .filter((entry) => entry !== '');
  });
}

function readSkip(texts: string | readonly string[] | undefined, problems: string[]): readonly string[] {
  if (texts === undefined) return defaultSkippedLetters;
  const words = listOf(texts).flatMap((text) => text.split(/[\s,]+/).filter((word) => word !== ''));
  if (words.length === 1 && words[0] === 'none') return [];
  for (const word of words) {
    if (!/^[A-Za-z]$/.test(word)) {
      problems.push(`\`${word}\` cannot be left out: expected letters with spaces between them, or none`);
    }
  }
  return words;
}

function listOf(texts: string | readonly string[] | undefined): readonly string[] {
  if (texts === undefined) return [];
  return typeof texts === 'string' ? [texts] : texts;
}
