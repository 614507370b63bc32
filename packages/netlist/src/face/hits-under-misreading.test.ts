import { describe, expect, it } from 'vitest';
import type { Face } from './face.ts';
import { FaceError } from './face-error.ts';
import type { FaceForm } from './face-schema.ts';
import { hitsUnderMisreading, type MisreadingHit, type Occupancy } from './hits-under-misreading.ts';
import type { MisreadingKind } from './misreading.ts';
import { misreadings } from './misreadings.ts';
import { readFace } from './read-face.ts';

function faceOf(form: FaceForm): Face {
  const { value, problems } = readFace(form);
  if (value === null) throw new Error(problems.join('; '));
  return value;
}

function hitOf(hits: readonly MisreadingHit[], kind: MisreadingKind): MisreadingHit | undefined {
  return hits.find(({ misreading }) => misreading.kind === kind || misreading.also.includes(kind));
}

// Scenario of an orchard tractor: terminals are inserted at C5 and C6 of a sealed roof connector, 3 rows of 6.
const roof = faceOf({
  'seen from': 'wire side',
  latch: 'top',
  rows: '3',
  columns: '6',
  labels: 'row letters',
  blocked: 'B4',
});
const states = new Map<string, Occupancy>([
  ['C5', 'empty'],
  ['C6', 'plugged'],
  ['A5', 'empty'],
  ['C2', 'empty'],
]);
const kinds = new Map([
  ['C2', 'large'],
  ['C5', 'small'],
  ['A5', 'small'],
]);
const occupancy = (label: string): Occupancy => states.get(label) ?? 'occupied';
const terminalKind = (label: string): string | null => kinds.get(label) ?? null;

describe('hitsUnderMisreading', () => {
  const hits = hitsUnderMisreading(roof, 'C5', misreadings(roof), { occupancy, terminalKind });

  it('goes unnoticed in an empty cavity of the same terminal kind', () => {
    const hit = hitOf(hits, 'top and bottom exchanged');
    expect(hit).toMatchObject({ hit: 'A5', finds: 'empty', unnoticed: true });
    expect(hit?.sentence).toBe(
      'rows counted from the bottom: A5 is taken for C5, which is empty, and nothing shows the mistake',
    );
  });

  it('is noticed by another terminal kind', () => {
    expect(hitOf(hits, 'mirrored')).toMatchObject({ hit: 'C2', finds: 'empty', unnoticed: false });
  });

  it('is noticed by another state of the cavity', () => {
    expect(hitOf(hits, 'one place right')).toMatchObject({ hit: 'C6', finds: 'plugged', unnoticed: false });
    expect(hitOf(hits, 'one row up')).toMatchObject({ hit: 'B5', finds: 'occupied', unnoticed: false });
  });

  it('is noticed where there is no cavity', () => {
    const hit = hitOf(hits, 'one row down');
    expect(hit).toMatchObject({ hit: null, finds: 'no cavity', unnoticed: false });
    expect(hit?.sentence).toBe(
      'taken in the row below: no cavity is where C5 is looked for, which is noticed',
    );
  });

  it('is noticed at a blocked position, whatever is said of it', () => {
    const all = hitsUnderMisreading(roof, 'B3', misreadings(roof), { occupancy: () => 'occupied' });
    expect(hitOf(all, 'mirrored')).toMatchObject({ hit: 'B4', finds: 'blocked', unnoticed: false });
  });

  it('is noticed at a cavity that is said to be blocked', () => {
    const all = hitsUnderMisreading(roof, 'C5', misreadings(roof), { occupancy: () => 'blocked' });
    expect(all.map(({ unnoticed }) => unnoticed)).not.toContain(true);
  });

  it('is not noticed by a terminal kind that is not known', () => {
    const all = hitsUnderMisreading(roof, 'C5', misreadings(roof), {
      occupancy: () => 'empty',
      terminalKind: (label) => (label === 'C5' ? 'small' : null),
    });
    expect(hitOf(all, 'mirrored')).toMatchObject({ hit: 'C2', unnoticed: true });
  });

  it('takes a removal from an equal neighbour as unnoticed', () => {
    const all = hitsUnderMisreading(roof, 'B5', misreadings(roof), {
      occupancy: () => 'occupied',
      terminalKind: () => 'small',
    });
    expect(hitOf(all, 'one place right')).toMatchObject({ hit: 'B6', finds: 'occupied', unnoticed: true });
  });

  it('leaves out misreadings that find the right cavity', () => {
    const row = faceOf({ 'seen from': 'wire side', latch: 'top', rows: '1', columns: '3' });
    const middle = hitsUnderMisreading(row, '2', misreadings(row));
    expect(middle.map(({ hit }) => hit)).toEqual(['1', '3']);
  });

  it('lets nothing be noticed of what is not known', () => {
    const row = faceOf({ 'seen from': 'wire side', latch: 'top', rows: '1', columns: '2' });
    const [hit] = hitsUnderMisreading(row, '1', misreadings(row));
    expect(hit).toMatchObject({ hit: '2', finds: null, unnoticed: true });
    expect(hit?.sentence).toBe(
      'seen from the mating side instead of the wire side: 2 is taken for 1, and nothing shows the mistake',
    );
  });

  it('throws for a label that the face does not have', () => {
    expect(() => hitsUnderMisreading(roof, 'D1', [])).toThrow(FaceError);
  });
});
