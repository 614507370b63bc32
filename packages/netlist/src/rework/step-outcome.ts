/** Why a step could not be done at all: nothing happened, and what follows from it is its consequence. */
export type RefusalReason =
  | 'occupied'
  | 'plug in cavity'
  | 'blocked'
  | 'locked'
  | 'latched'
  | 'already plugged'
  | 'not plugged'
  | 'no counterpart'
  | 'no lock'
  | 'no latch'
  | 'already so'
  | 'nothing there'
  | 'not there'
  | 'not free'
  | 'covered'
  | 'not stripped'
  | 'already stripped'
  | 'no terminal'
  | 'has terminal'
  | 'wrong terminal'
  | 'still attached'
  | 'no tube'
  | 'not fitted';

/** A rule that a step broke while it was done all the same. */
export type BreachReason =
  | 'worked while plugged'
  | 'plugged with lock open'
  | 'not placed'
  | 'too many ends'
  | 'too many wires'
  | 'too many rings'
  | 'in flex zone';

/** What a step did to something that existed before it. */
export interface Touch {
  readonly what: 'wire' | 'terminal' | 'place' | 'connector' | 'element' | 'seal';
  /** Index in the list of that kind; for seals the wire end. */
  readonly index: number;
}

/** What came of one step. */
export interface StepOutcome {
  readonly refused: RefusalReason | null;
  readonly breaches: readonly BreachReason[];
  readonly touches: readonly Touch[];
}
