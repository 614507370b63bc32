import type { Part, Range, Zone } from '../harness/job.ts';
import type { Located } from '../kit/located.ts';
import { rowsUnder, textUnder } from '../kit/located.ts';
import { parseLength, parseQuantity, parseRange } from '../value/index.ts';
import { type Complaints, textOr } from './complaints.ts';

/** Reads the catalogue of part kinds: what each is, and the sizes it fits. */
export function readParts(document: Located, complaints: Complaints): ReadonlyMap<string, Part> {
  const parts = new Map<string, Part>();
  for (const { key, value } of rowsUnder(document, 'parts')) {
    const part = readPart(key, value, complaints);
    if (part !== null) parts.set(key, part);
  }
  return parts;
}

/** How many of each part the bag holds. */
export function readBag(
  document: Located,
  parts: ReadonlyMap<string, Part>,
  complaints: Complaints,
): ReadonlyMap<string, number> {
  const bag = new Map<string, number>();
  const section = document.kind === 'map' ? (document.entries.get('bag')?.value ?? null) : null;
  for (const { key, keySpan, value } of rowsUnder(section, 'parts')) {
    if (!parts.has(key)) complaints.unknown('part', key, keySpan, parts.keys());
    const text = textOr(value);
    if (/^\d{1,6}$/.test(text)) bag.set(key, Number(text));
    else
      complaints.error(
        'count',
        `\`${text}\` is no count`,
        value.span,
        'write how many pieces are in the bag, such as 2',
      );
  }
  return bag;
}

function readPart(name: string, row: Located, complaints: Complaints): Part | null {
  const is = textUnder(row, 'is')?.text ?? '';
  const zone = zoneUnder(row);
  switch (is) {
    case 'terminal':
      return {
        is,
        name,
        size: rangeUnder(row, 'size', complaints),
        wires: countUnder(row, 'wires', 1, complaints),
        ring: isYes(row, 'ring'),
        stripMm: lengthUnder(row, 'strip', complaints),
      };
    case 'seal':
      return { is, name, insulation: rangeUnder(row, 'insulation', complaints) };
    case 'splice': {
      const tube = textUnder(row, 'tube')?.text;
      return {
        is,
        name,
        size: rangeUnder(row, 'size', complaints),
        ends: countUnder(row, 'ends', 2, complaints),
        tube: tube === 'built in' || tube === 'separate' ? tube : 'none',
        zone,
        stripMm: lengthUnder(row, 'strip', complaints),
      };
    }
    case 'tap':
      return {
        is,
        name,
        run: rangeUnder(row, 'run', complaints),
        branch: rangeUnder(row, 'branch', complaints),
        zone,
      };
    case 'cover':
    case 'tube':
      return { is, name, size: rangeUnder(row, 'size', complaints), zone };
    case 'fuse':
      return { is, name, ratingAmps: ratingUnder(row, complaints) };
    case 'plug':
    case 'jumper':
    case 'tie':
    case 'tape':
      return { is, name };
    default:
      return null;
  }
}

/** Whether a yes-or-no entry says yes. */
export function isYes(row: Located, key: string): boolean {
  const text = textUnder(row, key)?.text;
  return text === 'yes' || text === 'true';
}

/** The zone that a row says, or unknown. */
export function zoneUnder(row: Located): Zone {
  const text = textUnder(row, 'zone')?.text;
  return text === 'dry' || text === 'wet' ? text : 'unknown';
}

/** A whole number from 1 on under a key. */
export function countUnder(row: Located, key: string, fallback: number, complaints: Complaints): number {
  const node = textUnder(row, key);
  if (node === null) return fallback;
  if (/^[1-9]\d{0,3}$/.test(node.text)) return Number(node.text);
  complaints.error('count', `\`${node.text}\` is no count`, node.span, 'write a whole number from 1 on');
  return fallback;
}

function rangeUnder(row: Located, key: string, complaints: Complaints): Range | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const range = parseRange(node.text);
  if (range.ok) return { min: range.value.min, max: range.value.max };
  complaints.error('range', range.problem, node.span, range.help);
  return null;
}

/** A length under a key, in millimetres, or null when it is absent or cannot be read; then there is a complaint. */
export function lengthUnder(row: Located, key: string, complaints: Complaints): number | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const length = parseLength(node.text);
  if (length.ok && length.value.mm > 0) return length.value.mm;
  complaints.error(
    'length',
    length.ok ? `\`${node.text}\` is no length` : length.problem,
    node.span,
    length.ok ? 'write it with its unit, such as 5 mm' : length.help,
  );
  return null;
}

function ratingUnder(row: Located, complaints: Complaints): number | null {
  const node = textUnder(row, 'rating');
  if (node === null) return null;
  const rating = parseQuantity(node.text, 'A');
  if (rating.ok) return rating.value;
  complaints.error('quantity', rating.problem, node.span, rating.help);
  return null;
}
