import type { GridFace, Side } from './face.ts';
import type { Corner, NumberingOrder } from './numbering-order.ts';

/**
 * What the labels of a block look like. With row letters the letter tells the row and the number the place in it
 * (`B4`); with column letters it is the other way round.
 */
export type LabelStyle = 'numbers' | 'letters' | 'row letters' | 'column letters';

/** A rectangular group of positions with its own count. */
export interface BlockScheme {
  readonly rows: number;
  readonly columns: number;
  /** How the count runs; row letters and column letters do not use it. */
  readonly count: NumberingOrder;
  readonly labels: LabelStyle;
  /** The first label: a number, a letter, or a letter and a number. */
  readonly first: string;
  /** The corner with the first label, as seen. */
  readonly start: Corner;
  /** Positions moulded shut: by label, or as `row 2 place 4` from the top and the left of this block. */
  readonly blocked: readonly string[];
  /** Whether a blocked position uses up a label. */
  readonly blockedCounted: boolean;
  /** Letters left out. */
  readonly skip: readonly string[];
}

/** One or more rectangular blocks, kept apart by a gap of one position. */
export interface BlocksScheme extends Pick<GridFace, 'seenFrom' | 'mark' | 'edge'> {
  readonly kind: 'blocks';
  readonly blocks: readonly BlockScheme[];
  readonly stand: 'side by side' | 'stacked';
}

/**
 * A rectangular face written out, a text for each row: labels with spaces between them; `--` is a blocked position,
 * `(B4)` a blocked position that has a label, `..` a gap as wide as a position, `.` half of one.
 */
export interface WrittenScheme extends Pick<GridFace, 'seenFrom' | 'mark' | 'edge'> {
  readonly kind: 'written';
  readonly rows: readonly string[];
}

/**
 * A round face written out, a text for each ring, outermost first: `5@10:30` is the label 5 at half past ten from the
 * key, `7@centre` the label in the middle, `--@8` and `(5)@8` blocked positions.
 */
export interface WrittenRoundScheme {
  readonly kind: 'written round';
  readonly seenFrom: Side;
  readonly rings: readonly string[];
}

/** A round face of evenly spaced rings; the count runs once round each ring and goes on in the next one inwards. */
export interface EvenRoundScheme {
  readonly kind: 'even round';
  readonly seenFrom: Side;
  /** Outermost first: `8 from 12`, `4 from 1:30`, `1 in centre`. */
  readonly rings: readonly string[];
  /** Which way the count runs, as seen. */
  readonly turn: 'clockwise' | 'anticlockwise';
  readonly labels: 'numbers' | 'letters';
  readonly first: string;
  readonly skip: readonly string[];
}

/** How a face was described; used once to make the explicit table. */
export type FaceScheme = BlocksScheme | WrittenScheme | WrittenRoundScheme | EvenRoundScheme;
