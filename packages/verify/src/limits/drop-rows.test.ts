import { describe, expect, it } from 'vitest';
import { type StudDevice, type StudKit, studKit } from '../../../../tests/support/stud-kit.ts';
import { verdictOf } from '../../../../tests/support/verdict-of.ts';
import type { DropRow } from './limit-table.ts';

const electrical = (more = ''): string =>
  `electrical: { limits: own, own limits: { source: test, drop: 90 %, lead to protector: 99 m${more} }, material: copper, strands: formula, temperature: 20 C, joints: 0 ohm }`;
const base = { ofWires: 'length: 1 m, capacity: 99 A', sections: [electrical()] };
/** A metre of 1 mm2 (International Annealed Copper Standard). */
const lead = 1 / 58;

function rows(kit: StudKit): ReadonlyMap<string, DropRow> {
  const drops = verdictOf(studKit({ ...base, ...kit })).judgement.electrical?.limits.drops ?? [];
  return new Map(drops.map((row) => [row.circuit, row]));
}

function missingOf(kit: StudKit): readonly string[] {
  const { findings } = verdictOf(studKit({ ...base, ...kit }));
  return findings.find(({ kind }) => kind === 'electrical-unknown')?.points ?? [];
}

describe('the worst state of a circuit', () => {
  it('is with everything on where each has one way only: a switch that is off takes current away', () => {
    const found = rows({
      nets: ['A', 'B'],
      stock: [
        ['switch', 'S1', 'BAT', 'A', 'resistance: 10 mohm'],
        ['load', 'old', 'A', 'GND', 'power: 12 W, volts: 12 V'],
      ],
      kit: [['load', 'new', 'A', 'GND', 'power: 12 W, volts: 12 V']],
      powered: ['new: S1'],
    });
    expect(found.get('new')?.state).toEqual([]);
    expect(found.get('new')?.dropVolt).toBeCloseTo(2 * (2 * lead + 0.01) + 2 * lead, 9);
    expect(found.get('new')?.ohm).toBeCloseTo(4 * lead + 0.01, 9);
  });

  it('is with the better of two ways off, and says so', () => {
    const found = rows({
      nets: ['A'],
      stock: [
        ['switch', 'good', 'BAT', 'A', 'resistance: 1 mohm'],
        ['switch', 'poor', 'BAT', 'A', 'resistance: 90 mohm'],
      ],
      kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
      powered: ['lamp: [good, poor]'],
    });
    expect(found.get('lamp')?.state).toEqual(['good off']);
    expect(found.get('lamp')?.dropVolt).toBeCloseTo(2 * lead + 0.09 + 2 * lead, 9);
  });

  it('is not one in which the load is not meant to be powered', () => {
    const found = rows({
      nets: ['A'],
      stock: [
        ['switch', 'good', 'BAT', 'A', 'resistance: 1 mohm'],
        ['switch', 'poor', 'BAT', 'A', 'resistance: 90 mohm'],
      ],
      kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
      powered: ['lamp: good'],
    });
    expect(found.get('lamp')?.state).not.toContain('good off');
  });

  it.each([
    ['off', 2, 70],
    ['on', 70, 2],
  ])(
    'is with the relay as it stands worst: %s where the lamp then hangs on the poor contact',
    (worst, make, rest) => {
      const found = rows({
        nets: ['A', 'B'],
        stock: [['switch', 'S1', 'BAT', 'A', 'resistance: 1 mohm']],
        kit: [
          ['coil', 'R', 'A', 'GND', 'power: 2.4 W, volts: 12 V'],
          ['switch', 'make', 'BAT', 'B', `worked by: R, resistance: ${make} mohm`],
          ['switch', 'rest', 'BAT', 'B', `worked by: R, rest: closed, resistance: ${rest} mohm`],
          ['load', 'lamp', 'B', 'GND', 'power: 12 W, volts: 12 V'],
        ],
        powered: ['R: S1', 'lamp: always'],
      });
      expect(found.get('lamp')?.state).toEqual(worst === 'off' ? ['R off'] : []);
      expect(found.get('lamp')?.dropVolt).toBeCloseTo(2 * lead + 0.07 + 2 * lead, 9);
    },
  );

  it('beyond twelve ways side by side is not claimed: it says how many states were tried', () => {
    const stock = Array.from(
      { length: 13 },
      (_, index) => ['switch', `S${index}`, 'BAT', 'A', `resistance: ${index + 1} mohm`] as const,
    );
    const kit = [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']] as const;
    expect(missingOf({ nets: ['A'], stock: stock.slice(1), kit, powered: ['lamp: always'] })).toEqual([]);
    expect(missingOf({ nets: ['A'], stock, kit, powered: ['lamp: always'] })).toEqual([
      'the losses in more than 28 of 8192 states of the part with lamp',
    ]);
  });
});

describe('loads of which the design current does not tell what they get', () => {
  const series = (first: string, second: string): StudKit => ({
    nets: ['A'],
    stock: [['load', 'old', 'BAT', 'GND', 'power: 3 W, volts: 12 V']],
    kit: [
      ['load', 'first', 'BAT', 'A', first],
      ['load', 'second', 'A', 'GND', second],
    ],
    powered: ['first: always', 'second: always'],
  });

  it.each([
    ['alike', 'power: 12 W, volts: 6 V', 'power: 12 W, volts: 6 V'],
    ['different', 'power: 12 W, volts: 6 V', 'power: 6 W, volts: 6 V'],
  ])('two in series that are %s are undecided, by name', (_, first, second) => {
    expect(missingOf(series(first, second))).toEqual([
      'what first gets: its current has to go through another load too',
      'what second gets: its current has to go through another load too',
    ]);
    for (const name of ['first', 'second'])
      expect(rows(series(first, second)).get(name)?.dropVolt, name).toBeNull();
  });

  it('one that takes nothing loses nothing, and is no fault', () => {
    const kit: StudKit = {
      nets: ['A'],
      stock: [['switch', 'S', 'BAT', 'A', 'resistance: 10 mohm']],
      kit: [
        ['load', 'none', 'A', 'GND', 'power: 0 W, volts: 12 V'],
        ['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V'],
      ],
      powered: ['none: S', 'lamp: S'],
    };
    expect([...rows(kit).keys()]).toEqual(['lamp']);
    expect(rows(kit).get('lamp')?.dropVolt).toBeCloseTo(4 * lead + 0.01, 9);
    expect(missingOf(kit)).toEqual([]);
  });
});

describe('a load on volts that it was not made for', () => {
  const on = (volts: string): readonly string[] =>
    missingOf({
      nets: ['A'],
      stock: [['switch', 'S', 'BAT', 'A', 'resistance: 10 mohm']],
      kit: [['load', 'lamp', 'A', 'GND', `power: 12 W, volts: ${volts}`]],
      powered: ['lamp: S'],
    });

  it('is undecided: what it takes there is not what it was designed for', () => {
    expect(on('24 V')).toEqual(['what lamp, made for 24 V, does on 12.0 V']);
    expect(on('6 V')).toEqual(['what lamp, made for 6 V, does on 12.0 V']);
    expect(on('13.5 V')).toEqual([]);
    expect(on('10 V')).toEqual([]);
  });
});

describe('the states that count', () => {
  const s = (name: string, from: string, to: string): StudDevice => [
    'switch',
    name,
    from,
    to,
    'resistance: 1 mohm',
  ];

  it('are those in which what has to be off is off: a motor on a bridge of four switches', () => {
    const bridge: StudKit = {
      nets: ['A', 'B'],
      stock: [s('S1', 'BAT', 'A'), s('S2', 'BAT', 'B'), s('S3', 'A', 'GND'), s('S4', 'B', 'GND')],
      kit: [['load', 'motor', 'A', 'B', 'power: 12 W, volts: 12 V']],
      powered: ['motor: [S1 + S4 + not S2 + not S3, S2 + S3 + not S1 + not S4]'],
    };
    expect(missingOf(bridge)).toEqual([]);
    // By hand: 1 A through two switches with two leads each, and the two leads of the motor.
    expect(rows(bridge).get('motor')?.dropVolt).toBeCloseTo(6 * lead + 0.002, 9);
    expect(rows(bridge).get('motor')?.state).toEqual(['S2 off', 'S3 off']);
  });

  it('are not those in which an arm of a bridge shorts the supply: what flows then is no current of a wire', () => {
    const { findings, judgement } = verdictOf(
      studKit({
        ...base,
        ofWires: 'length: 1 m, capacity: 5 A',
        nets: ['A', 'B'],
        stock: [['load', 'old', 'BAT', 'GND', 'power: 12 W, volts: 12 V']],
        kit: [
          ['drive', 'h1', 'BAT', 'A'],
          ['drive', 'l1', 'A', 'GND'],
          ['drive', 'h2', 'BAT', 'B'],
          ['drive', 'l2', 'B', 'GND'],
          ['load', 'motor', 'A', 'B', 'power: 24 W, volts: 12 V'],
        ],
        powered: ['motor: [h1 + l2 + not l1 + not h2, h2 + l1 + not l2 + not h1]'],
      }),
    );
    expect(findings.map(({ kind }) => kind)).toEqual(['sources-tied', 'sources-tied']);
    const carried = judgement.electrical?.limits.loading.find(({ what }) => what === 'h1 a');
    expect(carried?.ampere).toBeCloseTo(2, 9);
  });

  it('and where it is shorted in all of them, nothing is told', () => {
    const kit: StudKit = {
      nets: ['A'],
      stock: [['switch', 'S', 'BAT', 'A']],
      kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
      links: [['short', 'BAT', 'GND', 'length: 1 m, capacity: 99 A']],
      powered: ['lamp: S'],
    };
    const reversed: StudKit = {
      ...kit,
      kit: [...(kit.kit ?? []), ['diode', 'D', 'A', 'GND', 'drop: 0.6 V']],
      links: [],
    };
    expect(missingOf(reversed).join()).toContain('it shorts its supply in every state');
  });

  it('are also those in which a load is no longer bridged: a fan behind its dropping resistor', () => {
    const fan = (powered: readonly string[]): StudKit => ({
      nets: ['A', 'B'],
      stock: [s('S1', 'BAT', 'A'), ['load', 'resistor', 'A', 'B', 'resistance: 10 ohm'], s('S2', 'A', 'B')],
      kit: [['load', 'fan', 'B', 'GND', 'power: 60 W, volts: 12 V']],
      powered,
    });
    const untold = ['fan', 'resistor'].map(
      (name) => `what ${name} gets: its current has to go through another load too`,
    );
    expect(missingOf(fan(['fan: S1', 'resistor: S1 + not S2']))).toEqual(untold);
    // The bridged resistor is not meant to have anything, and so cannot lose it.
    expect(rows(fan(['fan: S1 + S2', 'resistor: never'])).has('resistor')).toBe(false);
  });

  it('do not ask for the state of what is nowhere near', () => {
    const near: StudKit = {
      nets: ['A', 'B'],
      stock: [
        s('S1', 'BAT', 'A'),
        s('S9', 'BAT', 'B'),
        ['load', 'old', 'B', 'GND', 'power: 3 W, volts: 12 V'],
      ],
      kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
      powered: ['lamp: S1 + not S9'],
    };
    expect(rows(near).get('lamp')?.dropVolt).toBeCloseTo(4 * lead + 0.001, 9);
  });

  it('may lose more than there is', () => {
    const far: StudKit = {
      nets: [],
      stock: [['load', 'old', 'BAT', 'GND', 'power: 3 W, volts: 12 V']],
      kit: [['load', 'heater', 'BAT', 'GND', 'power: 420 W, volts: 12 V']],
      powered: ['heater: always'],
      ofWires: 'length: 20 m, capacity: 99 A',
    };
    expect(rows(far).get('heater')?.dropVolt).toBeCloseTo(35 * 40 * lead, 9);
    // 10.8 V may be lost. By IEC 60228, class 5, 40 m of 2.5 mm2 lose 35 A times 0.3192 ohm, 11.2 V, and 4 mm2 6.9 V.
    expect(rows(far).get('heater')?.smallest).toBe('4 mm2');
  });
});

describe('what is not said of a circuit', () => {
  const lamp: StudKit = {
    nets: ['A'],
    stock: [['switch', 'S1', 'BAT', 'A', 'resistance: 1 mohm']],
    kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
    powered: ['lamp: S1'],
  };

  it.each([
    ['the power of the load', { kit: [['load', 'lamp', 'A', 'GND', 'volts: 12 V']] }, 'the current of lamp'],
    ['the volts of its power', { kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W']] }, 'the current of lamp'],
    ['the length of a wire', { ofWires: 'capacity: 9 A' }, 'the length of S1 a'],
    ['the material', { sections: [electrical().replace('material: copper, ', '')] }, 'the material of S1 a'],
    [
      'the text for the resistance',
      { sections: [electrical().replace('strands: formula, ', '')] },
      'the strands of',
    ],
    ['what a joint adds', { sections: [electrical().replace(', joints: 0 ohm', '')] }, 'what a crimp adds'],
    ['the limit', { sections: [electrical().replace('drop: 90 %, ', '')] }, 'the limit `drop`'],
  ] as const)('%s is asked for by name', (_, change, expected) => {
    expect(missingOf(lamp)).toEqual([]);
    expect(missingOf({ ...lamp, ...change }).some((one) => one.startsWith(expected))).toBe(true);
  });

  it.each([
    ['of which nothing is said', ''],
    ['out of which nothing comes', ', source: { 1: never }'],
  ])('a pin of a module without elements %s is asked for by name', (_, source) => {
    const text = studKit({ ...base, ...lamp });
    const hung = text
      .replace(
        '  wires:\n',
        `    KM: { cavities: 1, into: M }\n    M: { device: yes, cavities: 1${source} }\n  wires:\n    to module: { from: A, to: KM:1, size: 1 mm2, length: 1 m, capacity: 9 A }\n`,
      )
      .replace('at A: { to: A, add: [', 'at A: { to: A, add: [');
    const points = verdictOf(hung).findings.flatMap(({ kind, points: all }) =>
      kind === 'electrical-unknown' ? all : [],
    );
    expect(points.join('; ')).toMatch(/what current (KM|M):1 takes: its device has no elements/);
  });

  it.each([
    ['A', 'distinct: yes'],
    ['A', 'distinct: yes, source: never'],
    // No element of the model hangs on what the work joins there.
    ['N', 'distinct: yes, source: never'],
  ])('a wire that leaves the model at %s, %s, is asked for by name', (at, rear) => {
    const nets = [...lamp.nets, 'N'];
    const links = at === 'N' ? [['more', 'BAT', 'N'] as const] : [];
    const leaving = studKit({ ...base, ...lamp, nets, links })
      .replace('add: [N', 'add: [N, rear')
      .replace(
        '  wires:\n',
        `  boundaries: { rear: { ${rear} } }\n  wires:\n    to rear: { from: ${at}, to: rear, size: 1 mm2, length: 1 m, capacity: 9 A }\n`,
      );
    const points = verdictOf(leaving).findings.flatMap(({ kind, points: all }) =>
      kind === 'electrical-unknown' ? all : [],
    );
    expect(points).toEqual(['what current leaves the model at rear']);
  });

  it('a wire that the work takes away is judged as well: what is left carries what both carried', () => {
    const shared = (work: string): string =>
      studKit({
        ...base,
        nets: ['A', 'C'],
        stock: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
        wires: [
          ['one', 'BAT', 'A'],
          ['two', 'BAT', 'A'],
        ],
        // What the kit brings is somewhere else, so only the wire that was taken away leads to the lamp.
        links: [['three', 'GND', 'C']],
      }).replace(
        '  - { do: reconnect, supply: battery }\n',
        `${work}  - { do: reconnect, supply: battery }\n`,
      );
    const dropsOf = (text: string): readonly (number | null)[] =>
      (verdictOf(text).judgement.electrical?.limits.drops ?? []).map(({ dropVolt }) => dropVolt);
    expect(dropsOf(shared(''))).toEqual([]);
    const [alone, ...more] = dropsOf(shared('  - { do: detach, end: one@BAT }\n'));
    expect(alone).toBeCloseTo(lead + 2 * lead, 9);
    expect(more).toEqual([]);
  });
});
