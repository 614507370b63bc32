import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { diagnosisFigures, figuresTable } from '../support/diagnosis-figures.ts';
import { fixtureTables } from '../support/fault-tables.ts';

const path = fileURLToPath(new URL('../../docs/checks.md', import.meta.url));
const [begin, end] = ['<!-- figures begin -->', '<!-- figures end -->'];

describe('figures of the fixtures', () => {
  const all = fixtureTables().map(diagnosisFigures);

  it('asking the next best reading takes at most a quarter more readings than the best decision tree', () => {
    for (const { asked, best, cells } of all) expect(asked, cells[0]).toBeLessThanOrEqual(1.25 * best);
    expect(all.length).toBeGreaterThan(10);
  });

  // With LOOMPROOF_WRITE=1 the table is written anew instead of compared.
  it('the table in docs/checks.md is the one that comes out', () => {
    const text = readFileSync(path, 'utf8');
    const [from, to] = [text.indexOf(begin), text.indexOf(end)];
    expect(Math.min(from, to)).toBeGreaterThan(0);
    const table = figuresTable(all);
    if (process.env['LOOMPROOF_WRITE'] === '1')
      writeFileSync(path, `${text.slice(0, from + begin.length)}\n\n${table}\n\n${text.slice(to)}`);
    else expect(text.slice(from + begin.length, to).trim()).toBe(table);
  });
});
