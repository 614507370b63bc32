import { appendTo } from '@loomproof/netlist';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type StudDevice, studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';
import { assembledView } from '../prove/assembled-view.ts';
import { fusesThatLimit } from './fuse-cut.ts';
import { fuseRating } from './protection-rows.ts';

const nets = ['A', 'B', 'C', 'D'] as const;
const device = fc
  .record({
    kind: fc.constantFrom('fuse', 'fuse', 'fuse', 'diode', 'switch'),
    from: fc.constantFrom('BAT', ...nets),
    to: fc.constantFrom(...nets),
    ampere: fc.integer({ min: 1, max: 9 }),
  })
  .filter(({ from, to }) => from !== to);
type Device = typeof device extends fc.Arbitrary<infer T> ? T : never;

/** Whether the battery reaches a net though some devices are taken away. */
function isFed(devices: readonly Device[], net: string, away: ReadonlySet<number>): boolean {
  const seen = new Set(['BAT']);
  for (let grown = true; grown; ) {
    grown = false;
    for (const [index, { kind, from, to }] of devices.entries()) {
      if (away.has(index)) continue;
      const next = seen.has(from) ? to : seen.has(to) && kind !== 'diode' ? from : null;
      if (next === null || seen.has(next)) continue;
      seen.add(next);
      grown = true;
    }
  }
  return seen.has(net);
}

/** The least that has to blow until nothing reaches a net: every set of fuses is tried. */
function leastAmpere(devices: readonly Device[], net: string, without: number): number {
  const fuses = devices.flatMap(({ kind }, index) => (kind === 'fuse' && index !== without ? [index] : []));
  let least = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 2 ** fuses.length; set += 1) {
    const blown = fuses.filter((_, bit) => ((set >> bit) & 1) === 1);
    const ampere = blown.reduce((sum, index) => sum + (devices[index]?.ampere ?? 0), 0);
    if (ampere < least && !isFed(devices, net, new Set([without, ...blown]))) least = ampere;
  }
  return least;
}

it('the fuses that limit what reaches a conductor are the least that must blow, and do part it from its sources', () => {
  const seen = { one: 0, several: 0, none: 0 };
  fc.assert(
    fc.property(fc.array(device, { minLength: 2, maxLength: 7 }), (devices) => {
      const stock = devices.map(
        ({ kind, from, to, ampere }, index): StudDevice =>
          [
            kind,
            `X${index}`,
            from,
            to,
            ...(kind === 'fuse' ? [`rating: ${ampere} A`] : kind === 'diode' ? ['drop: 0.5 V'] : []),
          ] as unknown as StudDevice,
      );
      const { rework } = verdictOf(
        studKit({
          nets,
          stock,
          kit: [['load', 'lamp', 'A', 'GND', 'power: 6 W, volts: 12 V']],
          powered: ['lamp: always'],
        }),
      ).judgement;
      const { job, graph, ordinal } = rework;
      const elementsAt = new Map<number, number[]>();
      for (const [index, { kind, from, to }] of job.elements.entries())
        if (kind !== 'load') for (const place of [from, to]) appendTo(elementsAt, place, index);
      const place = (name: string): number => job.places.findIndex(({ address }) => address === name);
      const copper = {
        rework,
        view: assembledView(rework),
        elementsAt,
        supplies: new Set([place('BAT')]),
        outputs: new Set<number>(),
        returns: new Set([place('GND')]),
        ratingOf: (fuse: number) => fuseRating(rework, fuse) ?? 0,
      };
      for (let edge = 0; edge < graph.edgeCount; edge += 1) {
        if (graph.kindOf(edge) !== 'conductor' || !graph.aliveAt(edge, ordinal)) continue;
        const [, name = '', side = ''] =
          /^X(\d+) ([ab])$/.exec(job.wires[graph.whatOf(edge)]?.name ?? '') ?? [];
        if (name === '') continue;
        const own = Number(name);
        const { kind = '', from = '', to = '', ampere = 0 } = devices[own] ?? {};
        const [near, far] = side === 'a' ? [from, to] : [to, from];
        const outer = leastAmpere(devices, near, own);
        const behind = leastAmpere(devices, far, own);
        const inner =
          kind === 'diode' && side === 'a' ? 0 : kind === 'fuse' ? Math.min(behind, ampere) : behind;
        const expected = [outer, inner]
          .filter((one) => one > 0 && Number.isFinite(one))
          .sort((a, b) => a - b);
        const cuts = fusesThatLimit(copper, edge) ?? [];
        const found = cuts.map((fuses) => fuses.reduce((sum, fuse) => sum + copper.ratingOf(fuse), 0));
        expect([...found].sort((a, b) => a - b)).toEqual(expected);
        for (const fuses of cuts) seen[fuses.length > 1 ? 'several' : 'one'] += 1;
        if (cuts.length === 0) seen.none += 1;
      }
    }),
    { numRuns: 60 },
  );
  // What was not met was not tested.
  for (const [what, count] of Object.entries(seen)) expect(count, what).toBeGreaterThan(5);
}, 60_000);
