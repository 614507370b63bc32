import { expect, it } from 'vitest';
import { ladderKit } from '../support/ladder-kit.ts';
import { verdictOf } from '../support/verdict-of.ts';

it('20 switches in one part are judged exactly', () => {
  const verdict = verdictOf(ladderKit({ rungs: 20, returns: 'ground' }));
  expect(verdict.obligations.find(({ obligation }) => obligation === 10)?.note).toBe(
    '1048576 states of 1 parts, 0 open returns',
  );
}, 600_000);
