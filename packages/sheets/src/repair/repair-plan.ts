import {
  InvariantError,
  type Job,
  type Part,
  type Piece,
  type Step,
  type StepAction,
  type WireEnd,
  type Zone,
} from '@loomproof/netlist';

/** A mistake at one step and the steps that put it right, as a job that the prover can judge. */
export interface RepairPlan {
  /** What went wrong, without a place: plans of the same mistake differ only in `at`. */
  readonly mistake: string;
  /** Where it went wrong: an address or a wire with its address; empty where the mistake has no other place. */
  readonly at: string;
  /** The work with the mistake made, put right, and then gone on with as written. */
  readonly job: Job;
  /** The steps that put it right, without the mistake. */
  readonly repair: readonly Step[];
  /** What is needed beside the bag, in words. */
  readonly needs: readonly string[];
  /** What the proof does not cover and a person must see to before the steps, in words, or null. */
  readonly before: string | null;
  /** Whether the step at which it went wrong is still to be done after the repair. */
  readonly again: boolean;
}

/** A mistake from which no list of steps leads back that could be judged. */
export interface NoRepair {
  readonly mistake: string;
  readonly at: string;
  readonly why: string;
}

/** What a repair may change of the machine though no net of it is named: the wire or cavity that was hit. */
export interface Hit {
  readonly wires?: readonly number[];
  readonly places?: readonly number[];
}

/** How the work goes on after a repair. */
export interface GoingOn {
  readonly before?: string;
  /** What is done in place of the step at which it went wrong; null where the repair does its work. */
  readonly instead?: StepAction | null;
  /** Ends and pieces that later steps find in place of those that they name. */
  readonly ends?: ReadonlyMap<number, number>;
  readonly pieces?: ReadonlyMap<number, number>;
}

/** What a cut leaves: new where nothing is given. */
export interface CutLeaves {
  readonly ends?: readonly [number | null, number | null];
  readonly leaves?: readonly [number | null, number | null];
  /** Names of the two pieces. */
  readonly names: readonly [string, string];
  readonly where: { readonly fromEnd: 0 | 1; readonly mm: number } | null;
  /** How many taps lie before it. */
  readonly after?: number;
}

/** Collects what a repair adds to a job: new ends, pieces and joints come after all that the job has. */
export class RepairDraft {
  readonly #job: Job;
  readonly #ends: WireEnd[] = [];
  readonly #pieces: Piece[] = [];
  readonly #joints: Job['joints'][number][] = [];
  readonly #parts = new Map<string, Part>();
  readonly #more = new Map<string, number>();
  readonly #needs: string[] = [];
  readonly #positions: (readonly [number, { readonly fromEnd: 0 | 1; readonly mm: number }])[] = [];
  #nodes = 0;

  constructor(job: Job) {
    this.#job = job;
  }

  /** The two pieces and ends that a cut of a whole wire leaves. */
  cutOf(
    wire: number,
    where: { readonly fromEnd: 0 | 1; readonly mm: number } | null,
    zone: Zone,
  ): Extract<StepAction, { kind: 'cut' }> {
    const { name = '', ends = [] } = this.#job.wires[wire] ?? {};
    return this.cutAt(wire, { names: sidesOf(this.#job, name, ends), where }, zone);
  }

  /** A cut of a piece of the job or of this draft. */
  cutAt(piece: number, cut: CutLeaves, zone: Zone): Extract<StepAction, { kind: 'cut' }> {
    const { wire, ends } = this.#pieceAt(piece);
    const newEnds = ([0, 1] as const).map(
      (side) => cut.ends?.[side] ?? this.#end(`the cut end of ${cut.names[side]}`, wire, cut.where),
    ) as [number, number];
    const leaves = ([0, 1] as const).map(
      (side) =>
        cut.leaves?.[side] ??
        this.piece(cut.names[side], wire, side === 0 ? [ends[0], newEnds[0]] : [newEnds[1], ends[1]]),
    ) as [number, number];
    return { kind: 'cut', piece, after: cut.after ?? 0, leaves, newEnds, zone };
  }

  /** An end that a cut will make, under a name of its own. */
  endNamed(name: string, wire: number): number {
    return this.#end(name, wire, null);
  }

  /** A piece that the job does not have. */
  piece(name: string, wire: number, ends: readonly [number, number]): number {
    this.#pieces.push({ name, wire, ends });
    return this.#job.pieces.length + this.#pieces.length - 1;
  }

  /** A splice or tap that is not there yet. */
  joint(name: string, kind: 'splice' | 'tap', part: string | null, zone: Zone): number {
    this.#joints.push({
      name,
      node: this.#node(),
      kind,
      part,
      origin: 'kit',
      zone,
      before: 'absent',
      cover: null,
    });
    return this.#job.joints.length + this.#joints.length - 1;
  }

  /** One more of a part than the bag holds, said in words for those who must find it. */
  need(part: Part, words: string): string {
    this.#parts.set(part.name, part);
    this.#more.set(part.name, (this.#more.get(part.name) ?? 0) + 1);
    this.#needs.push(words);
    return part.name;
  }

  /** Something that is needed beside the bag and that the model does not count, such as a part that was spoilt. */
  tell(words: string): void {
    this.#needs.push(words);
  }

  /**
   * The plan: the mistake and its repair stand before the step at which it was made, which is then done as written.
   *
   * @param at - index of the step that the work goes on with
   */
  plan(
    at: number,
    told: { readonly mistake: string; readonly at: string },
    wrong: readonly StepAction[],
    repair: readonly StepAction[],
    hit: Hit,
    on: GoingOn = {},
  ): RepairPlan {
    const job = this.#job;
    const { instead, before = null, ends = new Map(), pieces = new Map() } = on;
    const written = job.steps[at];
    const own =
      instead === null || written === undefined ? [] : [{ ...written, action: instead ?? written.action }];
    const later = job.steps
      .slice(at + 1)
      .map((step): Step => ({ ...step, action: withOthers(step.action, ends, pieces) }));
    // What a later cut leaves has an end of what it cuts.
    const left = new Set(later.flatMap(({ action }) => (action.kind === 'cut' ? action.leaves : [])));
    const other = (end: number): number => ends.get(end) ?? end;
    const next = job.steps[at]?.number ?? 0;
    // Numbers between two whole ones: written steps keep theirs, and no two steps share one.
    const made = [...wrong, ...repair].map(
      (action, index): Step => ({
        number: next - 1 + (index + 1) / 100,
        action,
        note: null,
        caution: null,
        hold: null,
        span: null,
      }),
    );
    const bag = new Map(job.bag);
    for (const [part, count] of this.#more) bag.set(part, (bag.get(part) ?? 0) + count);
    const { changed } = job.wanted;
    return {
      ...told,
      repair: made.slice(wrong.length),
      needs: this.#needs,
      before,
      again: instead !== null,
      job: {
        ...job,
        steps: [...job.steps.slice(0, at), ...made, ...own, ...later],
        ends: [...job.ends, ...this.#ends],
        pieces: [
          ...job.pieces.map((piece, index) =>
            left.has(index)
              ? { ...piece, ends: [other(piece.ends[0]), other(piece.ends[1])] as const }
              : piece,
          ),
          ...this.#pieces,
        ],
        joints: [...job.joints, ...this.#joints],
        parts: new Map([...job.parts, ...this.#parts]),
        positions: new Map([...job.positions, ...this.#positions]),
        nodeCount: job.nodeCount + this.#nodes,
        bag,
        wanted: {
          ...job.wanted,
          // Another machine has no such mistake, so nothing is compared with it here.
          agree: null,
          changed: {
            ...changed,
            wires: new Set([...changed.wires, ...(hit.wires ?? [])]),
            places: new Set([...changed.places, ...(hit.places ?? [])]),
          },
        },
      },
    };
  }

  #pieceAt(index: number): Piece {
    const { pieces } = this.#job;
    const piece = pieces[index] ?? this.#pieces[index - pieces.length];
    if (piece === undefined) throw new InvariantError('sheets/RepairDraft', `no piece ${index}`);
    return piece;
  }

  #end(name: string, wire: number, where: CutLeaves['where']): number {
    const node = this.#node();
    this.#ends.push({ name, node, wire, home: { kind: 'cut' }, seal: null });
    if (where !== null) this.#positions.push([node, where]);
    return this.#job.ends.length + this.#ends.length - 1;
  }

  #node(): number {
    this.#nodes += 1;
    return this.#job.nodeCount + this.#nodes - 1;
  }
}

/** The two parts that a cut leaves, each by where it still leads: a person at the cut sees no first and second end. */
export function sidesOf(job: Job, name: string, ends: readonly number[]): readonly [string, string] {
  const [from = '', to = ''] = ends.map((end) => job.ends[end]?.name ?? '');
  const mark = (end: string): string => end.slice(end.lastIndexOf('@') + 1);
  return [`${name} toward ${mark(from)}`, `${name} toward ${mark(to)}`];
}

/** A step that is done on other ends and pieces than those that it names. */
function withOthers(
  action: StepAction,
  ends: ReadonlyMap<number, number>,
  pieces: ReadonlyMap<number, number>,
): StepAction {
  const end = (index: number): number => ends.get(index) ?? index;
  const piece = (index: number): number => pieces.get(index) ?? index;
  switch (action.kind) {
    case 'join':
    case 'fit terminal':
      return { ...action, ends: action.ends.map(end) };
    case 'tap':
      return { ...action, piece: piece(action.piece), branch: end(action.branch) };
    case 'cut':
    case 'fasten':
    case 'remove off-cut':
      return { ...action, piece: piece(action.piece) };
    default:
      return 'end' in action ? { ...action, end: end(action.end) } : action;
  }
}
