import type { FirstKit } from './first-kit.ts';

/**
 * A first kit file as text: the harness that the pin table shows, and empty places for all that only its author knows.
 * `prove` refuses it as it is, since it holds no step and wants nothing.
 *
 * @param kit - what the table says
 * @param table - the table's file name, which must lie beside the kit file
 * @returns YAML
 */
export function kitText(kit: FirstKit, table: string): string {
  const lines = [
    `# A first kit file made from ${commentText(table)}. Keep it beside that table.`,
    '# It says nothing yet of the work, of what is in the bag and of what is wanted: that is for you to write.',
    '# docs/kit-file.md explains every key; `loomproof schema` prints the schema for editors.',
    `kit: ${scalar(`kit for ${table}`)}`,
    'revision: draft',
    ...section(
      'variants',
      [...kit.axes].map(([axis, values]) => `${scalar(axis)}: ${list(values)}`),
    ),
    ...section('parts', [
      ...kit.terminals.map((name) => `${scalar(name)}: { is: terminal }`),
      ...kit.seals.map((name) => `${scalar(name)}: { is: seal }`),
      ...kit.covers.map((name) => `${scalar(name)}: { is: cover }`),
    ]),
    '',
    'stock:',
    '  # zone: dry, or wet where water, fuel or road dirt reaches; what is not said is undecided.',
    '  # supplies: the batteries, such as  battery: { at: BAT }',
    `  wire table: ${scalar(table)}`,
    ...indented(
      section(
        'studs',
        kit.studs.map((name) => `${scalar(name)}: {}`),
      ),
    ),
    ...indented(
      section(
        'splices',
        kit.splices.map((name) => `${scalar(name)}: {}`),
      ),
    ),
    '  connectors:',
    '    # Only the cavities that the table names: add the empty ones, `into:` for what each is plugged into, and',
    '    # `device: yes` with `source:` or `elements:` for devices.',
    ...[...kit.connectors].map(([name, labels]) => `    ${scalar(name)}: { cavities: ${list(labels)} }`),
    '',
    '# bag: what comes with the kit: connectors, wires and parts.',
    '',
    '# The rework, step by step.',
    'work: []',
    '',
    '# What the kit shall give: circuits, additions, moves, retired, stubs, apart.',
    'wanted: {}',
  ];
  return `${lines.join('\n')}\n`;
}

function section(name: string, rows: readonly string[]): readonly string[] {
  return rows.length === 0 ? [] : [`${name}:`, ...rows.map((row) => `  ${row}`)];
}

function indented(lines: readonly string[]): readonly string[] {
  return lines.map((line) => `  ${line}`);
}

function list(texts: readonly string[]): string {
  return `[${texts.map(scalar).join(', ')}]`;
}

/** Plain where no YAML reader could take it for anything but this text, else in double quotes. */
function scalar(text: string): string {
  const isPlain = /^[\p{L}\p{N}](?:[\p{L}\p{N} _./+-]*[\p{L}\p{N}_./+-])?$/u.test(text);
  return isPlain && !/^null$/i.test(text) ? text : JSON.stringify(text);
}

/** A comment ends with its line. */
function commentText(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ');
}
