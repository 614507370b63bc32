import { type Job, Rework, viewFrom } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { colourPaint } from '../../packages/sheets/src/colour-paint.ts';
import { kitNames } from '../support/kit-fixtures.ts';
import { type MadeSheets, sheetsOf } from './sheets-of.ts';
import { type DrawnStrand, strandsUnder } from './strands-in-page.ts';

/** A stretch of a wire between two marks of it, known by what is fixed: its piece and the ends or taps that bound it. */
interface Stretch {
  readonly id: string;
  readonly piece: number;
  readonly points: readonly [string, string];
}

/** A harness read from ends, terminals and what is plugged: not from the graph that the drawing is made from. */
interface Seen {
  readonly stretches: readonly Stretch[];
  /** Words of each point, by its key. */
  readonly words: ReadonlyMap<string, string>;
  readonly shapes: ReadonlyMap<string, string>;
  readonly filled: ReadonlyMap<string, number>;
}

function seenIn(rework: Rework, withKit: boolean): Seen {
  const { job } = rework;
  const words = new Map<string, string>();
  const shapes = new Map<string, string>();
  const filled = new Map<string, number>();
  const ofPlace = (place: number): string => {
    const there = job.places[place];
    const other = rework.facing[place] ?? -1;
    const isPlugged = other >= 0 && rework.plugged[there?.connector ?? -1] === true;
    const both = (isPlugged ? [place, other] : [place]).sort((a, b) => a - b);
    const key = `place ${both.join(' ')}`;
    words.set(key, both.map((one) => job.places[one]?.address ?? '').join(' = '));
    const first = job.places[both[0] ?? -1];
    shapes.set(key, first?.kind === 'stud' ? 'ring' : first?.kind === 'boundary' ? 'waves' : 'housing');
    filled.set(key, cavityInLittle(job, both));
    return key;
  };
  const ofJoint = (joint: number): string => {
    const { name = '', kind = '' } = job.joints[joint] ?? {};
    const state = rework.jointState[joint];
    const key = `joint ${joint}`;
    const isWound = state === 'wound' || state === 'covered wound';
    words.set(
      key,
      state === 'covered wound'
        ? `wound of tap ${name} insulated with ${rework.jointCover.at(joint)}`
        : `${isWound ? 'bare wound of ' : ''}${kind} ${name}`,
    );
    shapes.set(
      key,
      state === 'covered wound' ? 'band' : isWound ? 'cross' : kind === 'tap' ? 'triangle' : 'barrel',
    );
    return key;
  };
  const ofEnd = (end: number): string => {
    const joint = rework.endJoint[end] ?? -1;
    if (joint >= 0) return ofJoint(joint);
    const place = rework.terminalPlace[rework.endTerminal[end] ?? -1] ?? -1;
    if (place >= 0) return ofPlace(place);
    // Ends in one loose terminal are one point.
    const together = rework.endsOf(rework.endTerminal[end] ?? -1);
    const all = together.length > 0 ? together : [end];
    const key = `free ${all.join(' ')}`;
    const cover = rework.endCover.at(end);
    words.set(
      key,
      all
        .map((one) => `${job.ends[one]?.name}${cover === null ? '' : `, insulated with ${cover}`}`)
        .join(' = '),
    );
    shapes.set(key, cover === null ? 'cross' : 'cap');
    return key;
  };
  const stretches: Stretch[] = [];
  for (const [piece, { wire, ends }] of job.pieces.entries()) {
    if (rework.pieceThere[piece] !== 1 || (!withKit && job.wires[wire]?.origin === 'kit')) continue;
    const marks = [
      { id: `end ${ends[0]}`, key: ofEnd(ends[0]) },
      ...rework.jointsOn(piece).map((joint) => ({ id: `joint ${joint}`, key: ofJoint(joint) })),
      { id: `end ${ends[1]}`, key: ofEnd(ends[1]) },
    ];
    for (const [at, to] of marks.slice(1).entries()) {
      const from = marks[at];
      if (from !== undefined)
        stretches.push({ id: `${piece}: ${from.id} ${to.id}`, piece, points: [from.key, to.key] });
    }
  }
  return { stretches, words, shapes, filled };
}

/** Which cavity of the first face of a point is filled, row by row with the wires toward the person; -1 for no face. */
function cavityInLittle(job: Job, places: readonly number[]): number {
  for (const place of places) {
    const face = job.connectors[job.places[place]?.connector ?? -1]?.face ?? null;
    if (face === null) continue;
    return viewFrom(face, 'wire side')
      .rows.flat()
      .findIndex(({ label }) => label === job.places[place]?.label);
  }
  return -1;
}

/** What a point is made of: another sum of it before and after means that the work changes it. */
function sums(seen: Seen): ReadonlyMap<string, string> {
  const parts = new Map<string, string[]>();
  for (const { id, points } of seen.stretches)
    for (const key of new Set(points)) parts.set(key, [...(parts.get(key) ?? []), id]);
  return new Map([...parts].map(([key, ids]) => [key, [key, ...ids.sort()].join('; ')]));
}

/** Points by the net that they are on. */
function netsOf({ stretches }: Seen): readonly ReadonlySet<string>[] {
  const nets = new Map<string, Set<string>>();
  for (const { points } of stretches) {
    const both = new Set(points.flatMap((key) => [...(nets.get(key) ?? [key])]));
    for (const key of both) nets.set(key, both);
  }
  return [...new Set(nets.values())];
}

/** Compares what is drawn with the nets that the work changes, wire by wire. */
function expectDrawn(
  strands: readonly DrawnStrand[],
  now: Seen,
  other: Seen,
  after: Rework,
  isBefore: boolean,
): void {
  const { job } = after;
  const then = sums(other);
  const changed = new Set([...sums(now)].flatMap(([key, sum]) => (then.get(key) === sum ? [] : [key])));
  const nets = netsOf(now).filter((net) => [...net].some((key) => changed.has(key)));
  const left = now.stretches.filter(({ points }) => nets.some((net) => net.has(points[0])));
  expect(strands.length).toBe(nets.length);
  for (const { points, wires } of strands) {
    const keys = points.flatMap(({ told, shape, filled }) => {
      const plain = told.replace(/ and \d+ more as before/, '').replace(/, once more$/, '');
      const [key = ''] = [...now.words].find(([, words]) => words === plain) ?? [];
      expect(key, told).not.toBe('');
      const isAgain = told.endsWith(', once more');
      expect(shape, told).toBe(isAgain ? 'broken ring' : now.shapes.get(key));
      expect(filled, told).toBe(isAgain ? -1 : (now.filled.get(key) ?? -1));
      return isAgain ? [] : [key];
    });
    const net = nets.find((one) => one.has(keys[0] ?? '')) ?? new Set();
    // Each point once, and those that are not drawn are counted.
    expect(new Set(keys).size).toBe(keys.length);
    const hidden = points.map(({ told }) => Number(/ and (\d+) more as before/.exec(told)?.[1] ?? 0));
    expect(keys.length + hidden.reduce((sum, one) => sum + one, 0), keys.join(', ')).toBe(net.size);
    for (const { from, to, told, paint, stripe, width, dashed } of wires) {
      const plain = (words: string): string =>
        words.replace(/ and \d+ more as before/, '').replace(/, once more$/, '');
      const ends = [plain(from), plain(to)].sort();
      const at = left.findIndex(({ piece, points: [a, b] }) => {
        const own = [now.words.get(a) ?? '', now.words.get(b) ?? ''].sort();
        return own.join() === ends.join() && told.split(', ')[0] === job.pieces[piece]?.name;
      });
      expect(at, `${told} from ${from} to ${to}`).toBeGreaterThanOrEqual(0);
      const [stretch] = left.splice(at, 1);
      const piece = job.pieces[stretch?.piece ?? -1];
      const wire = job.wires[piece?.wire ?? -1];
      const [base, second] = wire?.colour?.codes ?? [];
      const isNew = wire?.origin === 'kit';
      const isLost = isBefore
        ? after.pieceThere[stretch?.piece ?? -1] !== 1
        : !isNew && piece?.ends.some((end) => after.isFree(end)) === true;
      expect({ paint, stripe, dashed, width }, told).toEqual({
        paint: colourPaint(base),
        stripe: second === undefined ? null : colourPaint(second),
        dashed: isLost,
        width: isNew ? 9 : isLost ? 6 : 5,
      });
      expect(/, (new|goes|abandoned)$/.exec(told)?.[1], told).toBe(
        isNew ? 'new' : isLost ? (isBefore ? 'goes' : 'abandoned') : undefined,
      );
    }
  }
  // What is not drawn touches nothing that the work changes.
  for (const { points, id } of left)
    expect(
      points.filter((key) => changed.has(key)),
      id,
    ).toEqual([]);
}

/** Every variant of a kit, before and after. */
function expectKit({ kit, verdict, files }: MadeSheets): void {
  const pages = [...files.keys()].filter((file) => file.endsWith('-circuits.html'));
  expect(pages.length).toBe(kit.variants.length);
  for (const [index, { job }] of kit.variants.entries()) {
    const page = files.get(pages[index] ?? '') ?? '';
    const after = verdict.variants[index]?.judgement.rework;
    if (after === undefined) throw new Error(`${kit.kit} was not judged`);
    const [found, done] = [seenIn(new Rework(job), false), seenIn(after, true)];
    expectDrawn(strandsUnder(page, 'Before'), found, done, after, true);
    expectDrawn(strandsUnder(page, 'After'), done, found, after, false);
  }
}

/** A strand as a person would write it down. */
function lineOf({ wires }: DrawnStrand): string {
  return wires.map(({ from, to, told }) => `${from} | ${told} | ${to}`).join('; ');
}

describe('circuits read back from their drawings', () => {
  it.each(kitNames)(
    '%s: every net that the work changes, with each of its wires and points, before and after',
    (name) => expectKit(sheetsOf(name)),
  );

  it('a ring that the kit closes, a branch that is only counted, and a lamp that is not plugged', () => {
    const changes: readonly (readonly [string, string])[] = [
      ['SR: { source: never,', 'X1: { source: never }\n    X2: { source: never }\n    SR: { source: never,'],
      [
        '    shared return: {',
        '    branch one: { from: SR, to: X1, size: 1 mm2 }\n    branch two: { from: X1, to: X2, size: 1 mm2 }\n    shared return: {',
      ],
      [
        '    lamp return: {',
        '    second return: { from: one ring, to: other ring, size: 1 mm2, colour: BK/WH, from terminal: RING-5, to terminal: RING-5 }\n    lamp return: {',
      ],
      [
        '  - { do: place, device: DL }\n  - { do: plug, connector: KL }\n',
        '  - { do: attach, end: second return@one ring, stud: SR }\n  - { do: attach, end: second return@other ring, stud: FR }\n',
      ],
    ];
    const made = sheetsOf('shared-return', (text) =>
      changes.reduce((done, [found, put]) => {
        expect(done).toContain(found);
        return done.replace(found, put);
      }, text),
    );
    expectKit(made);
    const after = strandsUnder(made.files.get('only-circuits.html') ?? '', 'After');
    expect(after.map(lineOf)).toEqual([
      'K3:2 = S2:2 | deck feed, 1 mm2 | DK; DK | marker feed, 1 mm2 | K5:1 = M1:1; DK | lamp feed, 1 mm2, new | KL:1',
      [
        'K4:2 = A1:2 | awning return, 1 mm2 | SR',
        'SR | branch one, 1 mm2 | X1 and 1 more as before',
        'SR | shared return, 1 mm2 | FR',
        'FR | marker return, 1 mm2 | K5:2 = M1:2',
        'FR | lamp return, 1 mm2, new | KL:2',
        'SR | second return, BK/WH, 1 mm2, new | FR, once more',
      ].join('; '),
    ]);
    expect(made.files.get('only-circuits.html')).toContain('A broken ring is a point that is drawn already');
  });

  const written = (name: string, file: string, head: string): readonly string[] =>
    strandsUnder(sheetsOf(name).files.get(file) ?? '', head).map(lineOf);

  it('those of the van are the ones written by hand', () => {
    expect(written('van-beacon', 'build-early-circuits.html', 'Before')).toEqual([
      'K10:4 = DM:4 | buzzer, WH/GN, 0.5 mm2, goes | K11:1 = BZ:1',
      'K10:9 = DM:9 | ajar, GN/WH, 0.35 mm2 | K12:1 = DS:1',
    ]);
    expect(written('van-beacon', 'build-early-circuits.html', 'After')).toEqual([
      'K10:4 = DM:4 | buzzer stub, WH/GN, 0.5 mm2, abandoned | buzzer stub@buzzer far, insulated with CAP-W',
      'K10:6 = DM:6 | beacon return, BK, 0.5 mm2, new | K20:2 = BC:2',
      'K10:9 = DM:9 | ajar, GN/WH, 0.35 mm2 | tap TAP1; tap TAP1 | beacon feed, RD, 0.5 mm2, new | K20:1 = BC:1; tap TAP1 | ajar, GN/WH, 0.35 mm2 | K12:1 = DS:1',
      'K11:1 = BZ:1 | buzzer far, WH/GN, 0.5 mm2, abandoned | buzzer far@buzzer stub, insulated with CAP-W',
    ]);
  });

  it('those of the truck are the ones written by hand: a tap that came off is a wound, and the strobe is dead', () => {
    expect(written('forklift-spot', 'only-circuits.html', 'Before')).toEqual([
      'K40:2 = DP:2 | reverse, YE, 0.75 mm2 | K42:1 = RA:1',
      'K40:4 = DP:4 | strobe feed, OG, 0.75 mm2 | K43:1 = ST:1',
    ]);
    expect(written('forklift-spot', 'only-circuits.html', 'After')).toEqual([
      'K40:2 = DP:2 | reverse, YE, 0.75 mm2 | wound of tap TAP1 insulated with WRAP; wound of tap TAP1 insulated with WRAP | reverse, YE, 0.75 mm2 | K42:1 = RA:1',
      'K40:3 = DP:3 | spot feed, RD, 1 mm2, new | K45:1 = CV:1',
      'K40:7 = DP:7 | spot return, BK, 1 mm2, new | K45:2 = CV:2',
      'K43:1 = ST:1 | strobe feed, OG, 0.75 mm2, abandoned | strobe feed@K40:4, insulated with CAP',
      'K45:4 = CV:4 | lamp feed, BU, 0.75 mm2, new | K46:1 = SP:1',
      'K45:5 = CV:5 | lamp return, GY, 0.75 mm2, new | K46:2 = SP:2',
    ]);
  });
});
