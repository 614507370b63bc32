import { judgeBackFeed } from '../packages/verify/src/backfeed/judge-back-feed.ts';
import { poweredBefore } from '../packages/verify/src/backfeed/powered-before.ts';
import { circuitRegions } from '../packages/verify/src/limits/circuit-region.ts';
import { dropRows } from '../packages/verify/src/limits/drop-rows.ts';
import { protectionRows } from '../packages/verify/src/limits/protection-rows.ts';
import { assembledView } from '../packages/verify/src/prove/assembled-view.ts';
import { Names } from '../packages/verify/src/prove/names.ts';
import { type Ladder, ladderKit } from '../tests/support/ladder-kit.ts';
import { verdictOf } from '../tests/support/verdict-of.ts';

/** Rungs of the ladder that the kit touches: so many switches, and half as many returns that may open. */
const rungs = 10;

/** How many times as long each judgement takes in the larger harness. */
export interface ElectricalRatios {
  readonly losses: number;
  readonly protection: number;
  readonly backFeed: number;
}

/**
 * The electrical judgements of one kit in two harnesses of so many untouched wires: a ladder of lamps with diodes between
 * them that the kit brings, every other lamp on a return that it shares with its neighbour.
 * @returns ratios of the least of so many turns, taken in turns, since whatever else runs only adds to a time.
 */
export function electricalRatios(smallWires: number, largeWires: number, turns: number): ElectricalRatios {
  const judges = [smallWires, largeWires].map(judgesOf);
  const least = judges.map((all) => all.map(() => Number.POSITIVE_INFINITY));
  for (let turn = 0; turn < turns; turn += 1)
    for (const [harness, all] of judges.entries())
      for (const [index, judge] of all.entries()) {
        const begin = performance.now();
        judge();
        const times = least[harness] as number[];
        times[index] = Math.min(times[index] as number, performance.now() - begin);
      }
  const ratio = (index: number): number => (least[1]?.[index] ?? 0) / (least[0]?.[index] ?? 0);
  return { losses: ratio(0), protection: ratio(1), backFeed: ratio(2) };
}

function judgesOf(untouchedWires: number): readonly (() => unknown)[] {
  const { rework } = verdictOf(
    ladderKit({ rungs, returns: 'in pairs', untouchedWires, limits: true }),
  ).judgement;
  const view = assembledView(rework);
  const names = new Names(rework.job);
  return [
    () => {
      const before = poweredBefore(rework);
      return circuitRegions(rework, view, names).map((region) => dropRows(rework.job, region, before));
    },
    () => protectionRows(rework, view),
    () => judgeBackFeed(rework, view, names),
  ];
}

/** Processor seconds of the whole proof of a kit that makes one part of so many switches. */
export function proofSeconds(ladder: Ladder): number {
  const text = ladderKit(ladder);
  const begin = process.cpuUsage();
  verdictOf(text);
  const { user, system } = process.cpuUsage(begin);
  return (user + system) / 1e6;
}
