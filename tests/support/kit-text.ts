import { type Job, type KitFile, positionAt, readKit, renderDiagnostic } from '@loomproof/netlist';

/** Tables beside the kit text of a test: name and text. */
export type Tables = ReadonlyMap<string, string>;

const noTables: Tables = new Map();

function read(text: string, tables: Tables): ReturnType<typeof readKit> {
  return readKit({ name: 'kit.yaml', text }, (name) => {
    const table = tables.get(name);
    return table === undefined ? null : { name, text: table };
  });
}

/**
 * The kit that a test writes down as YAML.
 * @throws Error with every complaint when the text cannot be used, since the test then tests something else.
 */
export function kitOf(text: string, tables: Tables = noTables): KitFile {
  const { value, diagnostics } = read(text, tables);
  if (value === null) throw new Error(diagnostics.map(renderDiagnostic).join('\n'));
  return value;
}

/** The job of the first variant of a kit that a test writes down. */
export function jobOf(text: string): Job {
  const job = kitOf(text).variants[0]?.job;
  if (job === undefined) throw new Error('the kit has no variant');
  return job;
}

/** Every complaint about a kit text as `line:column code: message (help)`; empty where it can be used. */
export function complaintsOf(text: string, tables: Tables = noTables): readonly string[] {
  return read(text, tables).diagnostics.map((one) => {
    const at = one.span === null ? null : positionAt(one.span.source, one.span.start);
    const place = at === null ? '-' : `${at.line}:${at.column}`;
    return `${place} ${one.code}: ${one.message}${one.help === null ? '' : ` (${one.help})`}`;
  });
}

/** The same with what each complaint points at in place of where: `code "text": message (help)`. */
export function pointedComplaintsOf(text: string, tables: Tables = noTables): readonly string[] {
  return read(text, tables).diagnostics.map((one) => {
    const at = one.span === null ? '' : one.span.source.text.slice(one.span.start, one.span.end);
    return `${one.code} "${at}": ${one.message}${one.help === null ? '' : ` (${one.help})`}`;
  });
}
