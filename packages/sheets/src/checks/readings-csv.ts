import { csvText } from '../csv-text.ts';
import { standingReadings, type WorkRecord } from './work-record.ts';

const columns = [
  'from',
  'to',
  'reading',
  'lead zero',
  'instrument',
  'range',
  'person',
  'time',
  'plugged',
  'probes proved',
  'note',
  'round',
  'kit',
  'revision',
  'variant',
  'digest',
  'stage',
  'whole limit',
  'open limit',
  'moment',
];

/** A group of readings of a record, and when it is taken, such as `before step 7`; empty for the whole work. */
export interface GroupMoment {
  readonly name: string;
  readonly moment: string;
}

/**
 * The readings of groups that count, as CSV that `diagnose` reads: its diagnosis is the one of the page, since the page
 * explains this very text.
 */
export function readingsCsv(record: WorkRecord, groups: readonly GroupMoment[]): string {
  const { kit, revision, variant, digest, stage } = record;
  const all = groups.flatMap(({ name, moment }) =>
    standingReadings(record, name).map((one) => ({ one, moment })),
  );
  const rows = all.map(({ one, moment }) => [
    one.from,
    one.to,
    one.reading,
    one.leadZero,
    one.instrument,
    one.range,
    one.person,
    one.time,
    one.plugged,
    one.probesProved ? 'yes' : '',
    one.note,
    String(one.round),
    kit,
    revision,
    variant,
    digest,
    stage,
    one.wholeLimit,
    one.openLimit,
    moment,
  ]);
  return csvText([columns, ...rows]);
}
