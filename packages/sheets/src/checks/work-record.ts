import type { WrittenLimits } from '@loomproof/verify';

/** What a record belongs to: it is of no use for anything else. */
export interface RecordHead {
  readonly kit: string;
  readonly revision: string;
  readonly variant: string;
  readonly digest: string;
  /** What is plugged while readings are taken. */
  readonly stage: string;
}

/** The answers that a step may have. */
export const stepAnswers = ['done', 'not reachable', 'not done', 'found different'] as const;

/** One of {@link stepAnswers}. */
export type StepAnswerWord = (typeof stepAnswers)[number];

/** What a person says of a step. */
export interface StepAnswer {
  readonly step: number;
  readonly answer: StepAnswerWord | null;
  readonly note: string;
  /** ISO 8601, as all times of a record. */
  readonly time: string;
}

/** What is written down beside every reading. */
export interface MeterNotes {
  readonly instrument: string;
  readonly range: string;
  /** Ohms that the leads alone read, as written. */
  readonly leadZero: string;
  readonly person: string;
  readonly plugged: string;
}

/** A reading as taken, with the limits by which it was judged. Nothing is ever taken out of a record: a reading may be struck out, with the reason. */
export interface TakenReading extends MeterNotes, WrittenLimits {
  /** The group of checks for which it was taken. */
  readonly group: string;
  /** Readings taken before something was repaired are of an earlier round, and are not used. */
  readonly round: number;
  readonly from: string;
  readonly to: string;
  /** As written: ohms with a unit, `open`, `not done` or `not reachable`. */
  readonly reading: string;
  /** Whether it was shown that the probes touch. */
  readonly probesProved: boolean;
  readonly note: string;
  readonly time: string;
  /** Why it was struck out; null while it stands. */
  readonly struck: string | null;
}

/** Something that was looked at or pulled and found as it should be. */
export interface DoneLook {
  readonly group: string;
  readonly what: string;
  readonly time: string;
}

/** Everything that a page keeps. */
export interface WorkRecord extends RecordHead {
  readonly record: 'loomproof work';
  readonly answers: readonly StepAnswer[];
  readonly meter: MeterNotes;
  /** By group: how often something was repaired and reading begun anew, from 1. */
  readonly rounds: readonly (readonly [group: string, round: number])[];
  readonly readings: readonly TakenReading[];
  readonly looks: readonly DoneLook[];
}

const noNotes: MeterNotes = { instrument: '', range: '', leadZero: '', person: '', plugged: '' };
const meterFields = ['instrument', 'range', 'leadZero', 'person', 'plugged'] as const;

/** Texts longer than any person writes are cut. */
const mostLetters = 2000;
const mostReadings = 20_000;

/** A record in which nothing is said yet. */
export function emptyRecord(head: RecordHead, plugged: string): WorkRecord {
  const { kit, revision, variant, digest, stage } = head;
  return {
    record: 'loomproof work',
    kit,
    revision,
    variant,
    digest,
    stage,
    answers: [],
    meter: { ...noNotes, plugged },
    rounds: [],
    readings: [],
    looks: [],
  };
}

/**
 * The record in a file or in the browser's storage.
 *
 * @param text - JSON
 * @param head - what the record has to belong to
 * @returns null where it is no record, or one of another kit, revision, variant, digest or stage
 */
export function readRecord(text: string, head: RecordHead): WorkRecord | null {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    return null;
  }
  const one = fieldsOf(given);
  if (one.get('record') !== 'loomproof work') return null;
  const empty = emptyRecord(head, '');
  for (const name of ['kit', 'revision', 'variant', 'digest', 'stage'] as const)
    if (one.get(name) !== empty[name]) return null;
  return {
    ...empty,
    answers: listOf(one.get('answers')).flatMap(readAnswer),
    meter: readNotes(fieldsOf(one.get('meter'))),
    rounds: listOf(one.get('rounds')).flatMap((pair) => {
      const [group, round] = listOf(pair);
      return typeof group === 'string' && isCount(round) ? [[group, round] as const] : [];
    }),
    readings: listOf(one.get('readings')).slice(0, mostReadings).flatMap(readTaken),
    looks: listOf(one.get('looks')).map((given) => {
      const look = fieldsOf(given);
      return {
        group: textOf(look.get('group')),
        what: textOf(look.get('what')),
        time: textOf(look.get('time')),
      };
    }),
  };
}

/** The round in which readings of a group are taken now. */
export function roundOf({ rounds }: WorkRecord, group: string): number {
  return new Map(rounds).get(group) ?? 1;
}

/** The readings of a group that count: of this round, and not struck out. */
export function standingReadings(record: WorkRecord, group: string): readonly TakenReading[] {
  const round = roundOf(record, group);
  return record.readings.filter((one) => one.group === group && one.round === round && one.struck === null);
}

function readAnswer(given: unknown): readonly StepAnswer[] {
  const one = fieldsOf(given);
  const step = one.get('step');
  if (!isCount(step)) return [];
  const answer = stepAnswers.find((word) => word === one.get('answer')) ?? null;
  return [{ step, answer, note: textOf(one.get('note')), time: textOf(one.get('time')) }];
}

function readTaken(given: unknown): readonly TakenReading[] {
  const one = fieldsOf(given);
  const round = one.get('round');
  if (!isCount(round)) return [];
  const struck = one.get('struck');
  return [
    {
      ...readNotes(one),
      wholeLimit: textOf(one.get('wholeLimit')),
      openLimit: textOf(one.get('openLimit')),
      group: textOf(one.get('group')),
      round,
      from: textOf(one.get('from')),
      to: textOf(one.get('to')),
      reading: textOf(one.get('reading')),
      probesProved: one.get('probesProved') === true,
      note: textOf(one.get('note')),
      time: textOf(one.get('time')),
      struck: typeof struck === 'string' ? textOf(struck) : null,
    },
  ];
}

function readNotes(one: ReadonlyMap<string, unknown>): MeterNotes {
  const [instrument, range, leadZero, person, plugged] = meterFields.map((name) => textOf(one.get(name)));
  return {
    instrument: instrument ?? '',
    range: range ?? '',
    leadZero: leadZero ?? '',
    person: person ?? '',
    plugged: plugged ?? '',
  };
}

function fieldsOf(given: unknown): ReadonlyMap<string, unknown> {
  return new Map(typeof given === 'object' && given !== null ? Object.entries(given) : []);
}

function listOf(given: unknown): readonly unknown[] {
  return Array.isArray(given) ? given : [];
}

function textOf(given: unknown): string {
  return typeof given === 'string' ? given.slice(0, mostLetters) : '';
}

function isCount(given: unknown): given is number {
  return typeof given === 'number' && Number.isSafeInteger(given) && given > 0;
}
