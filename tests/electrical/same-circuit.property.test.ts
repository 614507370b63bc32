import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StudDevice, type StudKit, studKit } from '../support/stud-kit.ts';
import { verdictOf } from '../support/verdict-of.ts';

/*
 * What is said of a circuit may not depend on how it is written down: the order and the names of things, which end of a lamp
 * is called which, whether a wire is in one piece, what hangs elsewhere, and the unit of resistance.
 */

const feeds = ['A', 'B', 'C'];
const feed = fc.constantFrom(...feeds);
const back = fc.constantFrom('G', 'GND');
const lamp = fc.tuple(feed, back, fc.integer({ min: 4, max: 40 }));

const circuits = fc.record({
  stock: fc.array(lamp, { minLength: 1, maxLength: 3 }),
  kit: fc.array(lamp, { minLength: 1, maxLength: 2 }),
  diode: fc.option(fc.constantFrom('AB', 'BC', 'CA', 'GA'), { nil: null }),
  relay: fc.option(fc.tuple(feed, feed, fc.boolean()), { nil: null }),
  fused: fc.boolean(),
  ways: fc.array(fc.constantFrom('S0', 'S1', '[S0, S1]', 'always', 'never', 'S0 + not S1'), {
    minLength: 3,
    maxLength: 3,
  }),
  metres: fc.integer({ min: 1, max: 9 }),
});
type Circuits = typeof circuits extends fc.Arbitrary<infer T> ? T : never;

/** How one and the same circuit is written down. */
interface Writing {
  /** Of what is written first; as it comes where nothing is said. */
  readonly order?: <T>(list: readonly T[]) => readonly T[];
  readonly name?: (name: string) => string;
  /** Whether loads are turned round. */
  readonly turned?: boolean;
  /** What resistances and lengths are multiplied by. */
  readonly times?: number;
  /** Circuits elsewhere that nothing touches. */
  readonly beside?: number;
}

function textOf(one: Circuits, { order, name, turned, times = 1, beside = 0 }: Writing = {}): string {
  const called = name ?? ((own: string): string => own);
  const load = (own: string, [from, to, ohm]: readonly [string, string, number], at: number): StudDevice => [
    'load',
    called(own),
    turned === true ? to : from,
    turned === true ? from : to,
    `resistance: ${((ohm + at / 7) * times).toFixed(6)} ohm`,
  ];
  const stock: StudDevice[] = [
    ['fuse', called('F'), 'BAT', one.fused ? 'P' : 'Q', 'rating: 10 A'],
    ['switch', called('S0'), one.fused ? 'P' : 'BAT', 'A'],
    ['switch', called('S1'), 'BAT', 'B'],
    ['switch', called('S2'), 'BAT', 'C'],
    ...one.stock.map((row, at) => load(`L${at}`, row, at)),
    ...Array.from({ length: beside }, (_, at) => [
      ['switch', called(`T${at}`), 'BAT', `U${at}`] as const,
      ['load', called(`V${at}`), `U${at}`, 'GND', 'resistance: 9 ohm'] as const,
    ]).flat(),
  ];
  const kit: StudDevice[] = one.kit.map((row, at) => load(`K${at}`, row, at + 3));
  if (one.diode !== null) {
    const [from = 'A', to = 'B'] = one.diode.split('');
    kit.push(['diode', called('D'), from, to, `drop: 0.6 V, resistance: ${times / 100} ohm`]);
  }
  if (one.relay !== null) {
    const [from, to, rest] = one.relay;
    kit.push(load('R', [from, 'GND', 90], 0));
    kit[kit.length - 1] = ['coil', called('R'), from, 'GND', `resistance: ${90 * times} ohm`];
    kit.push(['switch', called('W'), 'BAT', to, `worked by: ${called('R')}${rest ? ', rest: closed' : ''}`]);
  }
  const loads = [...one.kit.map((_, at) => `K${at}`), ...(one.relay === null ? [] : ['R'])];
  const put = order ?? (<T>(list: readonly T[]): readonly T[] => list);
  const ways = (at: number): string => (one.ways[at] ?? 'never').replaceAll(/S\d/g, (own) => called(own));
  const all: StudKit = {
    nets: [...feeds, 'G', 'P', 'Q', ...Array.from({ length: beside }, (_, at) => `U${at}`)],
    stock: put(stock),
    wires: [['common', 'G', 'GND']],
    kit: put(kit),
    powered: put(loads.map((own, at) => `${called(own)}: ${ways(at)}`)),
    ofWires: `length: ${one.metres * times} m, capacity: 30 A`,
    sections: [
      'electrical: { limits: own, own limits: { source: a test, drop: 10 %, lead to protector: 500 m }, material: copper, strands: formula, temperature: 20 C, joints: 0 ohm }',
    ],
  };
  return studKit(all);
}

interface Said {
  readonly verdicts: readonly string[];
  readonly findings: readonly string[];
  readonly drops: ReadonlyMap<string, number | null>;
}

/** What obligations 9 and 10 say, with the loss of every circuit; findings by kind and whom they are about. */
function saidOf(text: string): Said {
  const { obligations, findings, judgement } = verdictOf(text);
  const all = findings.flatMap((one) => [one, ...one.consequences]);
  return {
    verdicts: obligations.map(({ obligation, verdict }) => `${obligation} ${verdict}`),
    // States are told in the order in which their switches are written.
    findings: all
      .map(({ kind, points }) => [kind, ...points.join(' ').split(/[ ,]+/).sort()].join(' '))
      .sort(),
    drops: new Map((judgement.electrical?.limits.drops ?? []).map((row) => [row.circuit, row.dropVolt])),
  };
}

/** How many losses that are known were held against each other. */
let compared = 0;

function expectSameVolts(own: number | null | undefined, volts: number | null): void {
  if (volts === null) {
    expect(own ?? null).toBeNull();
    return;
  }
  compared += 1;
  expect(Math.abs((own ?? Number.NaN) - volts)).toBeLessThan(1e-5);
}

function expectSame(now: Said, was: Said): void {
  expect(now.verdicts).toEqual(was.verdicts);
  expect(now.findings).toEqual(was.findings);
  expect([...now.drops.keys()].sort()).toEqual([...was.drops.keys()].sort());
  for (const [circuit, volts] of was.drops) expectSameVolts(now.drops.get(circuit), volts);
}

/** Copper in two pieces: each wire of the stock that is one between two places becomes two with a splice between. */
function inPieces(text: string): string {
  const splices: string[] = [];
  const lines = text.split('\n').flatMap((line) => {
    const wire = /^ {4}(.+?): \{ from: (.+?), to: (.+?), size: 1 mm2, length: (\d+) m(.*) \}$/.exec(line);
    if (wire === null || line.includes('ring') || line.includes('terminal')) return [line];
    const [, name = '', from = '', to = '', metres = '0', rest = ''] = wire;
    splices.push(`    J ${name}: {}`);
    return [
      `    ${name}: { from: ${from}, to: J ${name}, size: 1 mm2, length: ${Number(metres) / 4} m${rest} }`,
      `    ${name} on: { from: J ${name}, to: ${to}, size: 1 mm2, length: ${(Number(metres) * 3) / 4} m${rest} }`,
    ];
  });
  return lines.join('\n').replace('  connectors:\n', `  splices:\n${splices.join('\n')}\n  connectors:\n`);
}

describe('one circuit written down in two ways', () => {
  const hold = (check: (one: Circuits) => void): void => {
    compared = 0;
    fc.assert(fc.property(circuits, check), { numRuns: 25 });
    expect(compared).toBeGreaterThan(10);
  };

  it('is judged alike in another order', () => {
    hold((one) =>
      expectSame(saidOf(textOf(one, { order: (list) => [...list].reverse() })), saidOf(textOf(one))),
    );
  }, 60_000);

  it('is judged alike with lamps turned round, which have no plus', () => {
    hold((one) => expectSame(saidOf(textOf(one, { turned: true })), saidOf(textOf(one))));
  }, 60_000);

  it('is judged alike under other names, in another order of the alphabet', () => {
    const other = (name: string): string => `${'zyxwvutsrqponmlkjihgfedcba'[name.charCodeAt(0) % 26]}${name}`;
    const plain = (text: string): string => text.replaceAll(/\b[a-z](?=[FSLKDRWTV]\d?\b)/g, '');
    hold((one) => {
      const { verdicts, findings, drops } = saidOf(textOf(one, { name: other }));
      const was = saidOf(textOf(one));
      expect(verdicts).toEqual(was.verdicts);
      const kinds = (all: readonly string[]): readonly string[] =>
        all.map((line) => [...plain(line)].sort().join('')).sort();
      expect(kinds(findings)).toEqual(kinds(was.findings));
      for (const [circuit, volts] of was.drops) expectSameVolts(drops.get(other(circuit)), volts);
    });
  }, 60_000);

  it('is judged alike with twice the resistance everywhere, in which half the current flows', () => {
    hold((one) => expectSame(saidOf(textOf(one, { times: 2 })), saidOf(textOf(one))));
  }, 60_000);

  it('is judged alike beside circuits that nothing touches', () => {
    hold((one) => expectSame(saidOf(textOf(one, { beside: 3 })), saidOf(textOf(one))));
  }, 60_000);

  it('loses the same over wires in two pieces, where a splice adds nothing', () => {
    hold((one) => {
      const [now, was] = [saidOf(inPieces(textOf(one))), saidOf(textOf(one))];
      const electrical = ({ verdicts }: Said): readonly string[] =>
        verdicts.filter((line) => /^(9|10) /.test(line));
      expect(electrical(now)).toEqual(electrical(was));
      expectSame({ ...now, verdicts: [], findings: [] }, { ...was, verdicts: [], findings: [] });
    });
  }, 60_000);
});
