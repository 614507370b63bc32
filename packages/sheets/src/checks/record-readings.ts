import { type Diagnostic, makeDiagnostic, type Source } from '@loomproof/netlist';
import { readingsCsv } from './readings-csv.ts';
import { type RecordHead, readRecord } from './work-record.ts';

/** The readings of an exported record, and what they belong to. */
export interface RecordReadings extends RecordHead {
  /** The readings of the whole work that count, as the page exports them on their own. */
  readonly readings: Source;
}

/**
 * The readings in a record that a work instruction exported as JSON, for `diagnose`.
 *
 * @param source - the text of the file
 */
export function recordReadings(source: Source): {
  readonly value: RecordReadings | null;
  readonly diagnostics: readonly Diagnostic[];
} {
  const complaint = makeDiagnostic({
    code: 'readings',
    message: `\`${source.name}\` is neither a table of readings nor an exported record`,
    help: 'give the CSV or the JSON that a work instruction exports',
  });
  const refused = { value: null, diagnostics: [complaint] };
  let given: unknown;
  try {
    given = JSON.parse(source.text.replace(/^\ufeff/, ''));
  } catch {
    return refused;
  }
  if (typeof given !== 'object' || given === null) return refused;
  const fields = new Map<string, unknown>(Object.entries(given));
  const [kit, revision, variant, digest, stage, whole] = [
    'kit',
    'revision',
    'variant',
    'digest',
    'stage',
    'whole',
  ].map((name) => {
    const one = fields.get(name);
    return typeof one === 'string' ? one : null;
  });
  if (kit == null || revision == null || variant == null || digest == null || stage == null || whole == null)
    return refused;
  const head = { kit, revision, variant, digest, stage };
  const record = readRecord(JSON.stringify(given), head);
  if (record === null) return refused;
  return {
    value: { ...head, readings: { name: source.name, text: readingsCsv(record, whole) } },
    diagnostics: [],
  };
}
