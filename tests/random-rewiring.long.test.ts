import { describe, expect, it } from 'vitest';
import { checkRewirings } from './support/generate/check-rewiring.ts';

/** In parts, so that a failure is seen early. */
const parts = 10;
const runsOfPart = 20_000;

describe('very many random rewirings', () => {
  it.each(Array.from({ length: parts }, (_, index) => index + 1))(
    'part %i agrees with the oracle in everything',
    {
      timeout: 1_800_000,
    },
    (part) => {
      // Each part draws from another seed than the short run and the other parts.
      const seed = Number(process.env['FAST_CHECK_SEED']) + part;
      const check = checkRewirings(runsOfPart, seed);
      console.log(
        [`part ${part}, seed ${seed}: ${runsOfPart} random rewirings`, ...check.lines()].join('\n'),
      );
      expect(check.tooRare(100)).toEqual([]);
      expect(check.shareProved).toBeGreaterThan(0.97);
      expect(check.shareBlamed).toBeGreaterThan(0.995);
    },
  );
});
