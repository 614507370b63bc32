import { describe, expect, it } from 'vitest';
import { judgeBackFeed } from '../../packages/verify/src/backfeed/judge-back-feed.ts';
import { assembledView } from '../../packages/verify/src/prove/assembled-view.ts';
import { Names } from '../../packages/verify/src/prove/names.ts';
import { ladderKit } from '../support/ladder-kit.ts';
import { verdictOf } from '../support/verdict-of.ts';

/** What an obligation says of its own reach. */
function noteOf(text: string, obligation: number): string | null | undefined {
  return verdictOf(text).obligations.find((one) => one.obligation === obligation)?.note;
}

// How long it takes is in the bench.
describe('how far it is looked', () => {
  it('12 switches are judged exactly with every single open return', () => {
    const verdict = verdictOf(ladderKit({ rungs: 12, returns: 'one wire' }));
    expect(verdict.obligations.find(({ obligation }) => obligation === 10)?.note).toBe(
      '8192 states of 1 parts, 1 open returns',
    );
    // The diodes light each lamp from the switch before it.
    expect(verdict.findings.filter(({ kind }) => kind === 'load-powered')).toHaveLength(11);
  }, 60_000);

  it('12 switches are judged exactly with eleven open returns, one behind the other', () => {
    // Of twelve times 4096 states those with the last return open are not tried: it leaves no way back to anything.
    expect(noteOf(ladderKit({ rungs: 12, returns: 'in a row' }), 10)).toBe(
      '45056 states of 1 parts, 11 open returns',
    );
  }, 60_000);

  it('the losses of 12 switches are judged exactly: nothing is undecided', () => {
    const { obligations, findings } = verdictOf(ladderKit({ rungs: 12, returns: 'ground', limits: true }));
    expect(findings.filter(({ kind }) => kind === 'electrical-unknown')).toEqual([]);
    expect(obligations.find(({ obligation }) => obligation === 9)?.note).toBe('12 circuits, 22 conductors');
  }, 60_000);

  it('grows with the part that the kit touches: a hundred untouched circuits add no state', () => {
    expect(noteOf(ladderKit({ rungs: 4, returns: 'one wire', untouchedWires: 400 }), 10)).toBe(
      noteOf(ladderKit({ rungs: 4, returns: 'one wire' }), 10),
    );
  });

  it('beyond its budget it says how far, and proves nothing', () => {
    const { judgement } = verdictOf(ladderKit({ rungs: 6, returns: 'one wire' }));
    const { rework } = judgement;
    const budget = { variables: 4, variablesWithOpens: 2 };
    const { findings, coverage } = judgeBackFeed(
      rework,
      assembledView(rework),
      new Names(rework.job),
      budget,
    );
    expect(coverage).toBe('20 states of 1 parts, 1 open returns');
    expect(findings.find(({ kind }) => kind === 'back-feed-unknown')?.points).toEqual([
      'more than 16 of 64 states of the part with S0',
      'more than 4 of 64 states with a return open of the part with S0',
    ]);
  });
});
