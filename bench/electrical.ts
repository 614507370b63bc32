import { judgeBackFeed } from '../packages/verify/src/backfeed/judge-back-feed.ts';
import { poweredBefore } from '../packages/verify/src/backfeed/powered-before.ts';
import { circuitRegions } from '../packages/verify/src/limits/circuit-region.ts';
import { dropRows } from '../packages/verify/src/limits/drop-rows.ts';
import { protectionRows } from '../packages/verify/src/limits/protection-rows.ts';
import { assembledView } from '../packages/verify/src/prove/assembled-view.ts';
import { Names } from '../packages/verify/src/prove/names.ts';
import { type StudDevice, studKit } from '../tests/support/stud-kit.ts';
import { verdictOf } from '../tests/support/verdict-of.ts';

/** Rungs of the ladder that the kit touches: so many switches, and half as many returns that may open. */
const rungs = 10;

/**
 * The electrical judgements of one kit in a harness with so many untouched wires: a ladder of lamps with diodes between
 * them that the kit brings, every other lamp on a return that it shares with its neighbour.
 * @returns milliseconds of each judgement, the least of so many turns, since whatever else runs only adds to it.
 */
export function electricalFigures(untouchedWires: number, turns: number): ElectricalFigures {
  const { rework } = verdictOf(ladder(untouchedWires)).judgement;
  const view = assembledView(rework);
  const names = new Names(rework.job);
  const least = (judge: () => unknown): number => {
    let best = Number.POSITIVE_INFINITY;
    for (let turn = 0; turn < turns; turn += 1) {
      const begin = performance.now();
      judge();
      best = Math.min(best, performance.now() - begin);
    }
    return best;
  };
  return {
    lossesMs: least(() => {
      const before = poweredBefore(rework, view);
      for (const region of circuitRegions(rework, view, names)) dropRows(rework.job, region, before);
    }),
    protectionMs: least(() => protectionRows(rework, view)),
    backFeedMs: least(() => judgeBackFeed(rework, view, names)),
  };
}

/** What the judgements of one kit take. */
export interface ElectricalFigures {
  readonly lossesMs: number;
  readonly protectionMs: number;
  readonly backFeedMs: number;
}

function ladder(untouchedWires: number): string {
  const stock: StudDevice[] = [];
  const kit: StudDevice[] = [];
  const nets: string[] = [];
  const wires: (readonly [string, string, string])[] = [];
  for (let index = 0; index < rungs; index += 1) {
    const common = `G${index >> 1}`;
    nets.push(`N${index}`);
    if (index % 2 === 0) {
      nets.push(common);
      wires.push([`return ${index >> 1}`, common, 'GND']);
    }
    stock.push(['switch', `S${index}`, 'BAT', `N${index}`]);
    stock.push(['load', `L${index}`, `N${index}`, common, `resistance: ${20 + index} ohm`]);
    if (index > 0) kit.push(['diode', `D${index}`, `N${index - 1}`, `N${index}`, 'drop: 0.4 V']);
  }
  // A switch and a lamp with their leads are four wires.
  for (let index = 0; index < untouchedWires / 4; index += 1) {
    nets.push(`U${index}`);
    stock.push(['switch', `T${index}`, 'BAT', `U${index}`]);
    stock.push(['load', `V${index}`, `U${index}`, 'GND', 'resistance: 9 ohm']);
  }
  return studKit({
    nets,
    stock,
    wires,
    kit,
    ofWires: 'length: 1 m, capacity: 20 A',
    sections: [
      'electrical: { limits: own, own limits: { source: the bench, drop: 10 %, lead to protector: 9 m }, material: copper, strands: formula, temperature: 20 C, joints: 1 mohm }',
    ],
  });
}
