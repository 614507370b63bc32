import type { Job, Piece, Position, Wire, Zone } from '../harness/job.ts';
import { onceForLists } from '../harness/once-for-lists.ts';
import type { Rework } from '../rework/rework.ts';
import { bareEnd } from './kit-schema.ts';
import {
  entryOf,
  type Located,
  type LocatedEntry,
  type LocatedMap,
  rowsUnder,
  textOf,
  textsUnder,
} from './located.ts';

/**
 * The harness that a kit leaves, as the stock of a further kit: rows as a person would write them. What the first kit says
 * of a thing is kept; where it is now, and in what state, is as the work left it. Pieces go on under their own names.
 *
 * @param document - the first kit's document for one variant
 * @param rework - its work, all done
 * @returns the section `stock`
 */
export function stockAfter(document: Located, rework: Rework): LocatedMap {
  const sections = ['stock', 'bag'].map((key) => entryOf(document, key));
  const rows = (kind: string): readonly Row[] =>
    sections.flatMap((section) => rowsUnder(section, kind).map((entry) => ({ entry, section })));
  const stock = sections[0] ?? null;
  return mapOf([
    ['supplies', keptRows(rowsUnder(stock, 'supplies'))],
    ['special', mapOf(rowsUnder(stock, 'special').map((entry) => [entry.key, specialRow(entry, rework)]))],
    ['studs', mapOf(rows('studs').map(({ entry, section }) => [entry.key, zoned(entry.value, section)]))],
    ['boundaries', mapOf(rowsUnder(stock, 'boundaries').map(({ key, value }) => [key, zoned(value, stock)]))],
    ['connectors', connectorsOf(rows('connectors'), rework)],
    ...jointsOf(rework),
    ['wires', wiresOf(document, rows('wires'), rework)],
  ]);
}

/** What no stock can say of a harness, in words, or null: such a harness is not finished. */
export function unfinished(rework: Rework): string | null {
  const { job } = rework;
  const jumper = job.joints.find((one, at) => one.kind === 'jumper' && rework.jointState[at] === 'crimped');
  if (jumper !== undefined) return `the jumper \`${jumper.name}\` is still in`;
  const loose = rework.freeEnds().find((end) => rework.endsOf(rework.endTerminal[end] ?? -1).length > 1);
  return loose === undefined
    ? null
    : `the terminal of \`${job.ends[loose]?.name ?? ''}\` holds several wires and is loose`;
}

interface Row {
  readonly entry: LocatedEntry;
  readonly section: Located | null;
}

type Pairs = readonly (readonly [string, Located | string | null])[];

/** A map of values; a text stands for itself, null for nothing. */
function mapOf(pairs: Pairs, span: LocatedMap['span'] = null): LocatedMap {
  return { kind: 'map', entries: new Map(entriesOf(pairs)), span };
}

function entriesOf(pairs: Pairs): readonly (readonly [string, LocatedEntry])[] {
  return pairs.flatMap(([key, value]) => {
    if (value === null) return [];
    const node = typeof value === 'string' ? textOf(value) : value;
    return [[key, { key, keySpan: node.span, value: node }] as const];
  });
}

/** A row with some keys replaced, or taken away where the new value is null. */
function changed(row: Located, pairs: Pairs): Located {
  if (row.kind !== 'map') return row;
  const entries = new Map(row.entries);
  for (const [key] of pairs) entries.delete(key);
  entries.delete('only');
  for (const [key, entry] of entriesOf(pairs)) entries.set(key, entry);
  return { ...row, entries };
}

function keptRows(rows: readonly LocatedEntry[]): LocatedMap {
  return mapOf(rows.map(({ key, value }) => [key, changed(value, [])]));
}

/** A row that says its zone itself, since stock and bag may have had different ones. */
function zoned(row: Located, section: Located | null): Located {
  return changed(row, [['zone', entryOf(row, 'zone') ?? entryOf(section, 'zone')]]);
}

function listOf(texts: readonly string[]): Located | null {
  return texts.length === 0 ? null : { kind: 'list', items: texts.map((text) => textOf(text)), span: null };
}

function specialRow({ value }: LocatedEntry, rework: Rework): Located {
  const { job } = rework;
  const names = new Set(textsUnder(value, 'wires').map(({ text }) => text));
  const pieces = job.pieces.filter(
    ({ wire }, index) => rework.pieceThere[index] === 1 && names.has(job.wires[wire]?.name ?? ''),
  );
  return changed(value, [['wires', listOf(pieces.map(({ name }) => name)) ?? entryOf(value, 'wires')]]);
}

function connectorsOf(rows: readonly Row[], rework: Rework): LocatedMap {
  const { job } = rework;
  const indexes = new Map(job.connectors.map(({ name }, index) => [name, index]));
  const nameOf = (connector: number): string => job.connectors[connector]?.name ?? '';
  const saidBy = new Map<number, number>();
  for (const { entry } of rows) {
    const own = indexes.get(entry.key) ?? -1;
    const into = entryOf(entry.value, 'into');
    const other = rework.counterpart[own] ?? -1;
    if (other >= 0 && into?.kind === 'text' && into.text === nameOf(other)) {
      saidBy.set(own, own);
      saidBy.set(other, own);
    }
  }
  return mapOf(
    rows.map(({ entry, section }) => {
      const own = indexes.get(entry.key) ?? -1;
      const other = rework.counterpart[own] ?? -1;
      // Of a new pair the half that comes first says so, with its cavities as they face each other now.
      const isNew = other >= 0 && saidBy.get(own) === undefined && own < other;
      const says = saidBy.get(own) === own || isNew;
      return [
        entry.key,
        changed(zoned(entry.value, section), [
          ['into', isNew ? nameOf(other) : says ? entryOf(entry.value, 'into') : null],
          ['pairing', isNew ? pairingOf(own, rework) : says ? entryOf(entry.value, 'pairing') : null],
          ['plugged', says && rework.plugged[own] === false ? 'no' : null],
          ['lock', rework.lock[own] ?? null],
          ['latch', rework.latch[own] ?? null],
          [
            'blanked',
            listOf(
              placesOf(own, job).flatMap((place) =>
                rework.plug.at(place) == null ? [] : [labelOf(place, job)],
              ),
            ),
          ],
          ['elements', elementsOf(entry.value, own, rework)],
        ]),
      ];
    }),
  );
}

function placesOf(connector: number, job: Job): readonly number[] {
  const { firstPlace = 0, placeCount = 0 } = job.connectors[connector] ?? {};
  return Array.from({ length: placeCount }, (_, at) => firstPlace + at);
}

function labelOf(place: number, job: Job): string {
  return job.places[place]?.label ?? '';
}

function pairingOf(connector: number, rework: Rework): Located {
  return mapOf(
    placesOf(connector, rework.job).flatMap((place) => {
      const other = rework.facing[place] ?? -1;
      return other < 0 ? [] : [[labelOf(place, rework.job), labelOf(other, rework.job)] as const];
    }),
  );
}

function elementsOf(row: Located, connector: number, rework: Rework): Located | null {
  const list = entryOf(row, 'elements');
  if (list?.kind !== 'list') return list;
  const { job } = rework;
  const own = job.elements.flatMap((element, index) => (element.connector === connector ? [index] : []));
  const items = list.items.map((item, at) => {
    const index = own[at] ?? -1;
    const element = job.elements[index];
    if (element?.kind !== 'fuse') return item;
    const part = job.parts.get(rework.fuseFittedPart.get(index) ?? '');
    const rating = part?.is === 'fuse' && part.ratingAmps !== null ? `${part.ratingAmps} A` : null;
    const isOther = rework.fuseFitted[index] === true && part !== undefined;
    return changed(item, [
      ['fitted', rework.fuseFitted[index] === true ? 'yes' : 'no'],
      ['rating', isOther ? rating : entryOf(item, 'rating')],
    ]);
  });
  return { ...list, items };
}

/** The splices and taps that are there, and the wounds that taps left. */
function jointsOf(rework: Rework): Pairs {
  const { job } = rework;
  const splices: (readonly [string, Located])[] = [];
  const taps: (readonly [string, Located])[] = [];
  for (const [index, joint] of job.joints.entries()) {
    const state = rework.jointState[index];
    const zone = joint.zone === 'unknown' ? null : joint.zone;
    if (joint.kind === 'splice' && (state === 'crimped' || state === 'sealed')) {
      const sealed = state === 'sealed' ? 'yes' : 'no';
      splices.push([
        joint.name,
        mapOf([
          ['with', joint.part],
          ['sealed', sealed],
          ['zone', zone],
        ]),
      ]);
    }
    if (joint.kind !== 'tap' || state === 'absent' || state === 'removed') continue;
    const piece = job.pieces[rework.tapPiece[index] ?? -1];
    if (piece === undefined) continue;
    taps.push([
      joint.name,
      mapOf([
        ['on', piece.name],
        ['at', markOf(piece, joint.node, rework)],
        ['with', joint.part],
        ['zone', zone],
        [
          'cover',
          state === 'covered wound' ? rework.jointCover.at(index) : state === 'wound' ? bareEnd : null,
        ],
      ]),
    ]);
  }
  return [
    ['splices', mapOf(splices)],
    ['taps', mapOf(taps)],
  ];
}

/** Where a node lies on a piece, measured from whichever end of the piece the distance is known to. */
function markOf(piece: Piece, node: number, rework: Rework): string {
  const { job } = rework;
  const mark = job.positions.get(node) ?? null;
  for (const end of piece.ends) {
    const distance = between(mark, positionOfEnd(end, job), job.wires[piece.wire]);
    if (distance !== null) return `${distance} mm from ${homeNow(piece, end, rework)}`;
  }
  return '';
}

function positionOfEnd(end: number, job: Job): Position | null {
  const there = job.ends[end];
  if (there === undefined) return null;
  if (there.home.kind === 'cut') return job.positions.get(there.node) ?? null;
  return { fromEnd: job.wires[there.wire]?.ends[0] === end ? 0 : 1, mm: 0 };
}

/** Millimetres of wire between two positions, or null where the length of the wire would have to be known. */
function between(a: Position | null, b: Position | null, wire: Wire | undefined): number | null {
  if (a === null || b === null) return null;
  const whole = wire?.lengthMm ?? null;
  if (a.fromEnd === b.fromEnd) return rounded(Math.abs(a.mm - b.mm));
  return whole === null ? null : rounded(whole - a.mm - b.mm);
}

/** To a millionth of a millimetre, as lengths are read. */
function rounded(mm: number): number {
  return Math.round(mm * 1e6) / 1e6;
}

/** What stands in `from` or `to` of a piece: where its end is now, or for a loose end a name of its own. */
function homeNow(piece: Piece, end: number, rework: Rework): string {
  const { job } = rework;
  const joint = rework.endJoint[end] ?? -1;
  if (joint >= 0) return job.joints[joint]?.name ?? '';
  const place = rework.terminalPlace[rework.endTerminal[end] ?? -1] ?? -1;
  if (place >= 0) return job.places[place]?.address ?? '';
  const name = looseName(end, rework);
  // Both ends may be cut, and each must have a name of its own.
  const [first, second] = piece.ends;
  const isSame = end === second && rework.isFree(first) && looseName(first, rework) === name;
  return isSame ? `other ${name}` : name;
}

/** Addresses and joints, which no loose end may be called like. */
const pointNames = onceForLists(
  ({ places, joints }): ReadonlySet<string> =>
    new Set([...places.map(({ address }) => address), ...joints.map(({ name }) => name)]),
);

/** An end that left its place keeps the words of its home, without the colon of an address. */
function looseName(end: number, { job }: Rework): string {
  const there = job.ends[end];
  const home = (there?.name.slice(there.name.indexOf('@') + 1) ?? '').replaceAll(':', ' ');
  const taken = pointNames(job);
  let name = there?.home.kind === 'cut' ? 'cut' : home;
  while (taken.has(name)) name = `${name} end`;
  return name;
}

function wiresOf(document: Located, rows: readonly Row[], rework: Rework): LocatedMap {
  const { job } = rework;
  const byName = new Map(rows.map((row) => [row.entry.key, row]));
  const defaults = entryOf(document, 'electrical');
  return mapOf(
    job.pieces.flatMap((piece, index) => {
      const row = byName.get(job.wires[piece.wire]?.name ?? '');
      if (rework.pieceThere[index] !== 1 || row === undefined) return [];
      const isWhole = index < job.wires.length;
      const { value } = row.entry;
      const length = isWhole ? null : lengthOf(piece, job);
      const kept = (key: string): Located | null => entryOf(value, key) ?? entryOf(defaults, key);
      return [
        [
          piece.name,
          changed(zoned(value, row.section), [
            ...(['from', 'to'] as const).flatMap((side, at) =>
              endOf(piece, side, piece.ends[at] ?? 0, rework),
            ),
            ...(isWhole ? [] : [['length', length === null ? null : `${length} mm`] as const]),
            ['zone', zoneOf(piece, row, rework)],
            ['material', kept('material')],
            ['strands', kept('strands')],
            ['temperature', kept('temperature')],
            ['insulation rating', kept('insulation rating')],
          ]),
        ] as const,
      ];
    }),
  );
}

function lengthOf(piece: Piece, job: Job): number | null {
  const [a, b] = piece.ends.map((end) => positionOfEnd(end, job));
  return between(a ?? null, b ?? null, job.wires[piece.wire]);
}

/** The zone that a cut said of the end that it left counts for the whole piece where it is the worse one. */
function zoneOf(piece: Piece, row: Row, rework: Rework): Located | string | null {
  const said = rework.job.steps.flatMap(({ action }): readonly Zone[] =>
    action.kind === 'cut' && action.newEnds.some((end) => piece.ends.includes(end)) ? [action.zone] : [],
  );
  const own = entryOf(row.entry.value, 'zone') ?? entryOf(row.section, 'zone');
  if (said.includes('wet')) return 'wet';
  return own ?? (said.includes('dry') ? 'dry' : null);
}

function endOf(piece: Piece, side: 'from' | 'to', end: number, rework: Rework): Pairs {
  const { job } = rework;
  const terminal = rework.endTerminal[end] ?? -1;
  return [
    [side, homeNow(piece, end, rework)],
    [`${side} terminal`, job.terminals[terminal]?.part ?? null],
    [`${side} seal`, rework.endSeal.at(end)],
    [`${side} strip`, null],
    [`${side} cover`, rework.isFree(end) ? (rework.endCover.at(end) ?? bareEnd) : null],
  ];
}
