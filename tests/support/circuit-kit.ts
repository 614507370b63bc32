/** A device element between two studs, as a kit file writes it. */
export interface KitElement {
  readonly from: number;
  readonly to: number;
  readonly is: string;
}

/**
 * A kit whose machine is nothing but studs and two-pin devices wired between them, with one wire of the bag that goes
 * to a stud of its own.
 */
export function circuitKit(studs: number, elements: readonly KitElement[]): string {
  const lines = ['kit: circuit', 'revision: A', 'stock:', '  studs:'];
  for (let stud = 0; stud < studs; stud += 1) lines.push(`    S${stud}: { source: never }`);
  lines.push('    LAST: { source: never }', '  connectors:', '    SPARE: { cavities: 1..2 }');
  for (const [index, { is }] of elements.entries())
    lines.push(
      `    K${index}: { cavities: 1..2, into: D${index} }`,
      `    D${index}: { device: yes, cavities: 1..2, elements: [{ ${is}, from: 1, to: 2, name: E${index} }] }`,
    );
  lines.push('  wires:');
  for (const [index, { from, to }] of elements.entries())
    lines.push(
      `    a${index}: { from: S${from}, to: K${index}:1 }`,
      `    b${index}: { from: K${index}:2, to: S${to} }`,
    );
  lines.push('    link: { from: LAST, to: S0 }', 'work:', '  - { do: fasten, wire: link }');
  lines.push('wanted:', '  circuits:', '    link: [LAST, S0]');
  return `${lines.join('\n')}\n`;
}
