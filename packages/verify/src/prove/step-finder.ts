import type { Job, Zone } from '@loomproof/netlist';

/** Finds the step that did something, in one pass over the steps for all questions. Steps go by their written numbers. */
export class StepFinder {
  readonly #joint = new Map<number, number>();
  readonly #removal = new Map<number, number>();
  readonly #terminal = new Map<number, number>();
  readonly #seal = new Map<number, number>();
  readonly #lastAt = new Map<number, number>();
  readonly #cutZone = new Map<number, Zone>();

  constructor(job: Job) {
    for (const { action, number } of job.steps) {
      if ('place' in action) this.#lastAt.set(action.place, number);
      if (action.kind === 'join' || action.kind === 'tap') setFirst(this.#joint, action.joint, number);
      else if (action.kind === 'remove tap') setFirst(this.#removal, action.joint, number);
      else if (action.kind === 'fit terminal') setFirst(this.#terminal, action.terminal, number);
      else if (action.kind === 'fit seal') setFirst(this.#seal, action.end, number);
      else if (action.kind === 'cut' && action.zone !== 'unknown')
        for (const end of action.newEnds) setFirst(this.#cutZone, end, action.zone);
    }
  }

  /** The step that made a splice or a tap, or null. */
  jointMade(joint: number): number | null {
    return this.#joint.get(joint) ?? null;
  }

  /** The first step that removes a tap, or null. */
  tapRemoved(joint: number): number | null {
    return this.#removal.get(joint) ?? null;
  }

  /** The step that fitted a terminal, or null. */
  terminalFitted(terminal: number): number | null {
    return this.#terminal.get(terminal) ?? null;
  }

  /** The first step that fitted a seal on an end, or null. */
  sealFitted(end: number): number | null {
    return this.#seal.get(end) ?? null;
  }

  /** The last step that names a place, or null. */
  lastAt(place: number): number | null {
    return this.#lastAt.get(place) ?? null;
  }

  /** The zone that the cut which made an end says, or unknown. */
  zoneOfCut(end: number): Zone {
    return this.#cutZone.get(end) ?? 'unknown';
  }
}

function setFirst<T>(map: Map<number, T>, key: number, value: T): void {
  if (!map.has(key)) map.set(key, value);
}
