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
  const { rework } = verdictOf(ladder(untouchedWires)).judgement;
  const view = assembledView(rework);
  const names = new Names(rework.job);
  return [
    () => {
      const before = poweredBefore(rework, view);
      return circuitRegions(rework, view, names).map((region) => dropRows(rework.job, region, before));
    },
    () => protectionRows(rework, view),
    () => judgeBackFeed(rework, view, names),
  ];
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
