import { type Diagnostic, makeDiagnostic, type Source } from '@loomproof/netlist';
import { readingsCsv } from './readings-csv.ts';
import { type RecordHead, readRecord } from './work-record.ts';

/** The readings of an exported record, and what they belong to. */
export interface RecordReadings extends RecordHead {
  /** The readings that count, as the page exports them: of the whole work first, then those taken before it was done. */
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
  const moments = new Map(
    (Array.isArray(fields.get('moments')) ? (fields.get('moments') as unknown[]) : []).flatMap((pair) => {
      const [name, moment] = Array.isArray(pair) ? (pair as unknown[]) : [];
      return typeof name === 'string' && typeof moment === 'string' ? [[name, moment] as const] : [];
    }),
  );
  const head = { kit, revision, variant, digest, stage };
  const record = readRecord(JSON.stringify(given), head);
  if (record === null) return refused;
  // Groups that the record does not tell when they were taken are none of the whole work all the same.
  const others = [...new Set(record.readings.map(({ group }) => group))].filter((one) => one !== whole);
  const groups = [
    { name: whole, moment: '' },
    ...others.map((name) => ({ name, moment: moments.get(name) || `for ${name}` })),
  ];
  return {
    value: { ...head, readings: { name: source.name, text: readingsCsv(record, groups) } },
    diagnostics: [],
  };
}
