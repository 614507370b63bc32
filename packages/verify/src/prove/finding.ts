/** The obligations of a rework; 9 and 10 are electrical and claimed only with electrical data. */
export type Obligation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10;

/** Proved, refuted with a witness, or undecided for want of data; undecided never counts as proved. */
export type VerdictWord = 'proved' | 'refuted' | 'undecided';

/** Every kind of finding with the obligation it breaks. */
export const findingKinds = {
  'circuit-open': 1,
  'wrong-connection': 2,
  'apart-joined': 2,
  'apart-unknown': 2,
  'net-split': 3,
  'touched-unnamed': 3,
  'mate-changed': 3,
  'kit-wire-idle': 3,
  'drawing-differs': 3,
  'stub-undeclared': 4,
  'stub-not-dead': 4,
  'stub-not-live': 4,
  'stub-missing': 4,
  'stub-unknown': 4,
  'bare-end-live': 5,
  'bare-end': 5,
  'wound-open': 5,
  'cover-unfit': 5,
  'joint-unsealed': 5,
  'zone-unknown': 5,
  'open-cavity': 6,
  'seal-missing': 6,
  'terminal-unfit': 6,
  'size-out-of-range': 6,
  'seal-out-of-range': 6,
  'range-unknown': 6,
  'too-many-ends': 6,
  'too-many-wires': 6,
  'too-many-rings': 6,
  'in-flex-zone': 6,
  'second-splice': 6,
  'step-refused': 7,
  'work-on-live': 7,
  'worked-while-plugged': 7,
  'plugged-with-lock-open': 7,
  'not-placed': 7,
  'left-unplugged': 7,
  'still-plugged': 7,
  'lock-left-open': 7,
  'supply-left-off': 7,
  'part-unused': 7,
  'part-missing': 7,
  'jumper-left': 7,
  'deviation-unmatched': 7,
  'variants-differ': 8,
  'variants-alike': 8,
  'special-touched': 7,
  'colour-alone': 7,
  'bus-pair-unfit': 9,
  'drop-too-large': 9,
  'conductor-unprotected': 9,
  'conductor-overloaded': 9,
  'fuse-overloaded': 9,
  'drive-overloaded': 9,
  'drive-underloaded': 9,
  'electrical-unknown': 9,
  'load-powered': 10,
  'load-unpowered': 10,
  'sources-tied': 10,
  'back-feed-unknown': 10,
} as const satisfies Record<string, Obligation>;

/** The name of a kind of finding. */
export type FindingKind = keyof typeof findingKinds;

/** Kinds that say what could not be decided, and for want of what. */
export const undecidedKinds: ReadonlySet<FindingKind> = new Set<FindingKind>([
  'apart-unknown',
  'stub-unknown',
  'zone-unknown',
  'range-unknown',
  'electrical-unknown',
  'back-feed-unknown',
]);

/** Where something comes from: as found, as the kit was made, or a step. */
export type Made = 'stock' | 'kit' | number;

/** One hop of a path that a finger can follow. */
export interface PathHop {
  readonly by: 'conductor' | 'crimp' | 'seat' | 'joint' | 'mate' | 'jumper' | 'element' | 'chassis';
  readonly from: string;
  readonly to: string;
  /** Wire name, element name, or null. */
  readonly name: string | null;
  readonly colour: string | null;
  readonly size: string | null;
  readonly made: Made;
}

/** A free end at which a fragment of an open net stops, and the last step that was done on it. */
export interface Stop {
  readonly end: string;
  readonly state: 'cut' | 'stripped' | 'terminal' | 'covered';
  readonly step: number | null;
}

/** What is left of a net that should be whole. */
export interface Fragment {
  readonly places: readonly string[];
  readonly stops: readonly Stop[];
}

/** Two places that should not meet, the way they do, and since when. */
export interface WrongJoin {
  readonly between: readonly [string, string];
  readonly path: readonly PathHop[];
  /** The step after which they stay joined for good, or null. */
  readonly step: number | null;
  readonly cause: 'step' | 'kit as made' | 'never parted';
}

/** A net that is not whole. */
export interface OpenNet {
  /** The stated net, or null for one that nobody named. */
  readonly circuit: string | null;
  readonly fragments: readonly Fragment[];
  /** Pairs of places, one of each of two fragments, that should be joined and are not. */
  readonly missing: readonly (readonly [string, string])[];
  readonly step: number | null;
  readonly cause: 'step' | 'never joined';
}

/** Which switches and drives are on, and which off. */
export interface DriveState {
  readonly on: readonly string[];
  readonly off: readonly string[];
}

/** What a conductor, contact or element takes of the volts lost on a way. */
export interface LossPart {
  readonly what: string;
  readonly volts: number;
}

/** Whether and how a source is reached. */
export interface SourceReach {
  readonly source: string;
  readonly certain: boolean;
  readonly path: readonly PathHop[];
}

/** Proof or counter-evidence as data; a reader can walk it without this program. */
export type Witness =
  | { readonly is: 'nets'; readonly joins: readonly WrongJoin[]; readonly opens: readonly OpenNet[] }
  | { readonly is: 'path'; readonly path: readonly PathHop[] }
  | { readonly is: 'touch'; readonly what: string; readonly name: string; readonly steps: readonly number[] }
  | {
      readonly is: 'stub';
      readonly wire: string;
      readonly end: string;
      readonly at: readonly string[];
      readonly reach: SourceReach | null;
    }
  | { readonly is: 'bare'; readonly end: string; readonly reach: SourceReach | null }
  | {
      readonly is: 'fit';
      readonly part: string;
      readonly wire: string | null;
      readonly value: string | null;
      readonly range: string | null;
    }
  | { readonly is: 'refusal'; readonly reason: string }
  | { readonly is: 'state'; readonly what: string; readonly expected: string; readonly found: string }
  | { readonly is: 'count'; readonly part: string; readonly inBag: number; readonly used: number }
  | {
      readonly is: 'drawing';
      readonly row: string;
      readonly line: number | null;
      readonly drawn: string;
      readonly found: string;
    }
  | { readonly is: 'missing'; readonly items: readonly string[] }
  | {
      readonly is: 'limit';
      readonly quantity: string;
      readonly value: number;
      readonly limit: number;
      readonly unit: 'V' | 'A' | 'mm' | 'pieces';
      /** Where the limit comes from. */
      readonly source: string;
      /** What takes how much, largest first; empty where nothing is lost. */
      readonly parts: readonly LossPart[];
    }
  | {
      readonly is: 'power';
      readonly load: string;
      /** Volts across it, or null where a resistance that decides them is not said. */
      readonly volts: number | null;
      readonly state: DriveState;
      /** The return that is taken as open, or null. */
      readonly open: PathHop | null;
      readonly path: readonly PathHop[];
    }
  | {
      readonly is: 'tie';
      readonly between: readonly [string, string];
      readonly state: DriveState;
      readonly path: readonly PathHop[];
    }
  | { readonly is: 'variants'; readonly place: string; readonly first: string; readonly second: string };

/** Something wrong with the wiring or the work, with its evidence. */
export interface Finding {
  readonly kind: FindingKind;
  readonly obligation: Obligation;
  /** The sentence for people; everything in it is also in `points` and `witness`. */
  readonly message: string;
  /** The number of the step that did it as written in the kit file, or null. */
  readonly step: number | null;
  /** Addresses and names that it concerns, sorted. */
  readonly points: readonly string[];
  readonly witness: Witness;
  /** Steps that are to blame, in order. */
  readonly culprits: readonly number[];
  /** What follows from this cause and is therefore not a finding of its own. */
  readonly consequences: readonly Consequence[];
}

/** A further fault that has the same cause as the finding it stands under. */
export interface Consequence {
  readonly kind: FindingKind;
  readonly obligation: Obligation;
  readonly step: number | null;
  readonly points: readonly string[];
}

/** A finding before causes are sorted out; `keys` says what it is about, so that one cause gives one finding. */
export interface RawFinding {
  readonly kind: FindingKind;
  readonly step: number | null;
  readonly points: readonly string[];
  readonly witness: Witness;
  readonly culprits: readonly number[];
  /** `node:3`, `connector:2`, `part:CAP`: compared with what other findings are about. */
  readonly keys: readonly string[];
}

/** The obligation that a kind of finding breaks. */
export function obligationOf(kind: FindingKind): Obligation {
  return findingKinds[kind];
}
