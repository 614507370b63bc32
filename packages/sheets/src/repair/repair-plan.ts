import type { Job, Part, Piece, Step, StepAction, WireEnd, Zone } from '@loomproof/netlist';

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
    const { name = '', ends = [-1, -1] as const } = this.#job.wires[wire] ?? {};
    const firstEnd = this.#job.ends.length + this.#ends.length;
    const firstPiece = this.#job.pieces.length + this.#pieces.length;
    for (const side of ['from side', 'to side']) {
      const node = this.#node();
      this.#ends.push({ name: `${name} ${side}@cut`, node, wire, home: { kind: 'cut' }, seal: null });
      if (where !== null) this.#positions.push([node, where]);
    }
    this.#pieces.push(
      { name: `${name} from side`, wire, ends: [ends[0], firstEnd] },
      { name: `${name} to side`, wire, ends: [firstEnd + 1, ends[1]] },
    );
    return {
      kind: 'cut',
      piece: wire,
      after: 0,
      leaves: [firstPiece, firstPiece + 1],
      newEnds: [firstEnd, firstEnd + 1],
      zone,
    };
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
  ): RepairPlan {
    const job = this.#job;
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
      job: {
        ...job,
        steps: [...job.steps.slice(0, at), ...made, ...job.steps.slice(at)],
        ends: [...job.ends, ...this.#ends],
        pieces: [...job.pieces, ...this.#pieces],
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

  #node(): number {
    this.#nodes += 1;
    return this.#job.nodeCount + this.#nodes - 1;
  }
}
