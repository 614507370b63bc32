/** The side from which a face is seen: where the wires enter, or where the partner is met. */
export type Side = 'wire side' | 'mating side';

/** An edge of a rectangular face, as seen. */
export type Edge = 'top' | 'bottom' | 'left' | 'right';

/** One position of a face. */
export interface FacePosition {
  /** The cavity label; null only for a blocked position that was not counted and so has no label. */
  readonly label: string | null;
  /** Whether it is moulded shut. */
  readonly blocked: boolean;
  /** Index of the row from the top, or of the ring from the outside; the centre is the last ring. */
  readonly row: number;
  /**
   * Grid: distance of its left edge from the left edge of the face, in half positions, so that staggered rows have
   * odd numbers. Round: clock position in minutes of the hour hand from the key, 0 to 719 (60 is 1 o'clock, 30
   * degrees); the centre has 0.
   */
  readonly at: number;
}

/**
 * A rectangular face as an explicit table. Rows run from the top, positions from the left; a gap is the absence of a
 * position, and a row without positions keeps apart what stands above and below it.
 */
export interface GridFace {
  readonly kind: 'grid';
  readonly seenFrom: Side;
  /** What fixes the turn of the face: the latch, or a key where there is no latch. */
  readonly mark: 'latch' | 'key';
  /** Where that mark is, as seen. */
  readonly edge: Edge;
  /** Width in half positions. */
  readonly width: number;
  readonly rows: readonly (readonly FacePosition[])[];
}

/** A round face as an explicit table of rings, outermost first, each clockwise from the key, which is at 12 o'clock. */
export interface RoundFace {
  readonly kind: 'round';
  readonly seenFrom: Side;
  /** Whether the last ring is the single position in the centre. */
  readonly centre: boolean;
  readonly rows: readonly (readonly FacePosition[])[];
}

/**
 * Where each cavity of a connector is, seen from one side. Only this table is kept: places in words, neighbours and
 * misreadings are computed from it.
 */
export type Face = GridFace | RoundFace;

/** What was made of a face, with everything that was wrong; with any problem there is no face. */
export interface FaceReading {
  readonly value: Face | null;
  /** Sentences without full stop that name what was found and what was expected. */
  readonly problems: readonly string[];
}
