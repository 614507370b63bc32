import { appendTo } from '../append-to.ts';
import type { Position } from '../harness/job.ts';
import { type Located, type LocatedEntry, rowsUnder, textUnder } from '../kit/located.ts';
import { checkName, isTaken } from './check-name.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { zoneUnder } from './read-parts.ts';
import { coverUnder, partUnder } from './read-wires.ts';
import { orderAlong, readAlong } from './wire-position.ts';

/** Gives the taps of the stock harness their names, before the wires that come from them are read. */
export function readTaps(section: Located | null, builder: HarnessBuilder): void {
  for (const entry of rowsUnder(section, 'taps')) {
    if (!checkName(entry, 'tap', builder) || isTaken(entry, builder)) continue;
    const cover = coverUnder(entry.value, 'cover', builder);
    builder.addJoint({
      name: entry.key,
      kind: 'tap',
      part: partUnder(entry.value, 'with', 'tap', builder)?.text ?? null,
      origin: 'stock',
      zone: zoneUnder(entry.value),
      before: cover === undefined ? 'crimped' : cover === null ? 'wound' : 'covered wound',
      cover: cover ?? null,
    });
  }
}

/** Puts the taps of the stock harness on their wires, once these are read, and checks that each has one branch. */
export function placeTaps(section: Located | null, builder: HarnessBuilder): void {
  const rows = rowsUnder(section, 'taps');
  if (rows.length === 0) return;
  const branches = new Map<number, number[]>();
  for (const { wire, home } of builder.ends) {
    if (home.kind === 'joint') appendTo(branches, home.joint, wire);
  }
  const found = new Map<number, PlacedTap[]>();
  for (const entry of rows) {
    const joint = builder.jointByName.get(entry.key);
    if (joint === undefined || builder.joints[joint]?.kind !== 'tap') continue;
    const placed = placedTap(entry, joint, builder);
    if (placed === null) continue;
    const ends = branches.get(joint) ?? [];
    checkBranch(entry, placed.wire, ends, builder);
    appendTo(found, placed.wire, placed);
  }
  for (const [wire, taps] of found) {
    const ordered = inOrder(taps, builder.wires[wire]?.lengthMm ?? null, builder);
    for (const { joint, position } of ordered)
      builder.positions.set(builder.joints[joint]?.node ?? -1, position);
    builder.tapsAsFound.set(
      wire,
      ordered.map(({ joint }) => joint),
    );
  }
}

interface PlacedTap {
  readonly joint: number;
  readonly wire: number;
  readonly position: Position;
  readonly entry: LocatedEntry;
}

function placedTap(entry: LocatedEntry, joint: number, builder: HarnessBuilder): PlacedTap | null {
  const { complaints } = builder;
  const [on, at] = [textUnder(entry.value, 'on'), textUnder(entry.value, 'at')];
  if (on === null || at === null) return null;
  const wire = builder.wireByName.get(on.text);
  const row = builder.wires[wire ?? -1];
  if (wire === undefined || row === undefined || row.origin === 'kit') {
    const stock = builder.wires.filter(({ origin }) => origin === 'stock').map(({ name }) => name);
    complaints.unknown('wire of the stock', on.text, on.span, stock);
    return null;
  }
  const homes = row.ends.map((end) => (builder.ends[end]?.name ?? '').slice(row.name.length + 1));
  const along = readAlong(at, homes[0] ?? '', complaints);
  if (along === null) return null;
  const side = homes.indexOf(along.from);
  if (side < 0) {
    complaints.error(
      'position',
      `\`${row.name}\` has no end \`${along.from}\``,
      at.span,
      `measure from ${homes.map((home) => `\`${home}\``).join(' or ')}`,
    );
    return null;
  }
  const position: Position = { fromEnd: side === 0 ? 0 : 1, mm: along.mm };
  if (position.mm <= 0 || (row.lengthMm !== null && position.mm >= row.lengthMm)) {
    complaints.error(
      'position',
      `\`${at.text}\` is not on \`${row.name}\``,
      at.span,
      row.lengthMm === null ? null : `the wire is ${row.lengthMm} mm long`,
    );
    return null;
  }
  return { joint, wire, position, entry };
}

function checkBranch(
  { key, keySpan, value }: LocatedEntry,
  run: number,
  wires: readonly number[],
  builder: HarnessBuilder,
): void {
  const isOff = textUnder(value, 'cover') !== null;
  if (isOff ? wires.length === 0 : wires.length === 1 && wires[0] !== run) return;
  const names = wires.map((wire) => `\`${builder.wires[wire]?.name ?? ''}\``).join(', ');
  builder.complaints.error(
    'tap-branch',
    isOff
      ? `\`${key}\` is off and its wound covered, yet a wire comes from it: ${names}`
      : wires.length === 0
        ? `no wire comes from \`${key}\``
        : wires.length > 1
          ? `a tap has one branch, and several wires come from \`${key}\`: ${names}`
          : `the wire ${names} cannot come from a tap on itself`,
    keySpan,
    isOff ? null : `write \`from: ${key}\` at the wire that comes from it`,
  );
}

/** By place along the wire; two whose order is not known, or that fall on one spot, are complained of. */
function inOrder(
  taps: readonly PlacedTap[],
  length: number | null,
  builder: HarnessBuilder,
): readonly PlacedTap[] {
  const firsts = taps.filter(({ position }) => position.fromEnd === 0);
  const lasts = taps.filter(({ position }) => position.fromEnd === 1);
  const ordered = [
    ...firsts.sort((a, b) => a.position.mm - b.position.mm),
    ...lasts.sort((a, b) => b.position.mm - a.position.mm),
  ];
  // Where the length is known those measured from the other end may lie among the first ones.
  if (length !== null) ordered.sort((a, b) => orderAlong(a.position, b.position, length) ?? 0);
  for (const [at, tap] of ordered.entries()) {
    const before = ordered[at - 1];
    if (before === undefined) continue;
    const order = orderAlong(before.position, tap.position, length);
    if (order !== null && order < 0) continue;
    const [a, b] = [before.entry.key, tap.entry.key];
    builder.complaints.error(
      'mark-order',
      order === null
        ? `which of \`${a}\` and \`${b}\` comes first is not known`
        : `\`${a}\` and \`${b}\` are at one spot`,
      tap.entry.keySpan,
      order === null ? 'measure both from the same end, or give the length of the wire' : null,
    );
  }
  return ordered;
}
