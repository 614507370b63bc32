import { visibleText } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import type { CellTable } from './limit-cells.ts';

/**
 * The tables of limits for a terminal, with what is not kept or not known below.
 *
 * @param variants - each with its tables
 */
export function limitsText(variants: readonly (readonly [VariantVerdict, readonly CellTable[]])[]): string {
  const lines = variants.flatMap(([variant, tables]) => [
    `${variant.variant}:`,
    ...tables.flatMap(tableLines),
    ...variant.findings
      .filter(({ obligation }) => obligation === 9)
      .map((finding) => `  ${visibleText(finding.message)}`),
    '',
  ]);
  return `${lines.join('\n')}\n`;
}

function tableLines({ title, head, rows, none }: CellTable): readonly string[] {
  if (rows.length === 0) return [`  ${title}: ${none}`];
  const shown = [head, ...rows.map((row) => row.map((cell) => visibleText(cell)))];
  const widths = head.map((_, column) => Math.max(...shown.map((row) => (row[column] ?? '').length)));
  return [
    `  ${title}`,
    ...shown.map((row) =>
      `    ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd(),
    ),
  ];
}
