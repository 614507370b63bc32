import { type Face, type Job, type Rework, viewFrom } from '@loomproof/netlist';
import type { Fate, Strand, StrandPoint } from './circuit-strand.ts';
import { colourPaint } from './colour-paint.ts';
import { type Markup, type MarkupValue, markup } from './markup.ts';
import { jointWords, wireData } from './wire-words.ts';

const lane = 26;
const left = 34;
const lineHeight = 15;
const mostCharacters = 27;
const leastWidth = 330;

interface Row extends StrandPoint {
  readonly depth: number;
  readonly y: number;
  readonly lines: readonly string[];
  readonly wireLines: readonly string[];
  /** Where its wire leaves the bar of its parent, or null when it starts at the parent itself. */
  readonly leaves: number | null;
}

/**
 * A net drawn as a strand that a finger follows downwards: each row a point with the face it is in, between rows the
 * conductor in its own colours, branches one lane to the right. A figure is 330 pixels wide so that it fits a phone, unless its branches go very deep.
 */
export function strandFigure(rework: Rework, strand: Strand, title: string): Markup {
  const rows = layOut(rework, strand);
  const last = rows.at(-1);
  const deepest = Math.max(0, ...rows.map(({ depth }) => depth));
  const width = Math.max(leastWidth, xOf(deepest) + 200);
  const height = (last?.y ?? 0) + Math.max(26, (last?.lines.length ?? 1) * lineHeight + 8);
  return markup`<svg class="strand" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${title}" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">${rows.map((row) => wireOf(rework.job, row, rows))}${rows.map((row) => pointOf(rework, row, width))}</svg>`;
}

function layOut(rework: Rework, { points }: Strand): readonly Row[] {
  const rows: Row[] = [];
  const children = points.map(() => 0);
  for (const { parent } of points) if (parent >= 0) children[parent] = (children[parent] ?? 0) + 1;
  const met = points.map(() => 0);
  let y = 24;
  for (const point of points) {
    const parent = rows[point.parent];
    const count = children[point.parent] ?? 0;
    const nth = (met[point.parent] ?? 0) + 1;
    if (parent !== undefined) met[point.parent] = nth;
    // One wire goes straight on, the first of two steps aside, three or more hang on a bar of their own.
    const depth =
      parent === undefined ? 0 : parent.depth + (count === 1 || (count === 2 && nth === 2) ? 0 : 1);
    const room = Math.max(14, mostCharacters - depth * 3);
    const wireLines = point.piece < 0 ? [] : wrapped(wireText(rework.job, point), room);
    const above = y;
    y += parent === undefined ? 0 : wireLines.length * lineHeight + 26;
    const lines = wrapped(nameOf(rework, point), Math.min(room, roomBesideFace(rework.job, point, depth)));
    rows.push({ ...point, depth, y, lines, wireLines, leaves: count > 2 ? above + 10 : null });
    y += (lines.length - 1) * lineHeight + 8;
  }
  return rows;
}

/** How many letters of a name stand beside the face in little, were all of them as broad as capitals and digits. */
function roomBesideFace(job: Job, { places, again }: StrandPoint, depth: number): number {
  const face = again
    ? undefined
    : places
        .map((place) => job.connectors[job.places[place]?.connector ?? -1]?.face)
        .find((one) => one != null);
  if (face == null) return Number.POSITIVE_INFINITY;
  const broad = face.kind === 'grid' ? (face.width * cellOf(face)) / 2 : 38;
  const width = Math.max(leastWidth, xOf(depth) + 200);
  return Math.max(10, Math.floor((width - xOf(depth) - 20 - broad - 14) / 9.2));
}

function wireText(job: Job, { piece, fate }: StrandPoint): string {
  const { colour, size } = wireData(job, job.pieces[piece]?.wire ?? -1);
  const told: ReadonlyMap<Fate, string> = new Map([
    ['new', 'new'],
    ['gone', 'goes'],
    ['abandoned', 'abandoned'],
  ]);
  const name = job.pieces[piece]?.name ?? '';
  return [name, colour, size, told.get(fate) ?? ''].filter((one) => one !== '').join(', ');
}

function nameOf(rework: Rework, { places, joints, ends, hidden, again }: StrandPoint): string {
  const { job, endCover } = rework;
  const names = [
    ...places.map((place) => job.places[place]?.address ?? ''),
    ...joints.map((joint) => jointWords(rework, joint)),
  ];
  if (places.length === 0 && joints.length === 0)
    names.push(
      ...ends.map(
        (end) =>
          `${job.ends[end]?.name ?? ''}${endCover.at(end) == null ? '' : `, insulated with ${endCover.at(end)}`}`,
      ),
    );
  return `${names.join(' = ')}${hidden > 0 ? ` and ${hidden} more as before` : ''}${again ? ', once more' : ''}`;
}

function wrapped(text: string, most: number): readonly string[] {
  // A name that is too long is parted after a hyphen where it has one.
  const parts = new RegExp(`.{1,${most}}$|.{1,${most}}(?<=-)|.{1,${most}}`, 'gu');
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((one) => one.match(parts) ?? [])) {
    if (line !== '' && line.length + 1 + word.length > most) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

function xOf(depth: number): number {
  return left + depth * lane;
}

function wireOf(job: Job, row: Row, rows: readonly Row[]): MarkupValue {
  const parent = rows[row.parent];
  if (parent === undefined) return null;
  const [x, top, from] = [xOf(row.depth), row.leaves ?? parent.y, xOf(parent.depth)];
  const path =
    row.depth === parent.depth
      ? `M${x} ${top} V${row.y}`
      : row.leaves === null
        ? `M${from} ${top} q0 16 13 16 q13 0 13 16 V${row.y}`
        : `M${from} ${top} h13 q13 0 13 13 V${row.y}`;
  const bar =
    row.leaves === null
      ? null
      : markup`<path d="M${from} ${parent.y} V${top}" class="outline bar-line" stroke-width="4"/>`;
  const codes = job.wires[job.pieces[row.piece]?.wire ?? -1]?.colour?.codes ?? [];
  const wide = row.fate === 'new' ? 9 : row.fate === 'same' ? 5 : 6;
  const dash = row.fate === 'abandoned' || row.fate === 'gone' ? '7 6' : 'none';
  const textTop = row.y - 20 - (row.wireLines.length - 1) * lineHeight;
  return markup`${bar}<path d="${path}" class="outline ${row.fate}" stroke-width="${wide + 3}" stroke-dasharray="${dash}"/><path d="${path}" stroke="${colourPaint(codes[0])}" class="strand-wire" stroke-width="${wide}" stroke-dasharray="${dash}"/>${
    codes[1] === undefined
      ? null
      : markup`<path d="${path}" stroke="${colourPaint(codes[1])}" class="strand-wire" stroke-width="${wide / 2.5}" stroke-dasharray="${dash === 'none' ? '9 5' : dash}"/>`
  }<text class="wire-text ${row.fate}">${row.wireLines.map((line, at) => markup`<tspan x="${x + 16}" y="${textTop + at * lineHeight}">${line}</tspan>`)}</text>`;
}

function pointOf(rework: Rework, row: Row, width: number): MarkupValue {
  const x = xOf(row.depth);
  const text = markup`<text class="point-text">${row.lines.map((line, at) => markup`<tspan x="${x + 20}" y="${row.y + 5 + at * lineHeight}">${line}</tspan>`)}</text>`;
  return markup`${glyph(rework, row, x)}${text}${smallFace(rework.job, row, width)}`;
}

/** A housing with its latch for a cavity, a ring for a stud, a barrel for a splice, a blade for a tap, a cap for an end. */
function glyph(rework: Rework, { places, joints, ends, y, again }: Row, x: number): MarkupValue {
  const { job, endCover } = rework;
  if (again) return markup`<circle cx="${x}" cy="${y}" r="9" class="point" stroke-dasharray="3 3"/>`;
  const place = job.places[places[0] ?? -1];
  if (place?.kind === 'stud')
    return markup`<circle cx="${x}" cy="${y}" r="10" class="point"/><circle cx="${x}" cy="${y}" r="4" class="solid"/>`;
  if (place?.kind === 'boundary')
    return markup`<path d="M${x - 11} ${y - 6} q5 -6 11 0 t11 0 M${x - 11} ${y + 4} q5 -6 11 0 t11 0" class="beyond"/>`;
  if (place !== undefined)
    return markup`<rect x="${x - 5}" y="${y - 14}" width="10" height="5" class="solid"/><rect x="${x - 12}" y="${y - 10}" width="24" height="20" rx="4" class="point"/><rect x="${x - 5}" y="${y - 4}" width="10" height="9" class="solid"/>`;
  const joint = job.joints[joints[0] ?? -1];
  const state = rework.jointState[joints[0] ?? -1];
  if (state === 'covered wound')
    return markup`<rect x="${x - 8}" y="${y - 9}" width="16" height="18" rx="3" class="solid"/>`;
  if (state === 'wound') return bare(x, y);
  if (joint?.kind === 'tap') return markup`<path d="M${x - 11} ${y - 9} h22 l-11 19 z" class="point"/>`;
  if (joint !== undefined)
    return markup`<rect x="${x - 7}" y="${y - 12}" width="14" height="24" rx="7" class="point"/><path d="M${x - 7} ${y - 3} h14 m-14 6 h14" class="beyond"/>`;
  const covered = ends.some((end) => endCover.at(end) != null);
  return covered
    ? markup`<path d="M${x - 8} ${y - 8} h16 v8 a8 8 0 0 1 -16 0 z" class="solid"/>`
    : bare(x, y);
}

function bare(x: number, y: number): Markup {
  return markup`<path d="M${x - 8} ${y - 8} L${x + 8} ${y + 8} M${x + 8} ${y - 8} L${x - 8} ${y + 8}" class="beyond"/>`;
}

/** The real face in little, wires toward you, with the cavity filled. */
function smallFace(job: Job, { places, y, again }: Row, width: number): MarkupValue {
  if (again) return null;
  for (const index of places) {
    const place = job.places[index];
    const given = job.connectors[place?.connector ?? -1]?.face;
    if (place === undefined || given == null) continue;
    const face = viewFrom(given, 'wire side');
    return markup`<g class="tiny">${
      face.kind === 'grid' ? smallGrid(face, place.label, y, width) : smallRound(face, place.label, y, width)
    }</g>`;
  }
  return null;
}

function smallGrid(
  face: Extract<Face, { kind: 'grid' }>,
  label: string,
  y: number,
  width: number,
): MarkupValue {
  const cell = cellOf(face);
  const gap = Math.min(0.8, cell / 6);
  // In a face of many rows a cavity is smaller than an eye can find, so the filled one is not drawn smaller than this.
  const least = 3.2;
  const [w, h] = [(face.width * cell) / 2, face.rows.length * cell];
  const [x, top] = [width - w - 6, y - h / 2];
  const long = Math.min(14, w / 2);
  const upright = face.edge === 'top' || face.edge === 'bottom';
  const latch = upright
    ? markup`<rect x="${x + (w - long) / 2}" y="${face.edge === 'top' ? top - 6 : top + h + 2}" width="${long}" height="4" class="solid"/>`
    : markup`<rect x="${face.edge === 'left' ? x - 6 : x + w + 2}" y="${top + h / 4}" width="4" height="${h / 2}" class="solid"/>`;
  return markup`<rect x="${x - 2}" y="${top - 2}" width="${w + 4}" height="${h + 4}" rx="2" class="small"/>${latch}${face.rows.map(
    (row, at) =>
      row.map((one) => {
        const found = one.label === label;
        const size = Math.max(cell - 2 * gap, found ? least : 0);
        const inset = (cell - size) / 2;
        return markup`<rect x="${tenth(x + (one.at * cell) / 2 + inset)}" y="${tenth(top + at * cell + inset)}" width="${tenth(size)}" height="${tenth(size)}" class="${found ? 'solid' : 'small'}"/>`;
      }),
  )}`;
}

function cellOf(face: Extract<Face, { kind: 'grid' }>): number {
  return Math.min(9, 112 / face.width, 34 / face.rows.length);
}

function smallRound(
  face: Extract<Face, { kind: 'round' }>,
  label: string,
  y: number,
  width: number,
): MarkupValue {
  const outer = 19;
  const x = width - outer - 6;
  const rings = face.rows.length - (face.centre ? 1 : 0);
  return markup`<circle cx="${x}" cy="${y}" r="${outer}" class="small"/><rect x="${x - 3}" y="${y - outer - 2}" width="6" height="5" class="solid"/>${face.rows.map(
    (row, ring) => {
      const radius = ring < rings ? ((outer - 5) * (rings - ring)) / rings : 0;
      return row.map(({ at, label: own }) => {
        const angle = (at / 720) * 2 * Math.PI;
        const found = own === label;
        return markup`<circle cx="${tenth(x + radius * Math.sin(angle))}" cy="${tenth(y - radius * Math.cos(angle))}" r="${found ? 3.4 : 1.8}" class="${found ? 'solid' : 'small'}"/>`;
      });
    },
  )}`;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
