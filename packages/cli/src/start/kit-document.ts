import type { FirstKit } from './first-kit.ts';

/** Data that prints as a JSON object; keys are user text, so it is never read back by key. */
type JsonEntries = readonly (readonly [string, unknown])[];

/**
 * The same first kit file as a JSON document, which is a kit file too, since JSON is YAML.
 *
 * @param kit - what the table says
 * @param table - the table's file name, which must lie beside the kit file
 */
export function kitDocument(kit: FirstKit, table: string): object {
  const parts = [
    ...kit.terminals.map((name) => [name, { is: 'terminal' }] as const),
    ...kit.seals.map((name) => [name, { is: 'seal' }] as const),
    ...kit.covers.map((name) => [name, { is: 'cover' }] as const),
  ];
  return {
    kit: `kit for ${table}`,
    revision: 'draft',
    ...(kit.axes.size === 0 ? {} : { variants: objectOf([...kit.axes]) }),
    ...(parts.length === 0 ? {} : { parts: objectOf(parts) }),
    stock: {
      'wire table': table,
      ...(kit.studs.length === 0 ? {} : { studs: objectOf(kit.studs.map((name) => [name, {}])) }),
      ...(kit.splices.length === 0 ? {} : { splices: objectOf(kit.splices.map((name) => [name, {}])) }),
      connectors: objectOf([...kit.connectors].map(([name, cavities]) => [name, { cavities }])),
    },
    work: [],
    wanted: {},
  };
}

/** `Object.fromEntries` defines own keys, `__proto__` among them, so that none is lost in printing. */
function objectOf(entries: JsonEntries): object {
  return Object.fromEntries(entries);
}
