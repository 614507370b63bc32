import { describe, expect, it } from 'vitest';
import { type StudDevice, type StudKit, studKit } from '../../../../tests/support/stud-kit.ts';
import { changed, verdictOf } from '../../../../tests/support/verdict-of.ts';

const electrical = (more: string): string =>
  `electrical: { limits: own, own limits: { source: test, drop: 90 %, lead to protector: 99 m${more} }, material: copper, strands: formula, temperature: 20 C, joints: 0 ohm }`;
const base = { ofWires: 'length: 1 m, capacity: 20 A', sections: [electrical('')] };

/** What obligation 9 says of a kit: kind, names, and the value with its limit. */
function found(kit: StudKit, steps = ''): readonly string[] {
  const text = studKit({ ...base, ...kit }).replace(
    '  - { do: reconnect, supply: battery }\n',
    `${steps}  - { do: reconnect, supply: battery }\n`,
  );
  return verdictOf(text)
    .findings.filter(({ obligation }) => obligation === 9)
    .map(({ kind, points, witness }) =>
      witness.is === 'limit'
        ? `${kind} ${points.join(' ')}: ${Number(witness.value.toFixed(6))} for ${witness.limit}`
        : `${kind} ${points.join('; ')}`,
    )
    .sort();
}

/** A fuse of 10 A ahead of a distribution stud, from which the kit feeds one more lamp. */
const board: StudKit = {
  nets: ['F', 'A'],
  stock: [
    ['fuse', 'F1', 'BAT', 'F', 'rating: 10 A'],
    ['load', 'old', 'F', 'GND', 'power: 12 W, volts: 12 V'],
  ],
  kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
  powered: ['lamp: always'],
};
const link = (own: string): StudKit => ({ ...board, links: [['branch', 'F', 'A', `length: 1 m, ${own}`]] });

describe('a conductor behind a fuse', () => {
  it('may have a capacity of the rating, and not less', () => {
    expect(found(link('capacity: 10 A'))).toEqual([]);
    expect(found(link('capacity: 9.9 A'))).toEqual(['conductor-unprotected F1 branch: 10 for 9.9']);
  });

  it('is found though nobody touched it, behind the same fuse and behind another one', () => {
    const thin = (from: string, capacity: string): StudKit => ({
      ...link('capacity: 10 A'),
      nets: ['F', 'A', 'T', 'G'],
      stock: [...board.stock, ['fuse', 'F2', 'BAT', 'G', 'rating: 10 A']],
      wires: [['thin', from, 'T', `length: 1 m, capacity: ${capacity}`]],
    });
    expect(found(thin('F', '9 A'))).toEqual(['conductor-unprotected F1 thin: 10 for 9']);
    expect(found(thin('F', '10 A'))).toEqual([]);
    expect(found(thin('G', '9 A'))).toEqual(['conductor-unprotected F2 thin: 10 for 9']);
    expect(found(thin('G', '10 A'))).toEqual([]);
  });

  it('is not looked for back through the fuse: what lies ahead of it is not its to protect', () => {
    const ahead: StudKit = {
      ...link('capacity: 10 A'),
      nets: ['F', 'A', 'M'],
      stock: [['fuse', 'F1', 'M', 'F', 'rating: 10 A'], ...board.stock.slice(1)],
      wires: [['main', 'BAT', 'M', 'length: 1 m, capacity: 5 A']],
    };
    expect(found(ahead)).toEqual([]);
  });

  it('is held against the nearest fuse: a second one protects what the first does not', () => {
    const second = (rating: string): StudKit => ({
      ...link('capacity: 10 A'),
      nets: ['F', 'A', 'S', 'T'],
      stock: [...board.stock, ['fuse', 'F2', 'A', 'S', `rating: ${rating}`]],
      wires: [['thin', 'S', 'T', 'length: 1 m, capacity: 5 A']],
    });
    expect(found(second('5 A'))).toEqual([]);
    expect(found(second('7.5 A'))).toEqual(['conductor-unprotected F2 thin: 7.5 for 5']);
  });

  it.each([
    ['a switch', ['switch', 'S', 'A', 'T'], true],
    ['a diode along its arrow', ['diode', 'S', 'A', 'T', 'drop: 0.5 V'], true],
    ['a diode against its arrow', ['diode', 'S', 'T', 'A', 'drop: 0.5 V'], false],
    ['a load', ['load', 'S', 'A', 'T', 'power: 1 W, volts: 12 V'], false],
  ] as const)('is looked for through %s: %s', (_, device, through) => {
    const kit: StudKit = {
      ...link('capacity: 10 A'),
      nets: ['F', 'A', 'T', 'U'],
      stock: [...board.stock, device],
      wires: [['thin', 'T', 'U', 'length: 1 m, capacity: 5 A']],
    };
    const thin = found(kit).filter((one) => one.startsWith('conductor-unprotected'));
    expect(thin).toEqual(through ? ['conductor-unprotected F1 thin: 10 for 5'] : []);
  });

  it('keeps its protection when it is abandoned and still live', () => {
    const spur = (capacity: string): readonly string[] =>
      found(
        {
          ...link('capacity: 10 A'),
          nets: ['F', 'A', 'T'],
          wires: [['spur', 'F', 'T', `length: 1 m, capacity: ${capacity}`]],
        },
        '  - { do: detach, end: spur@T }\n',
      );
    expect(spur('10 A')).toEqual([]);
    expect(spur('9 A')).toEqual(['conductor-unprotected F1 spur: 10 for 9']);
  });

  it('of which nothing is said leaves it undecided', () => {
    const plain = { ...link(''), links: [['branch', 'F', 'A', 'length: 1 m']] } as const;
    expect(found(plain)).toEqual(['electrical-unknown the capacity of branch']);
  });
});

describe('a conductor that several fuses feed', () => {
  /** Two fuses of 10 A whose switches or diodes meet at A, from where the kit feeds a lamp. */
  const fed = (
    branch: string,
    kind: string,
    more: readonly [string, string] = ['resistance: 1 mohm', 'resistance: 1 mohm'],
  ): StudKit => ({
    nets: ['F', 'G', 'A', 'B'],
    stock: [
      ['fuse', 'F1', 'BAT', 'F', 'rating: 10 A'],
      ['fuse', 'F2', 'BAT', 'G', 'rating: 10 A'],
      [kind, 'S1', 'F', 'A', more[0]],
      [kind, 'S2', 'G', 'A', more[1]],
    ],
    links: [['branch', 'A', 'B', `length: 1 m, ${branch}`]],
    kit: [['load', 'lamp', 'B', 'GND', 'power: 12 W, volts: 12 V']],
    powered: kind === 'switch' ? ['lamp: [S1, S2]'] : ['lamp: always'],
  });

  it('at one end is held against all of them together', () => {
    expect(found(fed('capacity: 20 A', 'switch'))).toEqual([]);
    expect(found(fed('capacity: 19 A', 'switch'))).toEqual(['conductor-unprotected F1 F2 branch: 20 for 19']);
    const [first] = verdictOf(studKit({ ...base, ...fed('capacity: 19 A', 'switch') })).findings;
    expect(first?.message).toContain('fuses F1 and F2 together 20 A, limit 19 A');
  });

  it('behind diodes, too, and the lead of each diode against its own fuse alone', () => {
    const diodes = fed('capacity: 19 A', 'diode', ['drop: 0.4 V', 'drop: 0.4 V']);
    expect(found(diodes)).toEqual(['conductor-unprotected F1 F2 branch: 20 for 19']);
    const leads = {
      ...fed('capacity: 20 A', 'diode', ['drop: 0.4 V', 'drop: 0.4 V']),
      ofWires: 'length: 1 m, capacity: 20 A',
    };
    expect(found(leads)).toEqual([]);
    expect(found({ ...leads, ofWires: 'length: 1 m, capacity: 10 A' }).join()).not.toMatch(/S[12] a/);
  });

  it('by a relay that changes over is never fed by both at once', () => {
    const over = fed('capacity: 19 A', 'switch', ['worked by: R', 'worked by: R, rest: closed']);
    const kit: StudKit = {
      ...over,
      nets: [...over.nets, 'C'],
      stock: [
        ...over.stock,
        ['switch', 'S', 'BAT', 'C'],
        ['coil', 'R', 'C', 'GND', 'power: 2 W, volts: 12 V'],
      ],
      powered: ['lamp: always'],
    };
    expect(found(kit)).toEqual([]);
    // Beyond six relays that change over it is not told, which is no proof and no fault.
    const relays = (count: number): StudKit => ({
      ...kit,
      nets: [...kit.nets, ...Array.from({ length: count }, (_, index) => [`P${index}`, `Q${index}`]).flat()],
      stock: [
        ...kit.stock,
        ...Array.from({ length: count }, (_, index) => [
          ['coil', `R${index}`, 'C', 'GND', 'power: 2 W, volts: 12 V'] as const,
          ['switch', `make ${index}`, 'A', `P${index}`, `worked by: R${index}`] as const,
          ['switch', `rest ${index}`, 'A', `Q${index}`, `worked by: R${index}, rest: closed`] as const,
        ]).flat(),
      ],
    });
    const branch = (count: number): readonly string[] =>
      found(relays(count)).filter((one) => one.includes('branch'));
    expect(branch(5)).toEqual([]);
    expect(branch(6).join()).toMatch(
      /^electrical-unknown .*whether F1 and F2 feed branch at once: too many relays change over there/,
    );
    const both = kit.stock.map((one) =>
      one[1] === 'S2' ? ([...one.slice(0, 4), 'worked by: R'] as never) : one,
    );
    expect(found({ ...kit, stock: both, powered: ['lamp: S'] })).toEqual([
      'conductor-unprotected F1 F2 branch: 20 for 19',
    ]);
  });

  it('is not held against fuses that it feeds itself, however the kit joins what is behind them', () => {
    const bridged = (main: string, capacity: string): readonly string[] =>
      found({
        nets: ['M', 'N', 'A', 'B'],
        stock: [
          ['fuse', 'F1', 'BAT', 'M', `rating: ${main}`],
          ['fuse', 'F2', 'N', 'A', 'rating: 10 A'],
          ['fuse', 'F3', 'N', 'B', 'rating: 10 A'],
          ['load', 'old', 'A', 'GND', 'power: 12 W, volts: 12 V'],
        ],
        wires: [['main', 'M', 'N', 'length: 1 m, capacity: 15 A']],
        kit: [['load', 'lamp', 'B', 'GND', 'power: 12 W, volts: 12 V']],
        links: [['bridge', 'A', 'B', `length: 1 m, capacity: ${capacity}`]],
        powered: ['lamp: always'],
      });
    expect(bridged('15 A', '15 A')).toEqual([]);
    // Either way to the bridge goes through a fuse of 10 A; the main wire bears what F1 lets through, or not.
    expect(bridged('15 A', '10 A')).toEqual([]);
    expect(bridged('15 A', '9 A')).toEqual([
      'conductor-unprotected F2 bridge: 10 for 9',
      'conductor-unprotected F3 bridge: 10 for 9',
    ]);
    expect(bridged('16 A', '10 A')).toEqual(['conductor-unprotected F1 main: 16 for 15']);
  });

  it('is protected by the main fuse where that lets less through than those behind it', () => {
    const behind = (main: string): readonly string[] => {
      const both = fed('capacity: 19 A', 'switch');
      const stock = both.stock.map(
        ([kind, name, from, ...rest]): StudDevice =>
          kind === 'fuse' ? [kind, name, 'M', ...rest] : [kind, name, from, ...rest],
      );
      const ofWires = 'length: 1 m, capacity: 50 A';
      return found({
        ...both,
        ofWires,
        nets: [...both.nets, 'M'],
        stock: [...stock, ['fuse', 'F0', 'BAT', 'M', `rating: ${main}`]],
      });
    };
    expect(behind('19 A')).toEqual([]);
    expect(behind('25 A')).toEqual(['conductor-unprotected F1 F2 branch: 20 for 19']);
  });

  it('with one at either end is held against each alone: neither reaches past the fault', () => {
    const ends: StudKit = {
      nets: ['F', 'G'],
      stock: [
        ['fuse', 'F1', 'BAT', 'F', 'rating: 10 A'],
        ['fuse', 'F2', 'BAT', 'G', 'rating: 10 A'],
      ],
      links: [['tie', 'F', 'G', 'length: 1 m, capacity: 10 A']],
      kit: [['load', 'lamp', 'F', 'GND', 'power: 12 W, volts: 12 V']],
      powered: ['lamp: always'],
    };
    expect(found(ends)).toEqual([]);
    // Nor does one count that hangs on the end as a load would, or whose current would have to run back through a diode.
    const more: StudKit = {
      ...ends,
      nets: [...ends.nets, 'X', 'H'],
      stock: [
        ...ends.stock,
        ['fuse', 'F3', 'F', 'X', 'rating: 10 A'],
        ['fuse', 'F4', 'BAT', 'H', 'rating: 10 A'],
        ['diode', 'D', 'F', 'H', 'drop: 0.4 V'],
      ],
    };
    expect(found(more)).toEqual([]);
    const turned = more.stock.map((one) =>
      one[1] === 'D' ? (['diode', 'D', 'H', 'F', 'drop: 0.4 V'] as const) : one,
    );
    expect(found({ ...more, stock: turned })).toContain('conductor-unprotected F1 F4 tie: 20 for 10');
  });
});

describe('a stock conductor behind another fuse than before', () => {
  const lead = (more: string): readonly string[] => [electrical('').replace('99 m', more)];

  it('is held to the length of a lead where the kit bridges its fuse', () => {
    const bridged = (length: string): readonly string[] => {
      const text = studKit({
        sections: lead('0.5 m'),
        ofWires: 'length: 0.1 m, capacity: 20 A',
        nets: ['A', 'B'],
        stock: [
          ['fuse', 'F', 'BAT', 'A', 'rating: 5 A'],
          ['load', 'L', 'B', 'GND', 'power: 12 W, volts: 12 V'],
        ],
        wires: [['run', 'A', 'B', `length: ${length}, capacity: 8 A`]],
        links: [['jump', 'BAT', 'A', 'length: 0.1 m, capacity: 20 A']],
      });
      return verdictOf(changed(text, 'add: [A, K F:2]', 'add: [A, K F:2, B, K L:1]'))
        .findings.filter(({ kind }) => kind === 'conductor-unprotected')
        .map(({ points, witness }) => `${points.join(' ')}: ${witness.is === 'limit' ? witness.value : ''}`);
    };
    expect(bridged('0.2 m')).toEqual([]);
    expect(bridged('1 m')).toEqual(['L a: 1200', 'run: 1100']);
  });

  it('is asked for its capacity where the work moved it, though no load hangs on it', () => {
    const moved = (capacity: string): readonly string[] =>
      found(
        {
          nets: ['A', 'B', 'C'],
          stock: [
            ['fuse', 'F1', 'BAT', 'A', 'rating: 5 A'],
            ['fuse', 'F2', 'BAT', 'B', 'rating: 20 A'],
          ],
          wires: [['run', 'A', 'C', `length: 1 m${capacity}`]],
          kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
          powered: ['lamp: always'],
        },
        '  - { do: detach, end: run@A }\n  - { do: attach, end: run@A, stud: B }\n',
      ).filter((one) => one.includes('run'));
    expect(moved('')).toEqual(['electrical-unknown the capacity of run']);
    expect(moved(', capacity: 8 A')).toEqual(['conductor-unprotected F2 run: 20 for 8']);
    expect(moved(', capacity: 20 A')).toEqual([]);
  });
});

describe('a conductor ahead of its first fuse', () => {
  it('is not judged over a wire whose length is not said, unless it is too long without it', () => {
    const behind = (main: string, limit: string): readonly unknown[] => {
      const text = studKit({
        sections: [electrical('').replace('99 m', limit)],
        ofWires: 'length: 0.1 m, capacity: 20 A',
        nets: ['M', 'A'],
        stock: [['load', 'old', 'M', 'GND', 'power: 12 W, volts: 12 V']],
        wires: [['main', 'BAT', 'M', `capacity: 20 A${main}`]],
        kit: [['fuse', 'F', 'M', 'A', 'rating: 5 A']],
      });
      const { findings, judgement } = verdictOf(text);
      const row = judgement.electrical?.limits.protection.find(({ conductor }) => conductor === 'F a');
      return [findings.some(({ kind }) => kind === 'conductor-unprotected'), row?.missing];
    };
    expect(behind(', length: 0.4 m', '0.5 m')).toEqual([false, []]);
    expect(behind(', length: 0.5 m', '0.5 m')).toEqual([true, []]);
    expect(behind('', '0.5 m')).toEqual([false, ['the length of main']]);
    expect(behind('', '0.05 m')).toEqual([true, []]);
  });

  it.each([
    ['999 mm', ['conductor-unprotected branch: 1000 for 999']],
    ['1 m', []],
  ])('of 1 m where %s are allowed', (allowed, expected) => {
    const kit: StudKit = {
      ...base,
      sections: [electrical('').replace('99 m', allowed)],
      nets: ['A'],
      stock: [['load', 'old', 'BAT', 'GND', 'power: 12 W, volts: 12 V']],
      links: [['branch', 'BAT', 'A']],
    };
    expect(found(kit)).toEqual(expected);
  });
});

describe('a conductor that an output feeds whose inside is not told', () => {
  /** Stud N hangs on the output. */
  const fed = (branch: StudKit): readonly string[] => {
    const text = studKit({ ...base, ...branch }).replace('N: { source: never }', 'N: { source: driven }');
    return verdictOf(text)
      .findings.filter(({ obligation }) => obligation === 9)
      .flatMap(({ kind, points }) => [kind, ...points]);
  };
  const old: StudDevice = ['load', 'old', 'N', 'GND', 'power: 12 W, volts: 12 V'];
  const untold = (...wires: readonly string[]): readonly string[] => [
    'electrical-unknown',
    ...wires.map((wire) => `what protects ${wire}: an output feeds it whose fuse is not told`),
  ];

  it('is asked for where the kit brings it, and not where nobody touched it', () => {
    const lamp: StudDevice = ['load', 'lamp', 'N', 'GND', 'power: 12 W, volts: 12 V'];
    expect(fed({ nets: ['N'], stock: [old], kit: [lamp], powered: ['lamp: N'] })).toEqual(untold('lamp a'));
    const other: StudDevice = ['load', 'lamp', 'F', 'GND', 'power: 12 W, volts: 12 V'];
    const fuse: StudDevice = ['fuse', 'F1', 'BAT', 'F', 'rating: 10 A'];
    expect(fed({ nets: ['N', 'F'], stock: [old, fuse], kit: [other], powered: ['lamp: always'] })).toEqual(
      [],
    );
  });

  it('hides no fuse beside it that is too large', () => {
    const beside = (rating: string): readonly string[] =>
      fed({
        ofWires: 'length: 1 m, capacity: 50 A',
        nets: ['N', 'F', 'A'],
        stock: [
          old,
          ['fuse', 'F1', 'BAT', 'F', `rating: ${rating}`],
          ['diode', 'D', 'F', 'N', 'drop: 0.5 V'],
        ],
        wires: [['thin', 'N', 'A', 'length: 1 m, capacity: 20 A']],
        kit: [['load', 'lamp', 'A', 'GND', 'power: 12 W, volts: 12 V']],
        powered: ['lamp: always'],
      }).filter((one) => one !== 'electrical-unknown' && !one.startsWith('what protects'));
    expect(beside('20 A')).toEqual([]);
    expect(beside('21 A')).toEqual(['conductor-unprotected', 'F1', 'thin']);
  });

  it('is held against a fuse of its own behind the output, once the kit tells of one', () => {
    const lamp: StudDevice = ['load', 'lamp', 'F', 'GND', 'power: 12 W, volts: 12 V'];
    const fuse = (rating: string): StudDevice => ['fuse', 'F1', 'N', 'F', `rating: ${rating}`];
    const behind = (rating: string): readonly string[] =>
      fed({ nets: ['N', 'F'], stock: [old, fuse(rating)], kit: [lamp], powered: ['lamp: N'] });
    expect(behind('20 A')).toEqual([]);
    expect(behind('21 A')).toContain('conductor-unprotected');
  });
});

describe('what a fuse carries', () => {
  const load = (watts: number): StudKit => ({
    ...link('capacity: 10 A'),
    sections: [electrical(', fuse load: 80 %')],
    kit: [['load', 'lamp', 'A', 'GND', `power: ${watts} W, volts: 12 V`]],
  });

  it('is all of its loads together, old and new, up to the share that is allowed', () => {
    expect(found(load(84))).toEqual([]);
    expect(found(load(85))).toEqual(['fuse-overloaded F1: 8.083333 for 8']);
  });
});

describe('what a conductor carries', () => {
  /** An old lamp and a new one of 8 A each, fused apart, that share one return wire. */
  const shared = (capacity: string): StudKit => ({
    ...base,
    nets: ['F', 'G', 'X'],
    stock: [
      ['fuse', 'F1', 'BAT', 'F', 'rating: 10 A'],
      ['fuse', 'F2', 'BAT', 'G', 'rating: 10 A'],
      ['load', 'old', 'F', 'X', 'power: 96 W, volts: 12 V'],
    ],
    wires: [['common', 'X', 'GND', `length: 1 m${capacity}`]],
    kit: [['load', 'new', 'G', 'X', 'power: 96 W, volts: 12 V']],
    powered: ['new: always'],
  });

  it('is held against what it bears on the way back too, where no fuse is ahead of it', () => {
    expect(found(shared(', capacity: 16 A'))).toEqual([]);
    expect(found(shared(', capacity: 15.9 A'))).toEqual(['conductor-overloaded common: 16 for 15.9']);
    expect(found(shared(''))).toEqual(['electrical-unknown the capacity of common']);
  });

  it('is held against it ahead of the first fuse too', () => {
    const feed = (capacity: string): StudKit => ({
      ...base,
      nets: ['F'],
      stock: [['load', 'old', 'BAT', 'GND', 'power: 12 W, volts: 12 V']],
      links: [['thin', 'BAT', 'F', `length: 100 mm, capacity: ${capacity}`]],
      kit: [['load', 'heater', 'F', 'GND', 'power: 240 W, volts: 12 V']],
      powered: ['heater: always'],
    });
    expect(found(feed('20 A'))).toEqual([]);
    expect(found(feed('2 A'))).toEqual(['conductor-overloaded thin: 20 for 2']);
  });
});

describe('what an output gives', () => {
  const drive = (watts: number): StudKit => ({
    ...base,
    nets: ['A'],
    stock: [['drive', 'D', 'BAT', 'A', 'least: 0.5 A, most: 2 A']],
    kit: [['load', 'lamp', 'A', 'GND', `power: ${watts} W, volts: 12 V`]],
    powered: ['lamp: D'],
  });

  it('is asked of each output with every other one off, and the state is told', () => {
    const kit: StudKit = {
      ...drive(12),
      stock: [
        ['drive', 'D', 'BAT', 'A', 'least: 0.5 A, most: 0.9 A'],
        ['drive', 'E', 'BAT', 'A'],
      ],
      powered: ['lamp: [D, E]'],
    };
    const [one] = verdictOf(studKit(kit)).findings;
    expect(one?.message).toBe(
      'D carries too much: current with E off 1 A, limit 0.9 A (the output of the module as the kit file says)',
    );
  });

  it('is asked behind a diode too: what the diode takes, the lamp does not', () => {
    // By hand: a lamp of 6 W at 12 V takes 0.5 A, and two others beside it nothing of this output.
    const kit = (watts: number, least: string): StudKit => ({
      ...base,
      nets: ['A', 'B', 'C'],
      stock: [
        ['drive', 'D', 'BAT', 'A', `least: ${least}`],
        ['drive', 'E', 'BAT', 'B', `least: ${least}`],
      ],
      kit: [
        ['diode', 'V1', 'A', 'C', 'drop: 0.7 V'],
        ['diode', 'V2', 'B', 'C', 'drop: 0.7 V'],
        ['load', 'lamp', 'C', 'GND', `power: ${watts} W, volts: 12 V`],
      ],
      powered: ['lamp: [D, E]'],
    });
    expect(found(kit(6, '0.5 A'))).toEqual([]);
    expect(found(kit(5.4, '0.5 A'))).toEqual([
      'drive-underloaded D: 0.45 for 0.5',
      'drive-underloaded E: 0.45 for 0.5',
    ]);
    const [row] = verdictOf(studKit(kit(6, '0.1 A'))).judgement.electrical?.limits.drops ?? [];
    // Leads of the drive, the diode and the lamp, and the drop of the diode.
    expect(row?.dropVolt).toBeCloseTo(0.7 + 0.5 * (6 / 58), 2);
  });

  it.each([
    [6, []],
    [24, []],
    [5.4, ['drive-underloaded D: 0.45 for 0.5']],
    [25.2, ['drive-overloaded D: 2.1 for 2']],
  ])('to a load of %d W', (watts, expected) => {
    expect(found(drive(watts))).toEqual(expected);
  });
});
