import { visibleText } from '@loomproof/netlist';
import type { VariantVerdict } from '@loomproof/verify';
import { dropHead, type LimitCells, loadingHead, protectionHead } from './limit-cells.ts';

/**
 * The tables of limits for a terminal, with what is not kept or not known below.
 *
 * @param variants - each with its cells
 */
export function limitsText(variants: readonly (readonly [VariantVerdict, LimitCells])[]): string {
  const lines = variants.flatMap(([variant, cells]) => [
    `${variant.variant}:`,
    ...table('losses out and return', dropHead, cells.drops),
    ...table('conductors and the fuse ahead of them', protectionHead, cells.protection),
    ...table('what fuses, outputs and conductors carry', loadingHead, cells.loading),
    ...variant.findings
      .filter(({ obligation }) => obligation === 9)
      .map((finding) => `  ${visibleText(finding.message)}`),
    '',
  ]);
  return `${lines.join('\n')}\n`;
}

function table(
  title: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  if (rows.length === 0) return [`  ${title}: none in the part that the kit touches`];
  const shown = [head, ...rows.map((row) => row.map((cell) => visibleText(cell)))];
  const widths = head.map((_, column) => Math.max(...shown.map((row) => (row[column] ?? '').length)));
  return [
    `  ${title}`,
    ...shown.map((row) =>
      `    ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd(),
    ),
  ];
}
