/** How often a class of mistake is met, as an order and not as a number: common practice, no source. */
export type Likelihood = 'often' | 'sometimes' | 'seldom';

/** Where a mistake is made, which decides whom a report speaks to. */
type FaultOrigin = 'installation error' | 'build error' | 'damage';

/** How a person came to a wrong cavity, for the reader. */
interface WrongPlace {
  /** Index of the step in the job, from 0. */
  readonly at: number;
  readonly hit: number;
  readonly how: string;
}

/** A mistake in the work: the job is changed by it and run again, so its effect is computed and never described. */
export type WorkFault =
  | { readonly is: 'step left out'; readonly at: number }
  | ({ readonly is: 'wrong cavity' } & WrongPlace)
  | { readonly is: 'cavities exchanged'; readonly at: readonly [number, number] }
  | { readonly is: 'ends exchanged'; readonly ends: readonly [number, number] }
  | { readonly is: 'terminals exchanged'; readonly terminals: readonly [number, number] }
  | { readonly is: 'wrong wire'; readonly at: number; readonly wire: number; readonly end: 0 | 1 }
  | { readonly is: 'other variant'; readonly variant: string };

/** Something broken in the finished harness: a join that is not there, or one that should not be. Nodes of a job. */
export type HarnessFault =
  | { readonly is: 'does not conduct'; readonly join: readonly [number, number] }
  | { readonly is: 'bridged'; readonly places: readonly [number, number] }
  | { readonly is: 'bare end touches'; readonly end: number; readonly place: number };

/** One mistake made in carrying out the work, or one broken part. */
export type Fault = WorkFault | HarnessFault;

/** The classes of {@link Fault}. */
export type FaultClass = Fault['is'];

/** A fault with its name for people, how likely it is and why, and who makes it. */
export interface ListedFault {
  /** The same text for the same fault in every run: its class and what it is about. */
  readonly id: string;
  readonly fault: Fault;
  readonly words: string;
  readonly likelihood: Likelihood;
  readonly reason: string;
  readonly origin: FaultOrigin;
  /** What a person looks at or pulls where no reading shows the fault. */
  readonly shownBy: string;
}

/** A class of mistake that changes no connection, with the step that shows it. */
export interface UnreadableFault {
  readonly words: string;
  readonly shownBy: string;
}

/** Whether a fault is a change of the work. */
export function isWorkFault(fault: Fault): fault is WorkFault {
  return fault.is !== 'does not conduct' && fault.is !== 'bridged' && fault.is !== 'bare end touches';
}
