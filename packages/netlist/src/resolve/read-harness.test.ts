import { describe, expect, it } from 'vitest';
import { complaintsOf, jobOf } from '../../../../tests/support/kit-text.ts';
import type { Job } from '../harness/job.ts';

/** A kit whose stock and bag hold these lines, and which asks for nothing that matters. */
const kit = (stock: string, bag = ''): string => `kit: a
revision: A
parts: { T: { is: terminal }, SP: { is: splice }, P: { is: plug } }
stock:
  connectors:
    Z1: { cavities: 1..2 }
${stock}
  wires: { w: { from: Z1:1, to: Z1:2 } }
bag:
${bag === '' ? '  zone: dry' : bag}
work: [{ do: fasten, wire: w }]
wanted: { retired: [{ wire: w }] }
`;
const place = (job: Job, address: string): Job['places'][number] | undefined =>
  job.places.find((one) => one.address === address);
const connector = (job: Job, name: string): Job['connectors'][number] | undefined =>
  job.connectors.find((one) => one.name === name);
const sources = (job: Job, name: string): readonly string[] =>
  job.places.filter((one) => one.address.startsWith(`${name}:`)).map((one) => one.source);

describe('labels of a connector', () => {
  it('that may be a range or one label are asked about', () => {
    expect(complaintsOf(kit('    K1: { cavities: 1-12 }'))).toEqual([
      '7:21 label-range: `1-12` may be a range of labels or the one label of `K1` (write `1..12` for the range, or `[1-12]` for the one label)',
    ]);
    expect(
      jobOf(kit('    K1: { cavities: [1-12] }\n    K2: { cavities: 1-1 1-2 }')).places.map(
        (one) => one.address,
      ),
    ).toEqual(['Z1:1', 'Z1:2', 'K1:1-12', 'K2:1-1', 'K2:1-2']);
  });
});

describe('the resistance of an element', () => {
  it('cannot be nothing for what takes current', () => {
    const device = (element: string): string =>
      kit(
        `    K1: { cavities: 1..2, into: D }\n    D: { device: yes, cavities: 1..2, elements: [${element}] }`,
      );
    expect(complaintsOf(device('{ is: load, name: l, from: 1, to: 2, resistance: 0 ohm }'))).toEqual([
      '8:99 quantity: a load cannot have a resistance of 0 ohm (what has none is a wire, or leave it away where it is not known)',
    ]);
    expect(complaintsOf(device('{ is: switch, name: s, from: 1, to: 2, resistance: 0 ohm }'))).toEqual([]);
  });
});

describe('places', () => {
  it('are the cavities in the order of their labels, then studs and boundaries, numbered as their nodes', () => {
    const job = jobOf(
      kit(
        '    K1: { cavities: [A, B], zone: wet }\n  zone: dry\n  studs: { G1: { chassis: yes, holds: 3, source: never, zone: wet }, B: { source: always } }\n  boundaries: { front: { source: driven, distinct: yes }, rear: {} }',
      ),
    );
    expect(
      job.places.map((one) => `${one.address} ${one.kind} ${one.source} ${one.zone} ${one.origin}`),
    ).toEqual([
      'Z1:1 cavity unknown dry stock',
      'Z1:2 cavity unknown dry stock',
      'K1:A cavity unknown wet stock',
      'K1:B cavity unknown wet stock',
      'G1 stud never wet stock',
      'B stud always dry stock',
      'front boundary driven dry stock',
      'rear boundary unknown dry stock',
    ]);
    expect(place(job, 'G1')).toMatchObject({
      chassis: true,
      holds: 3,
      connector: -1,
      label: 'G1',
      distinct: false,
      blocked: false,
      blanked: false,
    });
    expect(place(job, 'B')).toMatchObject({ chassis: false, holds: null });
    expect(place(job, 'front')).toMatchObject({ distinct: true, chassis: false });
    expect(place(job, 'rear')).toMatchObject({ distinct: false });
    expect(place(job, 'K1:B')).toMatchObject({ connector: 1, label: 'B' });
    expect(connector(job, 'K1')).toMatchObject({
      firstPlace: 2,
      placeCount: 2,
      origin: 'stock',
      counterpart: -1,
      plugged: false,
    });
  });

  it('are blocked or blanked as their connector says', () => {
    const job = jobOf(kit('    K1: { cavities: 1..4, blocked: 2, blanked: 3..4, sealed: yes }'));
    expect(job.places.slice(2).map((one) => [one.blocked, one.blanked])).toEqual([
      [false, false],
      [true, false],
      [false, true],
      [false, true],
    ]);
    expect(connector(job, 'K1')?.sealed).toBe(true);
    expect(complaintsOf(kit('    K1: { cavities: 1..2, blocked: 7 }'))).toEqual([
      '7:36 unknown-name: no cavity of K1 is called `7`',
    ]);
  });

  it('complain of names that cannot be written in an address, and of names used twice', () => {
    for (const name of ['"K:1"', '"K@1"', '"K=1"', '"K|1"', '" K"', '"K "', '""'])
      expect(complaintsOf(kit(`    ${name}: { cavities: 1..2 }`))[0]).toContain('7:5 name: ');
    expect(complaintsOf(kit(`    ${'K'.repeat(200)}: { cavities: 1..2 }`))).toEqual([]);
    expect(complaintsOf(kit(`    ${'K'.repeat(201)}: { cavities: 1..2 }`))[0]).toContain(
      'cannot be the name of a connector',
    );
    expect(complaintsOf(kit('  studs: { S: {} }\n  splices: { S: {} }'))).toEqual([
      '8:14 written-twice: `S` already names a point',
    ]);
    expect(complaintsOf(kit('  studs: { S: {} }\n  boundaries: { S: {} }'))).toEqual([
      '8:17 written-twice: `S` already names a point',
    ]);
    expect(complaintsOf(kit('', '  connectors: { Z1: { cavities: 1..2 } }'))[0]).toBe(
      '10:17 written-twice: connector `Z1` is there already',
    );
    expect(complaintsOf(kit('  studs: { G: { holds: many } }'))).toEqual([
      '7:24 count: `many` is no count (write a whole number from 1 on)',
    ]);
  });
});

describe('connectors', () => {
  it('say their locks, their zone and the terminals that they take', () => {
    const job = jobOf(
      kit(
        '    K1: { cavities: 1..1, lock: open, latch: closed, accepts: [T] }\n    K2: { cavities: 1..1, lock: none }',
      ),
    );
    expect(connector(job, 'K1')).toMatchObject({
      lock: 'open',
      latch: 'closed',
      zone: 'unknown',
      sealed: false,
      device: false,
      face: null,
    });
    expect([...(connector(job, 'K1')?.accepts ?? [])]).toEqual(['T']);
    expect(connector(job, 'K2')).toMatchObject({ lock: 'none', latch: 'none', accepts: null });
    expect(complaintsOf(kit('    K1: { cavities: 1..1, accepts: [T2, P] }'))).toEqual([
      '7:37 unknown-name: no part is called `T2` (did you mean `T`?)',
      '7:41 part-kind: `P` is a plug and no terminal',
    ]);
  });

  it('are plugged as found when both are stock, and loose when one comes from the bag', () => {
    const job = jobOf(
      kit(
        '    K1: { cavities: 1..1, into: D1 }\n    D1: { device: yes, cavities: 1..1 }\n    K2: { cavities: 1..1, into: K3, plugged: no }\n    K3: { cavities: 1..1 }',
        '  connectors: { K4: { cavities: 1..2, into: Z1 } }',
      ),
    );
    const pairs = job.connectors.map(
      (one) => `${one.name} ${job.connectors[one.counterpart]?.name ?? '-'} ${one.plugged}`,
    );
    expect(pairs).toEqual([
      'Z1 K4 false',
      'K1 D1 true',
      'D1 K1 true',
      'K2 K3 false',
      'K3 K2 false',
      'K4 Z1 false',
    ]);
  });

  it('complain of a half that is not there or has another half', () => {
    expect(complaintsOf(kit('    K1: { cavities: 1..1, into: K9 }'))).toEqual([
      '7:33 unknown-name: no connector is called `K9` (did you mean `K1`?)',
    ]);
    expect(
      complaintsOf(
        kit(
          '    K1: { cavities: 1..1, into: D }\n    K2: { cavities: 1..1, into: D }\n    D: { cavities: 1..1 }',
        ),
      ),
    ).toEqual(['8:33 plugged-twice: `K2` and `D` cannot be plugged: one has another half already']);
    expect(complaintsOf(kit('    K1: { cavities: 1..1, into: K1 }'))[0]).toContain('plugged-twice');
  });

  it('face each other by equal labels, or by the pairing', () => {
    const job = jobOf(
      kit(
        '    K1: { cavities: 1..2, into: D1 }\n    D1: { device: yes, cavities: 2..1 }'.replace(
          '2..1',
          '2 1',
        ),
      ),
    );
    const facing = (address: string): string | undefined => {
      const index = job.places.findIndex((one) => one.address === address);
      return job.places[job.facing[index] ?? -1]?.address;
    };
    expect(['K1:1', 'K1:2', 'D1:1', 'D1:2', 'Z1:1'].map(facing)).toEqual([
      'D1:1',
      'D1:2',
      'K1:1',
      'K1:2',
      undefined,
    ]);
    const paired = jobOf(
      kit(
        '    K1: { cavities: 1..3, into: D1, pairing: { 1: B, 2: A } }\n    D1: { device: yes, cavities: A..B }',
      ),
    );
    const first = connector(paired, 'K1')?.firstPlace ?? 0;
    expect([0, 1, 2].map((at) => paired.places[paired.facing[first + at] ?? -1]?.address)).toEqual([
      'D1:B',
      'D1:A',
      undefined,
    ]);
  });

  it('complain where the faces of both halves lay other cavities on each other than are paired', () => {
    const mated = (own: string, other: string, pairing = ''): string =>
      kit(
        `    K1: { cavities: 1..4, into: D1${pairing}, face: { ${own}, latch: top, rows: 2, columns: 2 } }\n    D1: { device: yes, cavities: 1..4, face: { ${other}, latch: top, rows: 2, columns: 2 } }`,
      );
    const [wires, mating] = ['seen from: wire side', 'seen from: mating side'];
    expect(complaintsOf(mated(wires ?? '', mating ?? ''))).toEqual([]);
    expect(complaintsOf(mated(wires ?? '', wires ?? ''))[0]).toContain(
      'pairing: by the faces of both halves `K1:1` lies on `D1:2`, and it is paired with `D1:1`',
    );
    expect(complaintsOf(mated(wires ?? '', wires ?? '', ', pairing: { 1: 2, 2: 1, 3: 4, 4: 3 }'))).toEqual(
      [],
    );
  });

  it('complain of a cavity without counterpart, and of one paired twice', () => {
    expect(
      complaintsOf(kit('    K1: { cavities: 1..2, into: D1 }\n    D1: { device: yes, cavities: 1..1 }')),
    ).toEqual([
      '7:33 pairing: `K1:2` has no counterpart: `D1` has no cavity `2` (where the two halves are labelled differently, give `pairing` as own label: other label)',
    ]);
    expect(
      complaintsOf(
        kit(
          '    K1: { cavities: 1..2, into: D1, pairing: { 1: A, 2: A } }\n    D1: { device: yes, cavities: A..B }',
        ),
      ),
    ).toEqual(['7:57 pairing: `D1:A` is paired twice']);
    expect(
      complaintsOf(
        kit(
          '    K1: { cavities: 1..1, into: D1, pairing: { 7: A, 1: C } }\n    D1: { device: yes, cavities: A..B }',
        ),
      ),
    ).toEqual([
      '7:48 unknown-name: no cavity of K1 is called `7`',
      '7:57 pairing: `K1:1` has no counterpart: `D1` has no cavity `C` (where the two halves are labelled differently, give `pairing` as own label: other label)',
    ]);
  });
});

describe('what is said of sources', () => {
  it('is taken by cavity, ranges included', () => {
    const job = jobOf(
      kit(
        '    D: { device: yes, cavities: 1..5, source: { 1..2: never, 3: always, 4: switched, 5: driven } }',
      ),
    );
    expect(sources(job, 'D')).toEqual(['never', 'never', 'always', 'switched', 'driven']);
  });

  it('is unknown where nothing is said of a device without elements, a lone connector, a stud or a boundary', () => {
    const job = jobOf(
      kit(
        '    K1: { cavities: 1..1, into: D }\n    D: { device: yes, cavities: 1..1 }\n    E: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }\n  studs: { G: {} }',
      ),
    );
    expect([sources(job, 'K1'), sources(job, 'D'), sources(job, 'E'), sources(job, 'Z1')]).toEqual([
      ['never'],
      ['unknown'],
      ['never', 'never'],
      ['unknown', 'unknown'],
    ]);
    expect(place(job, 'G')?.source).toBe('unknown');
  });

  it('is never for both halves of two harness connectors, unless it is said', () => {
    const job = jobOf(
      kit('    K1: { cavities: 1..2, into: K2 }\n    K2: { cavities: 1..2, source: { 2: always } }'),
    );
    expect([sources(job, 'K1'), sources(job, 'K2')]).toEqual([
      ['never', 'never'],
      ['never', 'always'],
    ]);
  });

  it('is complained of where a cavity is not there, or said twice', () => {
    expect(complaintsOf(kit('    D: { device: yes, cavities: 1..2, source: { 7: never } }'))).toEqual([
      '7:49 unknown-name: no cavity of D is called `7`',
    ]);
    expect(
      complaintsOf(kit('    D: { device: yes, cavities: 1..2, source: { 1..2: never, 2: always } }')),
    ).toEqual(['7:62 written-twice: the source of `2` is said twice']);
  });
});

describe('splices', () => {
  it('are sealed as found unless it is said otherwise', () => {
    const job = jobOf(
      kit('  zone: wet\n  splices: { A: {}, B: { sealed: yes, with: SP }, C: { sealed: no, zone: dry } }'),
    );
    expect(
      job.joints.map(({ name, kind, part, origin, zone, before }) => [
        name,
        kind,
        part,
        origin,
        zone,
        before,
      ]),
    ).toEqual([
      ['A', 'splice', null, 'stock', 'wet', 'sealed'],
      ['B', 'splice', 'SP', 'stock', 'wet', 'sealed'],
      ['C', 'splice', null, 'stock', 'dry', 'crimped'],
    ]);
    expect(complaintsOf(kit('  splices: { A: { with: P } }'))).toHaveLength(1);
  });
});

describe('elements', () => {
  it('join two pins of a device, named as given or after the device', () => {
    const job = jobOf(
      kit(
        '    D: { device: yes, cavities: 1..3, elements: [{ is: diode, from: 1, to: 3, drop: 0.7 V }, { is: fuse, from: 2, to: 3, name: F1, fitted: no, rating: 10 A }, { is: load, from: 1, to: 2, resistance: 4 ohm, cold: 0.4 ohm, power: 36 W, volts: 12 V }] }',
      ),
    );
    expect(job.elements).toEqual([
      {
        kind: 'diode',
        name: 'D diode 1',
        from: 2,
        to: 4,
        connector: 1,
        fitted: true,
        ohm: null,
        coldOhm: null,
        watts: null,
        volts: null,
        dropVolts: 0.7,
        ratingAmps: null,
        leastAmps: null,
        mostAmps: null,
        critical: false,
        unlitVolts: null,
        workedBy: -1,
        restClosed: false,
      },
      {
        kind: 'fuse',
        name: 'F1',
        from: 3,
        to: 4,
        connector: 1,
        fitted: false,
        ohm: null,
        coldOhm: null,
        watts: null,
        volts: null,
        dropVolts: null,
        ratingAmps: 10,
        leastAmps: null,
        mostAmps: null,
        critical: false,
        unlitVolts: null,
        workedBy: -1,
        restClosed: false,
      },
      {
        kind: 'load',
        name: 'D load 3',
        from: 2,
        to: 3,
        connector: 1,
        fitted: true,
        ohm: 4,
        coldOhm: 0.4,
        watts: 36,
        volts: 12,
        dropVolts: null,
        ratingAmps: null,
        leastAmps: null,
        mostAmps: null,
        critical: false,
        unlitVolts: null,
        workedBy: -1,
        restClosed: false,
      },
    ]);
    const kinds = jobOf(
      kit(
        '    D: { device: yes, cavities: 1..2, elements: [{ is: switch, from: 1, to: 2 }, { is: bridge, from: 1, to: 2 }] }',
      ),
    ).elements.map((one) => one.kind);
    expect(kinds).toEqual(['switch', 'bridge']);
  });

  it('are complained of in what is no device, at pins that are not there, under a name used twice', () => {
    expect(complaintsOf(kit('    K: { cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }'))).toEqual([
      '7:8 elements: `K` is no device, so nothing joins its cavities inside (add `device: yes`, or name the device that it is plugged into)',
    ]);
    expect(
      complaintsOf(kit('    D: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 3 }] }')),
    ).toEqual(['7:75 unknown-name: no pin of D is called `3`']);
    expect(
      complaintsOf(
        kit(
          '    D: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2, name: L }, { is: fuse, from: 1, to: 2, name: L }] }',
        ),
      ),
    ).toEqual(['7:89 written-twice: `L` names two elements']);
    expect(
      complaintsOf(
        kit(
          '    D: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2, power: strong }] }',
        ),
      ).map((one) => one.split(':')[1]),
    ).toEqual(['85 quantity']);
  });
});

describe('supplies', () => {
  it('feed the places that they name', () => {
    const job = jobOf(
      kit('  studs: { B: {}, C: {} }\n  supplies: { one: { at: B, volts: 12 V }, two: { at: [C, Z1:2] } }'),
    );
    expect(job.supplies).toEqual([
      { name: 'one', places: [2], returnPlace: -1, volts: 12, ohm: null },
      { name: 'two', places: [3, 1], returnPlace: -1, volts: null, ohm: null },
    ]);
    expect(complaintsOf(kit('  supplies: { one: { at: B } }'))).toEqual([
      '7:26 unknown-name: no place is called `B`',
    ]);
  });
});

describe('faces', () => {
  it('are checked against the cavities', () => {
    expect(
      jobOf(kit('    K: { cavities: 1..4, face: { seen from: wire side, latch: top, rows: 2, columns: 2 } }'))
        .connectors[1]?.face,
    ).not.toBeNull();
    const found = complaintsOf(
      kit('    K: { cavities: 1..5, face: { seen from: wire side, latch: top, rows: 2, columns: 2 } }'),
    );
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]).toMatch(/^7:32 face: /);
  });
});
