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

/** Which cavity was taken for which. */
interface Misread {
  /** Each cavity meant with the one hit; those that are not in the list are found. */
  readonly hits: readonly (readonly [meant: number, hit: number])[];
  readonly how: string;
  /** In the work: steps are done at other cavities. In the bag: terminals were fitted in other cavities. */
  readonly where: 'work' | 'bag' | 'both';
}

/** A mistake in the work: the job is changed by it and run again, so its effect is computed and never described. */
export type WorkFault =
  | { readonly is: 'step left out'; readonly at: number }
  | ({ readonly is: 'wrong cavity' } & WrongPlace)
  | { readonly is: 'cavities exchanged'; readonly at: readonly [number, number] }
  | { readonly is: 'ends exchanged'; readonly ends: readonly [number, number] }
  | { readonly is: 'terminals exchanged'; readonly terminals: readonly [number, number] }
  | { readonly is: 'wrong wire'; readonly at: number; readonly wire: number; readonly end: 0 | 1 }
  | { readonly is: 'cut at another place'; readonly at: number; readonly after: number }
  /** Every cavity of one connector taken for another one, in the work or where the kit was built. */
  | ({ readonly is: 'connector misread' } & Misread)
  /** The same at both connectors that wires of the bag run between, in the same way. */
  | ({ readonly is: 'both ends misread' } & Misread)
  | ({ readonly is: 'built in a wrong cavity' } & Misread)
  | { readonly is: 'other variant'; readonly variant: string };

/** Something broken in the finished harness: a join that is not there, or one that should not be. Nodes of a job. */
export type HarnessFault =
  | { readonly is: 'does not conduct'; readonly join: readonly [number, number] }
  | { readonly is: 'bridged'; readonly places: readonly [number, number] }
  | { readonly is: 'bare end touches'; readonly end: number; readonly place: number }
  /** A lamp, coil, diode or fuse that does not conduct or is not there. */
  | { readonly is: 'part open'; readonly element: number }
  /** The two pins of a load or diode joined by metal. */
  | { readonly is: 'part bridged'; readonly element: number }
  | { readonly is: 'diode reversed'; readonly element: number }
  /** Another terminator across a bus pair, by its index among the special circuits. */
  | { readonly is: 'terminator too many'; readonly circuit: number };

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
  /** What it is called, and why, where it is there only in part: a join that has some ohms, a bridge that has many. */
  readonly inPart?: { readonly words: string; readonly reason: string };
}

/** A class of mistake that changes no connection, with the step that shows it. */
export interface UnreadableFault {
  /** Index of the step in the job, from 0. */
  readonly at: number;
  readonly words: string;
  readonly shownBy: string;
}

const harnessClasses: ReadonlySet<FaultClass> = new Set<HarnessFault['is']>([
  'does not conduct',
  'bridged',
  'bare end touches',
  'part open',
  'part bridged',
  'diode reversed',
  'terminator too many',
]);

/** Whether a fault is a change of the work. */
export function isWorkFault(fault: Fault): fault is WorkFault {
  return !harnessClasses.has(fault.is);
}
