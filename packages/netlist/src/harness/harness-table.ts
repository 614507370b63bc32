import type { Rework } from '../rework/rework.ts';
import type { PinTable } from '../table/index.ts';
import { formatColour, formatSize } from '../value/index.ts';

/** One conductor of a harness laid out as a table; what is not known is null. */
export interface ConductorRow {
  /** Of this row alone: rows of two harnesses are held against one another by it. */
  readonly wire: string;
  readonly from: string;
  readonly to: string;
  readonly size: string | null;
  readonly colour: string | null;
  readonly lengthMm: number | null;
}

/** A harness as a pin table shows it: its cavities and its conductors. */
export interface HarnessTable {
  /** Addresses of the places, used or not; points that are none of them, such as splices, carry no function. */
  readonly places: readonly string[];
  readonly conductors: readonly ConductorRow[];
}

/** The harness that a pin table shows. */
export function tableOfPins(table: PinTable): HarnessTable {
  const places = new Set<string>();
  const conductors = table.rows.map((row): ConductorRow => {
    const [from, to] = [row.from, row.to].map((end) => {
      if (end.loose) return `${row.wire.raw}@${end.cavity.raw}`;
      if (end.cavity.raw === '') return end.connector.raw;
      const address = `${end.connector.raw}:${end.cavity.raw}`;
      places.add(address);
      return address;
    });
    return {
      wire: row.wire.raw,
      from: from ?? '',
      to: to ?? '',
      size: row.size?.value == null ? null : formatSize(row.size.value),
      colour: row.colour?.value == null ? null : formatColour(row.colour.value),
      lengthMm: row.length?.value?.mm ?? null,
    };
  });
  return { places: [...places], conductors };
}

/** The harness of a kit as it stands after the last step done: pieces between places, joints and free ends. */
export function tableOfRework(rework: Rework): HarnessTable {
  const { job } = rework;
  const conductors: ConductorRow[] = [];
  for (const [index, piece] of job.pieces.entries()) {
    if (rework.pieceThere[index] !== 1) continue;
    const wire = job.wires[piece.wire];
    // A tap joins an uncut run, so the run shows as the rows between its marks; no wire can be called `lamp:1`.
    const marks = rework.jointsOn(index).map((joint) => job.joints[joint]?.name ?? '');
    const points = [pointOf(rework, piece.ends[0]), ...marks, pointOf(rework, piece.ends[1])];
    for (let at = 0; at + 1 < points.length; at += 1) {
      conductors.push({
        wire: marks.length === 0 ? piece.name : `${piece.name}:${at + 1}`,
        from: points[at] ?? '',
        to: points[at + 1] ?? '',
        size: wire?.size == null ? null : formatSize(wire.size),
        colour: wire?.colour == null ? null : formatColour(wire.colour),
        lengthMm: wire !== undefined && wire.name === piece.name && marks.length === 0 ? wire.lengthMm : null,
      });
    }
  }
  return { places: job.places.map((place) => place.address), conductors };
}

function pointOf(rework: Rework, end: number): string {
  const { job } = rework;
  const joint = rework.endJoint[end] ?? -1;
  if (joint >= 0) return job.joints[joint]?.name ?? '';
  const place = rework.terminalPlace[rework.endTerminal[end] ?? -1] ?? -1;
  return place >= 0 ? (job.places[place]?.address ?? '') : (job.ends[end]?.name ?? '');
}
