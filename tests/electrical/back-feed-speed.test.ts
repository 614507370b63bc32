import { describe, expect, it } from 'vitest';
import { judgeBackFeed } from '../../packages/verify/src/backfeed/judge-back-feed.ts';
import { assembledView } from '../../packages/verify/src/prove/assembled-view.ts';
import { Names } from '../../packages/verify/src/prove/names.ts';
import { type StudDevice, studKit } from '../support/stud-kit.ts';
import { verdictOf } from '../support/verdict-of.ts';

/**
 * A ladder that is one part: a switch and a lamp for each node, diodes that the kit puts between neighbours, and lamps
 * that share one return wire.
 */
function ladder(rungs: number, untouched = 0): string {
  const stock: StudDevice[] = [];
  const kit: StudDevice[] = [];
  const nets = ['G'];
  for (let index = 0; index < rungs; index += 1) {
    nets.push(`N${index}`);
    stock.push(['switch', `S${index}`, 'BAT', `N${index}`]);
    stock.push([
      'load',
      `L${index}`,
      `N${index}`,
      index % 3 === 0 ? 'GND' : 'G',
      `resistance: ${5 + index} ohm`,
    ]);
    if (index > 0) kit.push(['diode', `D${index}`, `N${index - 1}`, `N${index}`]);
  }
  for (let index = 0; index < untouched; index += 1) {
    nets.push(`U${index}`);
    stock.push(['switch', `T${index}`, 'BAT', `U${index}`]);
    stock.push(['load', `V${index}`, `U${index}`, 'GND', 'resistance: 9 ohm']);
  }
  return studKit({ nets, stock, wires: [['common', 'G', 'GND']], kit });
}

/** The same with every lamp on a return stud of its own, each of which hangs on the next. */
function chain(rungs: number): string {
  const rung = Array.from({ length: rungs }, (_, index) => index);
  return studKit({
    nets: rung.flatMap((index) => [`N${index}`, `G${index}`]),
    stock: rung.flatMap((index): StudDevice[] => [
      ['switch', `S${index}`, 'BAT', `N${index}`],
      ['load', `L${index}`, `N${index}`, `G${index}`, `resistance: ${5 + index} ohm`],
    ]),
    wires: rung.map((index) => [`back ${index}`, `G${index}`, index + 1 < rungs ? `G${index + 1}` : 'GND']),
    kit: rung.slice(1).map((index) => ['diode', `D${index}`, `N${index - 1}`, `N${index}`]),
  });
}

describe('the size of the search', () => {
  it('12 switches with every single open return are judged exactly within 10 s', () => {
    const begin = performance.now();
    const verdict = verdictOf(ladder(12));
    expect(performance.now() - begin).toBeLessThan(10_000);
    expect(verdict.obligations.find(({ obligation }) => obligation === 10)?.note).toBe(
      '8192 states of 1 parts, 1 open returns',
    );
    // The diodes light each lamp from the switch before it.
    expect(verdict.findings.filter(({ kind }) => kind === 'load-powered')).toHaveLength(11);
  });

  it('12 switches with eleven open returns, one behind the other, are judged exactly within 10 s', () => {
    const begin = performance.now();
    const verdict = verdictOf(chain(12));
    expect(performance.now() - begin).toBeLessThan(10_000);
    expect(verdict.obligations.find(({ obligation }) => obligation === 10)?.note).toBe(
      '49152 states of 1 parts, 11 open returns',
    );
  });

  it('grows with the part that the kit touches: a hundred untouched circuits add no state', () => {
    const note = (text: string): string | null | undefined =>
      verdictOf(text).obligations.find(({ obligation }) => obligation === 10)?.note;
    expect(note(ladder(4, 100))).toBe(note(ladder(4)));
  });

  it('beyond its budget says how far it looked, and proves nothing', () => {
    const { judgement } = verdictOf(ladder(6));
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
