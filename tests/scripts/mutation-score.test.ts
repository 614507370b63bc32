import { expect, it } from 'vitest';
import { directoryLine, scoreOf, totalLine } from '../../scripts/mutation-score.mjs';

const run = { share: '0.1', seed: '1' };

it('counts what timed out as caught and what no test reached as not', () => {
  const score = scoreOf(['Killed', 'Killed', 'Timeout', 'Survived', 'NoCoverage', 'Ignored', 'CompileError']);
  expect(directoryLine('a/b', score)).toBe(
    'a/b: 60.0 % of 5 (killed 2, timed out 1, survived 1, not reached 1; not counted: static 1, other 1)',
  );
  expect(totalLine([score, score], [], run)).toBe('all: 60.0 % of 10, share 0.1, seed 1');
});

it('gives no score where no mutant was drawn', () => {
  expect(directoryLine('a/b', scoreOf([]))).toMatch(/^a\/b: no mutant \(killed 0,/);
  expect(totalLine([], [], run)).toBe('all: no mutant, share 0.1, seed 1');
});

it('names each directory that gave no report', () => {
  expect(totalLine([scoreOf(['Killed'])], ['c', 'd'], run)).toBe(
    'all: 100.0 % of 1, share 0.1, seed 1; no report of c, d',
  );
});
