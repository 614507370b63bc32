import { type Job, Rework, type Side } from '@loomproof/netlist';
import { unpackModel } from '../src/checks/model-codec.ts';
import type { GroupModel, PageChecks } from '../src/checks/work-checks.ts';
import { faceFigure } from '../src/face-figure.ts';
import { lookOf } from '../src/work-steps.ts';
import { element } from './element.ts';

/** Draws the faces that two probes go to, as they are when the readings of a group are taken. */
export class ProbeFaces {
  readonly #rework: Rework | null;
  /** Whether probes go into the mating faces, because everything is unplugged. */
  readonly #isApart: boolean;

  /** @param group - the name of the group, or `found` for the machine before the work */
  constructor({ model, whole, stage }: PageChecks, group: string) {
    this.#isApart = !stage.startsWith('in place');
    if (model === null) {
      this.#rework = null;
      return;
    }
    const models = unpackModel(model) as ReadonlyMap<string, GroupModel>;
    const job = (models.get(group) ?? models.get(whole))?.own.job;
    this.#rework = job === undefined ? null : workedOn(job, models.has(group));
  }

  /** The faces of the connectors that have these points, with the probes marked; none where no face is known. */
  figures(red: string, black: string): readonly HTMLElement[] {
    const rework = this.#rework;
    if (rework === null) return [];
    const { job } = rework;
    const marks = new Map<number, Map<string, string>>();
    for (const [address, sign] of [
      [red, '+'],
      [black, '−'],
    ] as const) {
      const place = job.places.find((one) => one.address === address);
      if (place === undefined || (job.connectors[place.connector]?.face ?? null) === null) continue;
      const own = marks.get(place.connector) ?? new Map<string, string>();
      marks.set(place.connector, own.set(place.label, sign));
    }
    const views = (side: Side): readonly HTMLElement[] =>
      [...marks].map(([connector, own]) => this.#figure(rework, connector, side, own));
    if (marks.size === 0 || !this.#isApart) return views('wire side');
    const behind = element(
      'details',
      {},
      element('summary', {}, 'Seen from the wires'),
      ...views('wire side'),
    );
    return [...views('mating side'), behind];
  }

  #figure(rework: Rework, connector: number, side: Side, marks: ReadonlyMap<string, string>): HTMLElement {
    const { name = '', face = null } = rework.job.connectors[connector] ?? {};
    const title = `${name} from its ${side}, ${[...marks].map(([label, sign]) => `${sign} at ${label}`).join(', ')}`;
    const pan = element('div', {
      class: 'pan',
      attributes: [
        ['tabindex', '0'],
        ['role', 'group'],
        ['aria-label', title],
      ],
    });
    // Only markup that escapes every text of the kit makes this.
    if (face !== null)
      pan.innerHTML = faceFigure(face, { side, marks, look: lookOf(rework, connector), title }).text;
    const caption =
      side === 'mating side' ? 'mating face toward you, where the probe goes' : 'wires toward you';
    return element('figure', {}, pan, element('figcaption', {}, `${name}, ${caption}`));
  }
}

function workedOn(job: Job, isDone: boolean): Rework {
  const rework = new Rework(job);
  if (isDone) for (const step of job.steps) rework.apply(step);
  return rework;
}
