import type { Job, KitVariant, Side } from '@loomproof/netlist';
import {
  type Bands,
  defaultBands,
  type HarnessCandidate,
  isOfPart,
  type ListedFault,
  makeChecklist,
  neverProbed,
  partsAlike,
  type Separation,
  type Stage,
  type UnreadableFault,
} from '@loomproof/verify';
import { addressesInShort } from './addresses-in-short.ts';
import { checkMoments, firstChange } from './check-moments.ts';
import { checkRows, expectedWords, whereInWords } from './check-rows.ts';
import type { PageCheck } from './group-state.ts';
import { type PackedModel, packModel } from './model-codec.ts';
import { stageColumn } from './stage-column.ts';
import { stageWords } from './stage-words.ts';

/** How the readings of a work instruction are chosen. */
export interface WorkChecksOptions {
  /** What is plugged while readings are taken, for a variant. */
  readonly stage: (job: Job) => Stage;
  readonly list: 'short' | 'full';
  /** Limits of readings; the default ones where they are left out. */
  readonly bands?: Bands;
  /** Jobs of all variants of the kit by name. */
  readonly variants: ReadonlyMap<string, Job>;
}

/** A group of readings of a work instruction. */
export interface CheckGroup {
  readonly name: string;
  readonly moment: string;
  readonly title: string;
  /** The index of the step before which it stands. */
  readonly before: number;
  /** Numbers of the steps that stay locked until it is closed. */
  readonly locks: readonly number[];
  readonly checks: readonly PageCheck[];
  /** What is told before it. */
  readonly told: readonly string[];
  /** What is looked at or pulled, since no reading of it shows it. */
  readonly looks: readonly Look[];
}

/** When something is looked at. */
export type LookMoment = 'with the readings' | 'before power' | 'with power on';

/** Something to look at or to pull, with the mistakes that nothing else shows. */
export interface Look {
  readonly when: LookMoment;
  /** The index of the step before which it is looked at: when all that it is about is done. */
  readonly before: number;
  readonly what: string;
  readonly covers: readonly string[];
}

/** What the script of a page needs of a group. */
export interface PageGroup {
  readonly name: string;
  /** When its readings are taken; empty where the whole work is done. */
  readonly moment: string;
  readonly title: string;
  readonly locks: readonly number[];
  readonly checks: readonly PageCheck[];
  /** What is looked at, and how many possible mistakes that alone shows. */
  readonly looks: readonly { readonly what: string; readonly covers: number }[];
}

/** What the engine in a page explains the readings of a group by. */
export interface GroupModel {
  readonly own: HarnessCandidate;
  /** When the readings that it explains are taken. */
  readonly moment: string;
  readonly bands: Bands;
  /** The other variants, for a label that says another one. */
  readonly others: readonly HarnessCandidate[];
  /** Whether the jobs in it are parts of large ones, of which only points near the work are known. */
  readonly isPart: boolean;
}

/** What the script of a page needs of its checks. */
export interface PageChecks {
  /** As the column `stage` of a table of readings has it. */
  readonly stage: string;
  readonly plugged: string;
  readonly bands: Bands;
  readonly points: readonly string[];
  /**
   * Addresses of the machine that are not among the points, since no probe gets there or the work has nothing to do with
   * them; in short.
   */
  readonly elsewhere: readonly string[];
  /** Addresses of special circuits that nobody released, which are never probed; in short. */
  readonly neverProbed: readonly string[];
  readonly groups: readonly PageGroup[];
  /** The group that is read when the whole work is done, the one that `diagnose` explains. */
  readonly whole: string;
  /** {@link GroupModel} by group; null where it is too large for a page. */
  readonly model: PackedModel | null;
}

/** Of more letters than this a phone has to carry too much: the readings are then given to the command. */
const mostModelLetters = 400_000;

/** The readings of one variant, with the model that explains them in the page. */
export function workChecks(
  variant: KitVariant,
  revision: string,
  { stage: stageOf, list, variants, bands = defaultBands }: WorkChecksOptions,
): { readonly groups: readonly CheckGroup[]; readonly page: PageChecks } {
  const { job } = variant;
  const stage = stageOf(job);
  // Where everything is unplugged, probes go into the mating faces.
  const side: Side = stage.is === 'in place' ? 'wire side' : 'mating side';
  const kinds = job.steps.map(({ action }) => action.kind);
  const moments = checkMoments(kinds, stage.is === 'in place', liveSteps(job));
  const name = variant.variant.name;
  const others = new Map([...variants].filter(([other]) => other !== name));
  const candidate = (one: Job, called: string): HarnessCandidate => ({
    revision,
    variant: called,
    job: one,
    stage: stageOf(one),
  });
  const models = new Map<string, GroupModel>();
  const groups: CheckGroup[] = [];
  let plugged = '';
  let points: readonly string[] = [];
  let never: readonly string[] = [];
  for (const [index, { group, done, locks }] of moments.entries()) {
    const isLast = index === moments.length - 1;
    const then = isLast ? job : { ...job, steps: job.steps.slice(0, locks[0] ?? done) };
    const otherWork = (isLast ? variant.otherWork?.() : undefined) ?? new Map<string, Job>();
    const checklist = makeChecklist(then, {
      stage,
      bands,
      otherWork,
      variants: isLast ? others : new Map<string, Job>(),
      mostPairs: 0,
    });
    const { table, short, baseline } = checklist;
    if (isLast) {
      plugged = stageWords(stage, (connector) => job.connectors[connector]?.name ?? '');
      points = table.points.map((one) => one.name);
      never = neverProbed(job);
      const told = [...checklist.separations].flatMap(([other, one]) => separationWords(name, other, one));
      const found = baseline.checks.map(({ a, b, expected }, at): PageCheck => {
        const [from, to] = [baseline.points[a] ?? '', baseline.points[b] ?? ''];
        return {
          number: at + 1,
          from,
          to,
          reads: expected,
          oneWay: false,
          expected: expectedWords(expected, table.bands),
          proof: '',
          provedBy: [],
          unplugFirst: [],
          whereFrom: whereInWords(job, from, side),
          whereTo: whereInWords(job, to, side),
        };
      });
      if (found.length > 0 || told.length > 0)
        groups.push({
          name: 'found',
          moment: 'as found',
          title: 'Readings of the machine as found',
          before: firstChange(kinds),
          locks: [],
          checks: found,
          told,
          looks: [],
        });
    }
    const moment = isLast ? '' : `before step ${job.steps[locks[0] ?? done]?.number ?? 0}`;
    models.set(group, {
      own: { ...candidate(then, name), otherWork },
      moment,
      bands,
      others: isLast ? [...others].map(([other, one]) => candidate(one, other)) : [],
      isPart: isOfPart(table),
    });
    const faults = table.list.faults;
    groups.push({
      name: group,
      moment,
      title: isLast ? 'Readings before power' : 'Readings before power comes back for now',
      before: done,
      locks: locks.map((at) => job.steps[at]?.number ?? 0),
      checks: checkRows(checklist, list).map((row) => ({
        ...row,
        whereFrom: whereInWords(job, row.from, side),
        whereTo: whereInWords(job, row.to, side),
      })),
      told: [],
      looks: looksFor(
        [
          { when: 'with the readings', before: done },
          { when: 'before power', before: locks[0] ?? job.steps.length },
          { when: 'with power on', before: (locks[locks.length - 1] ?? job.steps.length - 1) + 1 },
        ],
        short.hidden.flatMap((at) => faults[at] ?? []),
        isLast ? checklist.unreadable : [],
      ),
    });
  }
  const whole = moments[moments.length - 1]?.group ?? '';
  const known = new Set(points);
  const model = packModel(cutDown(models));
  return {
    groups,
    page: {
      stage: stageColumn(stage, job),
      plugged,
      bands,
      points,
      elsewhere: addressesInShort(job.places.flatMap(({ address }) => (known.has(address) ? [] : [address]))),
      neverProbed: addressesInShort(never),
      whole,
      groups: groups.map(({ name: called, moment, title, locks, checks, looks }) => ({
        name: called,
        moment,
        title,
        locks,
        checks,
        looks: looks.map(({ what, covers }) => ({ what, covers: covers.length })),
      })),
      model: JSON.stringify(model).length > mostModelLetters ? null : model,
    },
  };
}

/** For each step whether some source is on before it. */
function liveSteps({ steps, supplies }: Job): readonly boolean[] {
  const on = supplies.map(() => true);
  return steps.map(({ action }) => {
    const isLive = on.includes(true);
    if (action.kind === 'disconnect' || action.kind === 'reconnect')
      on[action.supply] = action.kind === 'reconnect';
    return isLive;
  });
}

/** The models of a large harness with the parts of their jobs that the work of some of them has to do with. */
function cutDown(models: ReadonlyMap<string, GroupModel>): ReadonlyMap<string, GroupModel> {
  const large = [...models.values()].filter(({ isPart }) => isPart);
  const jobs = [
    ...new Set(
      large
        .flatMap(({ own, others }) => [own, ...others])
        .flatMap(({ job, otherWork }) => [job, ...(otherWork?.values() ?? [])]),
    ),
  ];
  const parts = partsAlike(jobs);
  const partOf = new Map(jobs.map((job, index) => [job, parts[index] ?? job]));
  const part = (one: HarnessCandidate): HarnessCandidate => ({
    ...one,
    job: partOf.get(one.job) ?? one.job,
    ...(one.otherWork === undefined
      ? {}
      : { otherWork: new Map([...one.otherWork].map(([name, job]) => [name, partOf.get(job) ?? job])) }),
  });
  return new Map(
    [...models].map(([group, model]) => [
      group,
      model.isPart ? { ...model, own: part(model.own), others: model.others.map(part) } : model,
    ]),
  );
}

/**
 * One look for all mistakes that it shows, at the first moment at which all of them can be seen.
 *
 * @param moments - in order; the last is for what can be seen at none of them too
 */
function looksFor(
  moments: readonly Pick<Look, 'when' | 'before'>[],
  hidden: readonly ListedFault[],
  unreadable: readonly UnreadableFault[],
): readonly Look[] {
  const found = new Map<string, { moment: number; readonly covers: string[] }>();
  const faults = [
    ...hidden.map(({ fault, words, shownBy }) => ({ step: stepOf(fault), words, shownBy })),
    ...unreadable.map(({ at, words, shownBy }) => ({ step: at, words, shownBy })),
  ];
  for (const { step, words, shownBy } of faults) {
    const first = moments.findIndex(({ before }) => before > step);
    const moment = first < 0 ? moments.length - 1 : first;
    const look = found.get(shownBy) ?? { moment, covers: [] };
    look.moment = Math.max(look.moment, moment);
    look.covers.push(words);
    found.set(shownBy, look);
  }
  return [...found].flatMap(([what, { moment, covers }]) => {
    const then = moments[moment];
    return then === undefined ? [] : [{ ...then, what, covers }];
  });
}

/** The step after which a fault can be seen: that a part works, only with power on. */
function stepOf(fault: ListedFault['fault']): number {
  if (fault.is === 'part open') return Number.POSITIVE_INFINITY;
  return 'at' in fault ? Math.max(...[fault.at].flat()) : -1;
}

function separationWords(own: string, other: string, one: Separation | null): readonly string[] {
  if (one === null) return [`No reading tells ${own} from ${other}: only their labels do.`];
  return [
    `Which variant? ${one.a} to ${one.b}, ${one.moment}: ${one.first} in ${own}, ${one.second} in ${other}.`,
  ];
}
