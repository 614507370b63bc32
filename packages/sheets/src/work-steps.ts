import { type Face, type Job, Rework, type Step } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import type { CavityLook } from './face-figure.ts';
import { cautionsBefore } from './general-cautions.ts';
import { holdBefore } from './hold-points.ts';
import { ifWrong } from './if-wrong.ts';
import { type PlaceGuide, placeGuide } from './place-guide.ts';
import { provedRepairs, type Repair } from './repair/proved-repairs.ts';
import { sentence } from './sentence.ts';
import { shownByStep } from './shown-by-step.ts';
import { placesOfStep } from './step-place.ts';
import { stepWords } from './step-words.ts';
import { stopHere } from './stop-here.ts';
import { endsAt, piecesIn, wireData } from './wire-words.ts';

/** A place of a step with what is seen at the face before it. */
export interface StepSight extends PlaceGuide {
  readonly face: Face | null;
  readonly look: (label: string) => CavityLook;
}

/** One step as a person carries it out. */
export interface WorkStep {
  readonly number: number;
  readonly kind: Step['action']['kind'];
  readonly order: string;
  readonly note: string | null;
  readonly cautions: readonly string[];
  readonly holds: readonly string[];
  /** What to look after when work stops before this step; empty where it is no hold point. */
  readonly stop: readonly string[];
  readonly places: readonly StepSight[];
  /** Colour and size of the wire, as a help. */
  readonly wire: string | null;
  readonly ifWrong: readonly string[];
  /** Proved ways back from a mistake at this step; none where the work itself is not proved. */
  readonly repairs: readonly Repair[];
  /** What is not shown when this step was not done as written. */
  readonly shows: string;
}

/**
 * The steps of one variant with all that a person needs at each: read from the harness as it is before that step.
 *
 * @param job - the variant
 * @param verdict - what was proved of it
 * @param others - the same kit's other variants, for colours that vary
 */
export function workSteps(job: Job, verdict: VariantVerdict, others: readonly Job[]): readonly WorkStep[] {
  const rework = new Rework(job);
  return job.steps.map((step, at): WorkStep => {
    const { action, number } = step;
    const places = placesOfStep(rework, action).map(
      ({ place, away }): StepSight => ({
        ...placeGuide(rework, place, away),
        look: lookOf(rework, job.places[place]?.connector ?? -1),
      }),
    );
    const sealed = places.some(({ connector }) =>
      job.connectors.some((one) => one.name === connector && one.sealed),
    );
    const own = holdBefore(action);
    const holds = [...(own === null ? [] : [own]), ...(step.hold === null ? [] : [step.hold])];
    const stop = holds.length === 0 ? [] : stopHere(rework);
    const wire = wireHelp(rework, step, others);
    const repairs = verdict.verdict === 'proved' ? provedRepairs(rework, at) : [];
    rework.apply(step);
    return {
      number,
      kind: action.kind,
      order: sentence(stepWords(job, action)),
      note: step.note,
      cautions: [...(step.caution === null ? [] : [step.caution]), ...cautionsBefore(action.kind, sealed)],
      holds,
      stop,
      places,
      wire,
      ifWrong: ifWrong(action),
      repairs,
      shows: shownByStep(job, step, verdict),
    };
  });
}

/** What stands in each cavity of a connector now; taken at once, since the harness goes on changing. */
export function lookOf(rework: Rework, connector: number): (label: string) => CavityLook {
  const { job } = rework;
  const looks = new Map<string, CavityLook>();
  const half = job.connectors[connector];
  const first = half?.firstPlace ?? 0;
  for (let place = first; place < first + (half?.placeCount ?? 0); place += 1) {
    const terminal = rework.seated[place] ?? -1;
    const piece = piecesIn(rework, terminal)[0] ?? -1;
    looks.set(job.places[place]?.label ?? '', {
      holds:
        rework.plug.at(place) != null
          ? 'plug'
          : terminal >= 0
            ? 'wire'
            : half?.device === true
              ? 'pin'
              : 'nothing',
      codes: job.wires[job.pieces[piece]?.wire ?? -1]?.colour?.codes ?? [],
    });
  }
  return (label) => looks.get(label) ?? { holds: 'nothing', codes: [] };
}

/** The wire that a step is about, by its looks as it is now. */
function wireHelp(rework: Rework, { action }: Step, others: readonly Job[]): string | null {
  const { job } = rework;
  const wire =
    action.kind === 'cut' ||
    action.kind === 'tap' ||
    action.kind === 'fasten' ||
    action.kind === 'remove off-cut'
      ? (job.pieces[action.piece]?.wire ?? -1)
      : action.kind === 'insert' || action.kind === 'attach' || action.kind === 'detach'
        ? (job.ends[action.end]?.wire ?? -1)
        : action.kind === 'withdraw' || action.kind === 'prove dead'
          ? wireAlone(rework, action.place)
          : -1;
  const name = job.wires[wire]?.name;
  const { colour, size } = wireData(job, wire);
  if (name === undefined || colour === '') return null;
  const elsewhere = new Set(
    others.flatMap((other) => {
      const index = other.wires.findIndex((one) => one.name === name);
      const seen = index < 0 ? '' : wireData(other, index).colour;
      return seen === '' || seen === colour ? [] : [seen];
    }),
  );
  const varies = elsewhere.size === 0 ? '' : `; in other variants ${[...elsewhere].sort().join(', ')}`;
  return `${name}: ${colour}${size === '' ? '' : `, ${size}`}${varies}. Colour is a help only: ${job.wires[wire]?.origin === 'kit' ? 'the mark on it' : 'its place'} decides.`;
}

/** The wire in a cavity where it is the only one there; what is on a stud is told with its place. */
function wireAlone(rework: Rework, place: number): number {
  const ends = rework.job.places[place]?.kind === 'cavity' ? endsAt(rework, place) : [];
  return ends.length === 1 ? (rework.job.ends[ends[0] ?? -1]?.wire ?? -1) : -1;
}
