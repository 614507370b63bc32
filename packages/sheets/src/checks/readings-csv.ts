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
];

/**
 * The readings of a group that count, as CSV that `diagnose` reads: its diagnosis is the one of the page, since the page
 * explains this very text.
 */
export function readingsCsv(record: WorkRecord, group: string): string {
  const { kit, revision, variant, digest, stage } = record;
  const rows = standingReadings(record, group).map((one) => [
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
  ]);
  return csvText([columns, ...rows]);
}
