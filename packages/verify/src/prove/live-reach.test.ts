import { Rework } from '@loomproof/netlist';
import { describe, expect, it } from 'vitest';
import { jobOf } from '../../../../tests/support/kit-text.ts';
import { LiveReach, type Moment } from './live-reach.ts';
import { Names } from './names.ts';

/** A harness of the wires and devices given; every place is a source only where a row says so. */
interface Harness {
  readonly supplies?: string;
  readonly studs?: string;
  readonly connectors?: readonly string[];
  readonly wires?: readonly string[];
  readonly bag?: string;
  readonly work?: readonly string[];
}

function kit({
  supplies = '{ battery: { at: BAT } }',
  studs = '',
  connectors = [],
  wires = [],
  bag = '',
  work = [],
}: Harness): string {
  return `kit: a
revision: A
parts: { FU: { is: fuse } }
stock:
  supplies: ${supplies}
  studs: { BAT: { source: always }, G1: { chassis: yes, source: never }, G2: { chassis: yes, source: never }, ${studs} }
  connectors:
    P: { cavities: 1..9, source: { 1..9: never } }
${connectors.map((row) => `    ${row}\n`).join('')}  wires:
    idle: { from: P:8, to: P:9 }
${wires.map((row) => `    ${row}\n`).join('')}bag: { ${bag} }
work:
  - { do: fasten, wire: idle }
${work.map((row) => `  - { ${row} }\n`).join('')}wanted: { retired: [{ wire: idle }] }
`;
}

/** How a source reaches a place: null, or the source, whether it is certain, and the way hop by hop. */
function reached(harness: Harness, place: string, moment: Moment = 'finished'): string | null {
  const job = jobOf(kit(harness));
  const rework = new Rework(job);
  for (const step of job.steps) rework.apply(step);
  const reach = new LiveReach(rework, new Names(job));
  const start = job.places.findIndex((one) => one.address === place);
  const found = reach.from(start, moment, moment === 'now' ? rework.conductsNow : () => true);
  if (found === null) return null;
  const way = found.path.map((hop) => `${hop.by}${hop.name === null ? '' : ` ${hop.name}`} ${hop.to}`);
  return [`${found.source}${found.certain ? '' : '?'}`, ...way].join(' < ');
}

const device = (elements: string, more = ''): readonly string[] => [
  'K: { cavities: 1..3, into: D }',
  `D: { device: yes, cavities: 1..3, ${more}elements: [${elements}] }`,
];

describe('a source reaches a point', () => {
  it('through copper, with every hop of the way', () => {
    expect(reached({ wires: ['a: { from: P:1, to: BAT }'] }, 'P:1')).toBe(
      'BAT < seat terminal of a@P:1 < crimp a@P:1 < conductor a a@BAT < crimp terminal of a@BAT < seat BAT',
    );
    expect(reached({ wires: ['a: { from: P:1, to: P:2 }'] }, 'P:1')).toBeNull();
    expect(reached({}, 'BAT')).toBe('BAT');
  });

  it.each(['load', 'switch', 'bridge', 'fuse'])('through a %s, both ways', (kind) => {
    const connectors = device(`{ is: ${kind}, from: 1, to: 2, name: E }`);
    const forward = { connectors, wires: ['a: { from: P:1, to: K:2 }', 'b: { from: K:1, to: BAT }'] };
    const backward = { connectors, wires: ['a: { from: P:1, to: K:1 }', 'b: { from: K:2, to: BAT }'] };
    expect(reached(forward, 'P:1')).toContain('element E D:1');
    expect(reached(backward, 'P:1')).toContain('element E D:2');
  });

  it('through a diode from its anode to its cathode only', () => {
    const connectors = device('{ is: diode, from: 1, to: 2, name: E }');
    expect(
      reached({ connectors, wires: ['a: { from: P:1, to: K:2 }', 'b: { from: K:1, to: BAT }'] }, 'P:1'),
    ).toContain('element E D:1');
    expect(
      reached({ connectors, wires: ['a: { from: P:1, to: K:1 }', 'b: { from: K:2, to: BAT }'] }, 'P:1'),
    ).toBeNull();
  });

  it('through a fuse only while it is fitted', () => {
    const out = device('{ is: fuse, from: 1, to: 2, name: E, fitted: no }');
    const wires = ['a: { from: P:1, to: K:2 }', 'b: { from: K:1, to: BAT }'];
    expect(reached({ connectors: out, wires }, 'P:1')).toBeNull();
    expect(reached({ connectors: out, wires, work: ['do: fit fuse, fuse: E, with: FU'] }, 'P:1')).toContain(
      'BAT',
    );
    const fitted = device('{ is: fuse, from: 1, to: 2, name: E }');
    expect(reached({ connectors: fitted, wires, work: ['do: remove fuse, fuse: E'] }, 'P:1')).toBeNull();
    const switched = device('{ is: switch, from: 1, to: 2, name: E, fitted: no }');
    expect(reached({ connectors: switched, wires }, 'P:1')).toContain('BAT');
  });

  it('through chassis, between any two chassis studs', () => {
    const wires = ['a: { from: P:1, to: G1 }', 'b: { from: G2, to: BAT }'];
    expect(reached({ wires }, 'P:1')).toContain('chassis G2');
    expect(
      reached(
        { studs: 'N1: { source: never }', wires: ['a: { from: P:1, to: N1 }', 'b: { from: G2, to: BAT }'] },
        'P:1',
      ),
    ).toBeNull();
  });

  it('through mates as they are plugged', () => {
    const harness: Harness = {
      connectors: [
        'K: { cavities: 1..3, into: D }',
        'D: { device: yes, cavities: 1..3, source: { 1: always, 2..3: never } }',
      ],
      wires: ['a: { from: P:1, to: K:1 }'],
    };
    expect(reached(harness, 'P:1', 'now')).toContain('mate D:1');
    expect(reached({ ...harness, work: ['do: unplug, connector: K'] }, 'P:1', 'now')).toBeNull();
    expect(reached({ ...harness, work: ['do: unplug, connector: K'] }, 'P:1')).toContain('mate D:1');
  });

  it('on the harness as it is after the last step', () => {
    const wires = ['a: { from: P:1, to: BAT }'];
    expect(reached({ wires, work: ['do: detach, end: a@BAT'] }, 'P:1')).toBeNull();
  });
});

describe('what counts as a source', () => {
  it.each(['always', 'switched', 'driven'])('is a place that is %s', (source) => {
    expect(reached({ studs: `S: { source: ${source} }`, wires: ['a: { from: P:1, to: S }'] }, 'P:1')).toMatch(
      /^S </,
    );
  });

  it('is perhaps a place of which nothing is said, and a certain source wins over it', () => {
    expect(reached({ studs: 'S: {}', wires: ['a: { from: P:1, to: S }'] }, 'P:1')).toMatch(/^S\? </);
    expect(
      reached(
        { studs: 'S: {}, R: {}', wires: ['a: { from: P:1, to: S }', 'b: { from: P:1, to: R }'] },
        'P:1',
      ),
    ).toMatch(/^[SR]\? </);
    expect(
      reached(
        {
          studs: 'S: {}',
          connectors: ['Q: { cavities: 1..1, source: { 1: never } }'],
          wires: ['a: { from: P:1, to: S }', 'b: { from: P:1, to: Q:1 }', 'c: { from: Q:1, to: BAT }'],
        },
        'P:1',
      ),
    ).toMatch(/^BAT </);
  });

  it('is nothing that is never one', () => {
    expect(reached({ studs: 'S: { source: never }', wires: ['a: { from: P:1, to: S }'] }, 'P:1')).toBeNull();
  });
});

describe('while work goes on', () => {
  const two = '{ first: { at: [B1, B3] }, second: { at: B2 } }';
  const studs =
    'B1: { source: always }, B2: { source: always }, B3: { source: never }, S: { source: switched }, U: {}';
  const at = (place: string): Harness => ({
    supplies: two,
    studs,
    wires: [`a: { from: P:1, to: ${place} }`],
  });
  const first = 'do: disconnect, supply: first';
  const second = 'do: disconnect, supply: second';

  it('a place of a supply is a source while that supply is on, whatever else is said of it', () => {
    expect(reached(at('B1'), 'P:1', 'now')).toMatch(/^B1 </);
    expect(reached(at('B3'), 'P:1', 'now')).toMatch(/^B3 </);
    expect(reached({ ...at('B1'), work: [first] }, 'P:1', 'now')).toBeNull();
    expect(reached({ ...at('B3'), work: [first] }, 'P:1', 'now')).toBeNull();
    expect(reached({ ...at('B2'), work: [first] }, 'P:1', 'now')).toMatch(/^B2 </);
    expect(reached({ ...at('B2'), work: [second] }, 'P:1', 'now')).toBeNull();
  });

  it('a place of two supplies is one while either is on', () => {
    const both: Harness = { ...at('B1'), supplies: '{ first: { at: B1 }, second: { at: B1 } }' };
    expect(reached({ ...both, work: [first] }, 'P:1', 'now')).toMatch(/^B1 </);
    expect(reached({ ...both, work: [second] }, 'P:1', 'now')).toMatch(/^B1 </);
    expect(reached({ ...both, work: [first, second] }, 'P:1', 'now')).toBeNull();
  });

  it('any other source is on until all supplies are off', () => {
    expect(reached({ ...at('S'), work: [first] }, 'P:1', 'now')).toMatch(/^S </);
    expect(reached({ ...at('S'), work: [first, second] }, 'P:1', 'now')).toBeNull();
    expect(reached({ ...at('U'), work: [second] }, 'P:1', 'now')).toMatch(/^U\? </);
    expect(reached({ ...at('U'), work: [first, second] }, 'P:1', 'now')).toBeNull();
  });

  it('is on all the time where the kit names no supply', () => {
    const none: Harness = { supplies: '{}', wires: ['a: { from: P:1, to: BAT }'] };
    expect(reached(none, 'P:1', 'now')).toMatch(/^BAT </);
  });

  it('in the finished machine everything is on again', () => {
    for (const place of ['B1', 'B2', 'B3', 'S'])
      expect(reached({ ...at(place), work: [first, second] }, 'P:1')).toMatch(new RegExp(`^${place} <`));
  });
});

describe('the way that is told', () => {
  it('says of each hop what it is, and where it comes from', () => {
    const job = jobOf(
      kit({
        connectors: device('{ is: load, from: 1, to: 2, name: E }'),
        wires: [
          'a: { from: P:1, to: K:1, size: 1 mm2, colour: RD }',
          'b: { from: K:2, to: G1 }',
          'c: { from: G2, to: BAT }',
        ],
      }),
    );
    const rework = new Rework(job);
    const found = new LiveReach(rework, new Names(job)).from(0, 'finished', () => true);
    const start = job.places.findIndex((one) => one.address === 'P:1');
    const way = new LiveReach(rework, new Names(job)).from(start, 'finished', () => true)?.path ?? [];
    expect(found).not.toBeNull();
    expect(way[2]).toEqual({
      by: 'conductor',
      from: 'a@P:1',
      to: 'a@K:1',
      name: 'a',
      colour: 'RD',
      size: '1 mm2',
      made: 'stock',
    });
    expect(way.find((hop) => hop.by === 'element')).toEqual({
      by: 'element',
      from: 'D:1',
      to: 'D:2',
      name: 'E',
      colour: null,
      size: null,
      made: 'stock',
    });
    expect(way.find((hop) => hop.by === 'chassis')).toEqual({
      by: 'chassis',
      from: 'G1',
      to: 'G2',
      name: null,
      colour: null,
      size: null,
      made: 'stock',
    });
    for (const [index, hop] of way.entries()) expect(hop.from).toBe(index === 0 ? 'P:1' : way[index - 1]?.to);
  });

  it('says of an element of a kit device that the kit brings it', () => {
    const job = jobOf(
      kit({
        bag: 'connectors: { K: { cavities: 1..2, into: D }, D: { device: yes, cavities: 1..2, source: { 2: always }, elements: [{ is: load, from: 1, to: 2, name: E }] } }',
      }),
    );
    const start = job.places.findIndex((one) => one.address === 'D:1');
    const way = new LiveReach(new Rework(job), new Names(job)).from(start, 'finished', () => true)?.path;
    expect(way).toEqual([
      { by: 'element', from: 'D:1', to: 'D:2', name: 'E', colour: null, size: null, made: 'kit' },
    ]);
  });
});
