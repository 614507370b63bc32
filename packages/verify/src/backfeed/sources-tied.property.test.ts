import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StudDevice, studKit } from '../../../../tests/support/stud-kit.ts';
import { changed, verdictOf } from '../../../../tests/support/verdict-of.ts';

const nets = ['A', 'B', 'C'];
const net = fc.constantFrom('BAT', 'B2', 'GND', ...nets);
const pair = fc.tuple(net, net).filter(([from, to]) => from !== to);
/** Nothing is a plain short of a pole, and no net is joined to the return for good: beside that nothing else can be told. */
const device = fc
  .tuple(fc.constantFrom('switch', 'bridge', 'drive'), pair)
  .filter(
    ([kind, ends]) =>
      !ends.includes('GND') || (kind !== 'bridge' && !ends.includes('BAT') && !ends.includes('B2')),
  );

/** Switches, bridges and outputs between nets, before the work and brought by it, and wires that the kit lays. */
const tangle = fc.record({
  stock: fc.array(device, { maxLength: 3 }),
  kit: fc.array(device, { maxLength: 2 }),
  link: fc.option(fc.tuple(fc.constantFrom('BAT', 'A'), fc.constantFrom('B2', 'B', 'C')), { nil: null }),
});
type Tangle = typeof tangle extends fc.Arbitrary<infer T> ? T : never;

type Named = readonly [kind: string, name: string, from: string, to: string];

function devicesOf({ stock, kit }: Tangle): {
  readonly stock: readonly Named[];
  readonly kit: readonly Named[];
} {
  return {
    stock: stock.map(([kind, [from, to]], at) => [kind, `X${at}`, from, to]),
    kit: kit.map(([kind, [from, to]], at) => [kind, `Y${at}`, from, to]),
  };
}

function textOf(one: Tangle): string {
  const { stock, kit } = devicesOf(one);
  const lamp: StudDevice = ['load', 'lamp', 'BAT', 'GND', 'resistance: 9 ohm'];
  let text = studKit({
    nets: ['B2', ...nets],
    stock: [lamp, ...stock],
    kit: [['load', 'new lamp', 'BAT', 'GND', 'resistance: 9 ohm'], ...kit],
    links: one.link === null ? [] : [['link', ...one.link]],
    powered: ['lamp: always', 'new lamp: always'],
  });
  text = changed(text, 'volts: 12 V } }', 'volts: 12 V }, second: { at: B2, return: GND, volts: 12 V } }');
  text = changed(text, '    B2: { source: never }', '    B2: { source: always }');
  for (const step of ['disconnect', 'reconnect'])
    text = changed(
      text,
      `  - { do: ${step}, supply: battery }\n`,
      `  - { do: ${step}, supply: battery }\n  - { do: ${step}, supply: second }\n`,
    );
  return text;
}

/** Pairs of sources that are one piece of metal in a state. */
function tiesOf(
  elements: readonly Named[],
  link: readonly [string, string] | null,
  on: ReadonlySet<string>,
): ReadonlySet<string> {
  const piece = new Map(['BAT', 'B2', 'GND', ...nets].map((one) => [one, new Set([one])]));
  const join = (from: string, to: string): void => {
    const all = new Set([...(piece.get(from) ?? []), ...(piece.get(to) ?? [])]);
    for (const one of all) piece.set(one, all);
  };
  if (link !== null) join(...link);
  // The return is one piece with what a wire of the kit lays on it, and a drive to that is one of the low side.
  const ground = new Set(piece.get('GND'));
  const isOutput = ([kind, , , to]: Named): boolean => kind === 'drive' && !ground.has(to);
  for (const one of elements) {
    const [kind, name, from, to] = one;
    if (kind === 'bridge' || (on.has(name) && !isOutput(one))) join(from, to);
  }
  const pins = [
    ['battery', 'BAT'],
    ['second', 'B2'],
    ['return', 'GND'],
    ...elements.filter(isOutput).map(([, name, , to]) => [name, to]),
  ] as const;
  const before = new Map([...piece].map(([one, all]) => [one, new Set(all)]));
  for (const one of elements) if (isOutput(one) && on.has(one[1])) join(one[2], one[3]);
  const ties = new Set<string>();
  for (const [one, at] of pins)
    for (const [other, there] of pins) {
      if (one >= other || before.get(at)?.has(there) !== true) continue;
      const isGround = before.get(at)?.has('GND') === true;
      const isShort = ['BAT', 'B2'].some((pole) => piece.get(at)?.has(pole) === true);
      if (isGround && ((one !== 'return' && other !== 'return') || !isShort)) continue;
      ties.add(`${one},${other}`);
    }
  return ties;
}

/** Pairs that the work ties in some state in which they were not tied before, and those that were tied in some state. */
function expected(one: Tangle): { readonly made: readonly string[]; readonly found: readonly string[] } {
  const { stock, kit } = devicesOf(one);
  const names = [...stock, ...kit].filter(([kind]) => kind !== 'bridge').map(([, name]) => name);
  const made = new Set<string>();
  const before = new Set<string>();
  for (let state = 0; state < 2 ** names.length; state += 1) {
    const on = new Set(names.filter((_, bit) => ((state >> bit) & 1) === 1));
    const was = tiesOf(stock, null, on);
    for (const both of was) before.add(both);
    for (const both of tiesOf([...stock, ...kit], one.link, on)) if (!was.has(both)) made.add(both);
  }
  return { made: [...made].sort(), found: [...before] };
}

/** Whether pairs lead from one to another: what is tied to a pole is tied to all that the pole is tied to. */
function leads(pairs: readonly string[], both: string): boolean {
  const [start = '', goal = ''] = both.split(',');
  const reached = new Set([start]);
  for (let before = 0; before !== reached.size; ) {
    before = reached.size;
    for (const [one = '', other = ''] of pairs.map((each) => each.split(',')))
      for (const [near, far] of [
        [one, other],
        [other, one],
      ] as const)
        if (reached.has(near)) reached.add(far);
  }
  return reached.has(goal);
}

describe('the search for sources that are tied', () => {
  it('finds the pairs that joining all that is closed finds, in every state', () => {
    let some = 0;
    fc.assert(
      fc.property(tangle, (one) => {
        const all = verdictOf(textOf(one)).findings.flatMap((each) => [each, ...each.consequences]);
        const found = all.flatMap(({ kind, points }) => (kind === 'sources-tied' ? [points.join()] : []));
        const { made, found: before } = expected(one);
        if (made.length > 0) some += 1;
        // Where a source is shorted to the return all that hangs on it is tied to all the rest.
        if (!made.some((both) => both.includes('return'))) {
          expect(found.filter((both) => !made.includes(both))).toEqual([]);
          expect(made.filter((both) => !leads([...found, ...before], both))).toEqual([]);
        }
        expect(found.length > 0).toBe(made.length > 0);
      }),
      { numRuns: 60 },
    );
    expect(some).toBeGreaterThan(10);
  }, 60_000);
});
