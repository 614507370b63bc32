import type { Position } from '../harness/job.ts';
import type { LocatedText } from '../kit/located.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { orderAlong, readAlong } from './wire-position.ts';

/** A point along a piece: one of its ends, or the mark of a tap. */
interface Station {
  readonly label: readonly string[];
  readonly position: Position | null;
}

interface LivePiece {
  readonly index: number;
  readonly name: string;
  readonly wire: number;
  readonly stations: Station[];
}

/** Where a cut or a tap falls on a piece. */
export interface Mark {
  readonly piece: number;
  /** The station after which it falls. */
  readonly after: number;
  readonly position: Position;
  /** Whether the reference end is the piece's first end. */
  readonly fromFirst: boolean;
}

/**
 * The names of wires, pieces and ends as they stand between two steps. Names are known before anything is simulated:
 * a wire that was cut is no name any more, and asking for it offers the pieces that are there now.
 */
export class StepScope {
  readonly #builder: HarnessBuilder;
  readonly #live = new Map<string, LivePiece>();
  readonly #cut = new Map<string, readonly string[]>();
  readonly #endByName = new Map<string, number>();
  /** Names that a step with a mistake would have given: the mistake is complained of once, where it is. */
  readonly #failed = new Set<string>();

  constructor(builder: HarnessBuilder) {
    this.#builder = builder;
    for (const [index, piece] of builder.pieces.entries()) {
      const wire = builder.wires[piece.wire];
      const stations = piece.ends.map((end, side): Station => {
        const name = builder.ends[end]?.name ?? '';
        this.#endByName.set(name, end);
        return {
          label: [name.slice(piece.name.length + 1)],
          position: { fromEnd: side === 0 ? 0 : 1, mm: 0 },
        };
      });
      const taps = (builder.tapsAsFound.get(index) ?? []).flatMap((joint): Station[] => {
        const { name, node } = builder.joints[joint] ?? { name: '', node: -1 };
        return [{ label: [name], position: builder.positions.get(node) ?? null }];
      });
      stations.splice(1, 0, ...taps);
      if (wire !== undefined)
        this.#live.set(piece.name, { index, name: piece.name, wire: piece.wire, stations });
    }
  }

  /** Takes note of names that would be there had the step not been wrong. */
  fail(names: Iterable<string>): void {
    for (const name of names) if (!this.#live.has(name)) this.#failed.add(name);
  }

  /** Whether a name is missing only because the step that gives it is wrong. */
  hasFailed(name: string): boolean {
    return this.#failed.has(name);
  }

  /** The piece of that name, or null with a complaint. */
  piece(node: LocatedText | null): number | null {
    return this.#find(node)?.index ?? null;
  }

  #find(node: LocatedText | null): LivePiece | null {
    if (node === null) return null;
    const found = this.#live.get(node.text);
    if (found !== undefined) return found;
    if (this.#failed.has(node.text)) return null;
    const pieces = this.#cut.get(node.text);
    if (pieces !== undefined) {
      this.#builder.complaints.error(
        'was-cut',
        `\`${node.text}\` was cut before this step`,
        node.span,
        `it is now ${this.#livePiecesOf(node.text)
          .map((name) => `\`${name}\``)
          .join(' and ')}`,
      );
    } else this.#builder.complaints.unknown('wire or piece', node.text, node.span, this.#live.keys());
    return null;
  }

  #livePiecesOf(name: string): readonly string[] {
    const found: string[] = [];
    const open = [...(this.#cut.get(name) ?? [])];
    while (open.length > 0) {
      const one = open.shift() ?? '';
      const further = this.#cut.get(one);
      if (further === undefined) found.push(one);
      else open.unshift(...further);
    }
    return found;
  }

  /** The end written `PIECE@LABEL`, or null with a complaint. */
  end(node: LocatedText | null): number | null {
    if (node === null || this.#failed.has(node.text)) return null;
    const at = node.text.lastIndexOf('@');
    if (at < 0) {
      this.#builder.complaints.error(
        'end',
        `\`${node.text}\` names no end`,
        node.span,
        'write WIRE@END, such as `ajar@K10:9` or `stub@cut`',
      );
      return null;
    }
    const piece = this.#find({ kind: 'text', text: node.text.slice(0, at), span: node.span });
    if (piece === null) return null;
    const label = node.text.slice(at + 1);
    const sides = [0, piece.stations.length - 1].filter(
      (side) => piece.stations[side]?.label.includes(label) === true,
    );
    if (sides.length === 1) {
      const named = piece.stations[sides[0] ?? 0]?.label[0] ?? '';
      return this.#endByName.get(`${piece.name}@${named}`) ?? null;
    }
    const known = [0, piece.stations.length - 1].map(
      (side) => `\`${piece.name}@${piece.stations[side]?.label[0] ?? ''}\``,
    );
    this.#builder.complaints.error(
      'end',
      sides.length === 0
        ? `\`${piece.name}\` has no end \`${label}\``
        : `\`${piece.name}\` has two ends called \`${label}\``,
      node.span,
      `its ends are ${known.join(' and ')}`,
    );
    return null;
  }

  /** A place along a piece written `80 mm from END`; the order to every mark that is there must be known. */
  mark(wire: LocatedText | null, at: LocatedText | null): Mark | null {
    const piece = this.#find(wire);
    if (piece === null || at === null) return null;
    const { complaints } = this.#builder;
    const along = readAlong(at, 'K10:4', complaints);
    if (along === null) return null;
    const { from: label, mm } = along;
    const last = piece.stations.length - 1;
    const side =
      piece.stations[0]?.label.includes(label) === true
        ? 0
        : piece.stations[last]?.label.includes(label) === true
          ? last
          : -1;
    const reference = piece.stations[side]?.position ?? null;
    if (side < 0 || reference === null) {
      // An end that its row does not say is complained of there.
      if (piece.stations.some((station) => station.label[0] === '')) return null;
      const known = [0, last].map((one) => `\`${piece.stations[one]?.label[0] ?? ''}\``);
      complaints.error(
        'position',
        `\`${piece.name}\` has no end \`${label}\``,
        at.span,
        `measure from ${known.join(' or ')}`,
      );
      return null;
    }
    const forward = side === 0;
    const away = (reference.fromEnd === 0) === forward;
    const position: Position = {
      fromEnd: reference.fromEnd,
      mm: reference.mm + (away ? 1 : -1) * mm,
    };
    const wireLength = this.#builder.wires[piece.wire]?.lengthMm ?? null;
    if (mm <= 0 || position.mm < 0 || (wireLength !== null && position.mm >= wireLength)) {
      complaints.error(
        'position',
        `\`${at.text}\` is not on \`${piece.name}\``,
        at.span,
        wireLength === null ? null : `the wire is ${wireLength} mm long`,
      );
      return null;
    }
    let after = 0;
    for (let station = 1; station < last; station += 1) {
      const order = orderAlong(piece.stations[station]?.position ?? null, position, wireLength);
      if (order === null || order === 0) {
        complaints.error(
          'mark-order',
          order === 0
            ? `\`${at.text}\` falls on the tap that is there already`
            : `whether \`${at.text}\` lies before or beyond \`${piece.stations[station]?.label[0] ?? 'the tap'}\` is not known`,
          at.span,
          order === 0 ? null : 'measure both from the same end, or give the length of the wire',
        );
        return null;
      }
      if (order < 0) after = station;
    }
    return this.#beyondCutEnds(piece, position, wireLength, at)
      ? { piece: piece.index, after, position, fromFirst: forward }
      : null;
  }

  /** A mark measured from one end must still lie before the other end where that one is a cut. */
  #beyondCutEnds(piece: LivePiece, position: Position, wireLength: number | null, at: LocatedText): boolean {
    const last = piece.stations.length - 1;
    for (const [side, sign] of [
      [0, 1],
      [last, -1],
    ] as const) {
      const end = piece.stations[side]?.position ?? null;
      const order = orderAlong(position, end, wireLength);
      if (order === null) {
        // An original end has everything of its wire on one side, so only two cuts can be in doubt.
        if (end !== null && end.mm === 0) continue;
        this.#builder.complaints.error(
          'mark-order',
          `whether \`${at.text}\` is still on \`${piece.name}\` is not known`,
          at.span,
          'measure from the other end, or give the length of the wire',
        );
        return false;
      }
      if (order * sign <= 0) {
        this.#builder.complaints.error('position', `\`${at.text}\` is not on \`${piece.name}\``, at.span);
        return false;
      }
    }
    return true;
  }

  /** Takes note of a tap on a piece, so that later marks are ordered against it. */
  tapped(mark: Mark, name: string): void {
    const piece = [...this.#live.values()].find((one) => one.index === mark.piece);
    piece?.stations.splice(mark.after + 1, 0, { label: [name], position: mark.position });
    const joint = this.#builder.joints[this.#builder.jointByName.get(name) ?? -1];
    if (joint !== undefined) this.#builder.positions.set(joint.node, mark.position);
  }

  /** Replaces a piece by the two that a cut leaves; the first named holds the end that was measured from. */
  cut(
    mark: Mark,
    leaves: readonly [LocatedText, LocatedText],
  ): { pieces: [number, number]; ends: [number, number]; after: number } | null {
    const builder = this.#builder;
    const piece = [...this.#live.values()].find((one) => one.index === mark.piece);
    if (piece === undefined) return null;
    let clash = false;
    for (const [index, one] of leaves.entries()) {
      if (
        this.#live.has(one.text) ||
        this.#cut.has(one.text) ||
        (index === 1 && leaves[0].text === one.text)
      ) {
        builder.complaints.error(
          'written-twice',
          `\`${one.text}\` is the name of a wire already`,
          one.span,
          'every piece gets a new name',
        );
        clash = true;
      } else if (/[:@=|]/.test(one.text) || one.text === '') {
        builder.complaints.error('name', `\`${one.text}\` cannot be the name of a piece`, one.span);
        clash = true;
      }
    }
    if (clash) return null;
    const names = mark.fromFirst ? [leaves[0].text, leaves[1].text] : [leaves[1].text, leaves[0].text];
    const [left = '', right = ''] = names;
    const first = piece.stations.slice(0, mark.after + 1);
    const second = piece.stations.slice(mark.after + 1);
    const made: [number, number] = [0, 0];
    const newEnds: [number, number] = [
      builder.addEnd({ name: `${left}@${right}`, wire: piece.wire, home: { kind: 'cut' }, seal: null }),
      builder.addEnd({ name: `${right}@${left}`, wire: piece.wire, home: { kind: 'cut' }, seal: null }),
    ];
    for (const end of newEnds) {
      const node = builder.ends[end]?.node;
      if (node !== undefined) builder.positions.set(node, mark.position);
    }
    first.push({ label: [right, 'cut'], position: mark.position });
    second.unshift({ label: [left, 'cut'], position: mark.position });
    for (const [side, name] of [left, right].entries()) {
      const stations = side === 0 ? first : second;
      const outer = side === 0 ? first[0] : second[second.length - 1];
      const outerEnd = this.#endByName.get(`${piece.name}@${outer?.label[0] ?? ''}`) ?? 0;
      const ends: [number, number] = side === 0 ? [outerEnd, newEnds[0]] : [newEnds[1], outerEnd];
      const index = builder.pieces.length;
      builder.pieces.push({ name, wire: piece.wire, ends });
      this.#live.set(name, { index, name, wire: piece.wire, stations });
      this.#endByName.set(`${name}@${outer?.label[0] ?? ''}`, outerEnd);
      made[side] = index;
    }
    this.#endByName.set(`${left}@${right}`, newEnds[0]);
    this.#endByName.set(`${right}@${left}`, newEnds[1]);
    this.#live.delete(piece.name);
    this.#cut.set(piece.name, [leaves[0].text, leaves[1].text]);
    return { pieces: made, ends: newEnds, after: mark.after };
  }
}
