import { describe, expect, it } from 'vitest';
import { type BusKit, busKit } from '../../../../tests/support/bus-kit.ts';
import { changed, verdictOf } from '../../../../tests/support/verdict-of.ts';

/** What is found of the bus: the quantity or state with what it is and what it may be. */
function found(kit: BusKit): readonly string[] {
  return foundIn(busKit(kit));
}

function foundIn(text: string): readonly string[] {
  return verdictOf(text).findings.flatMap(({ kind, witness, points }) => {
    if (kind === 'electrical-unknown') return points.filter((one) => /limit|bus|stub|end [ABC]/.test(one));
    if (kind !== 'bus-pair-unfit') return [];
    if (witness.is === 'limit') return [`${witness.quantity} ${witness.value} over ${witness.limit}`];
    return witness.is === 'state' ? [`${witness.what}: ${witness.found}`] : [];
  });
}

describe('judgeBusPairs', () => {
  it('finds nothing in a module on short branches between two terminators', () => {
    expect(found({})).toEqual([]);
  });

  // The limits of the 250 kbit/s machine bus (SAE J1939-11 catalogue text): branches of 1 m, a run of 40 m.
  it('holds the longest branch against the stub limit, to the millimetre', () => {
    expect(found({ stub: ['1 m', '1 m'] })).toEqual([]);
    expect(found({ stub: ['1001 mm', '1001 mm'] })).toEqual(['branch of the bus 1001 over 1000']);
  });

  it('holds the run against the length limit, to the millimetre', () => {
    expect(found({ run: ['40 m', '40 m'] })).toEqual([]);
    expect(found({ run: ['40001 mm', '40001 mm'] })).toEqual(['run of the bus 40001 over 40000']);
  });

  it('wants both wires alike, in length and in size', () => {
    expect(found({ stub: ['0.5 m', '0.6 m'] })).toHaveLength(1);
    expect(found({ size: '0.75 mm2' })).toHaveLength(1);
    expect(found({ run: ['5 m', '5.1 m'] })).toHaveLength(1);
  });

  it('wants two terminators, neither one nor three', () => {
    const open = busKit({ terminators: '[end A]' }).replace(
      'name: end B, from: 1, to: 2, resistance: 120 ohm',
      'name: end B, from: 1, to: 2, resistance: 30000 ohm',
    );
    expect(foundIn(open)).toEqual(['terminators across the pair: 1']);
    expect(found({ third: true })).toEqual(['terminators across the pair: 3']);
  });

  it('says which limit is missing', () => {
    expect(found({ limits: 'stub limit: 1 m' })).toEqual(['the length limit of machine bus']);
    expect(found({ limits: 'length limit: 40 m' })).toEqual(['the stub limit of machine bus']);
  });

  it('counts what lies across the pair and takes as much as a terminator, though nobody names it', () => {
    expect(found({ terminators: '[end A]' })).toEqual([]);
    expect(found({ third: true, terminators: '[end A, end B]' })).toEqual(['terminators across the pair: 3']);
    const unsaid = changed(
      busKit({ third: true, terminators: '[end A, end B]' }),
      'end C, from: 1, to: 2, resistance: 120 ohm',
      'end C, from: 1, to: 2',
    );
    expect(foundIn(unsaid)).toContain(
      'the resistance of end C, since more than the terminators lies across machine bus',
    );
  });

  it('asks for what is not said, and takes it for no difference', () => {
    const bus = busKit({});
    expect(foundIn(changed(bus, '\n      terminators: [end A, end B]', ''))).toEqual([
      'the terminators of machine bus',
    ]);
    const low = 'bus low: { from: KA:2, to: KB:2, size: 0.5 mm2, length: 5 m }';
    expect(foundIn(changed(bus, low, 'bus low: { from: KA:2, to: KB:2, size: 0.5 mm2 }'))).toEqual([
      'the length of bus low',
    ]);
    expect(foundIn(changed(bus, low, 'bus low: { from: KA:2, to: KB:2, length: 5 m }'))).toEqual([
      'the size of bus low',
    ]);
    expect(foundIn(changed(bus, low, low.replace('0.5 mm2', '0.50 mm2').replace('5 m', '5000 mm')))).toEqual(
      [],
    );
  });

  it('wants both wires tapped at one place, and not only in like pieces', () => {
    const apart = changed(busKit({}), 'at: 2 m from KA:2', 'at: 3 m from KA:2');
    expect(foundIn(apart)).toEqual(['both wires alike: KC MC 3500 mm from KA TA']);
  });

  it('measures branches off the run between the terminators, wherever the longest way is', () => {
    // 4 m from one end of 5 m: the longest way is the one into the branch of 3 m.
    const late = busKit({ stub: ['3 m', '3 m'] }).replaceAll('at: 2 m', 'at: 4 m');
    expect(foundIn(late)).toEqual(['branch of the bus 3000 over 1000']);
  });

  it('finds both terminators at one end, where the rest of the bus is a branch', () => {
    const both = busKit({})
      .replace('{ is: load, name: end B, from: 1, to: 2, resistance: 120 ohm }', '')
      .replace(
        '[{ is: load, name: end A, from: 1, to: 2, resistance: 120 ohm }]',
        '[{ is: load, name: end A, from: 1, to: 2, resistance: 120 ohm }, { is: load, name: end B, from: 1, to: 2, resistance: 120 ohm }]',
      );
    expect(foundIn(both)).toEqual(['branch of the bus 5000 over 1000']);
  });

  it('goes on behind a device that joins both of its plugs, and refuses a ring', () => {
    const through = (link: string): string =>
      changed(
        changed(
          busKit({}),
          '  wires:\n    bus high:',
          `    KM: { cavities: 1..4, into: M }
    M: { device: yes, cavities: 1..4, elements: [{ is: bridge, from: 1, to: 3 }, { is: bridge, from: 2, to: 4 }] }
    KN: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, name: end N, from: 1, to: 2, resistance: 120 ohm }] }
  wires:
    on high: { from: KM:3, to: KN:1, size: 0.5 mm2, length: 36 m }
    on low: { from: KM:4, to: KN:2, size: 0.5 mm2, length: 36 m }
${link}    bus high:`,
        ),
        'terminators: [end A, end B]',
        'terminators: [end A, end N]',
      )
        .replaceAll('to: KB:', 'to: KM:')
        .replace('{ is: load, name: end B, from: 1, to: 2, resistance: 120 ohm }', '');
    expect(foundIn(through(''))).toEqual(['run of the bus 41000 over 40000']);
    const ring = '    short cut: { from: KN:1, to: KM:1, size: 0.5 mm2, length: 1 m }\n';
    expect(foundIn(through(ring))[0]).toMatch(/^its wires: a ring that/);
  });

  it('takes no cut-off piece for a wire of the bus, at whichever end it was', () => {
    const steps = ['1', '2'].flatMap((cavity) => {
      const wire = cavity === '1' ? 'bus high' : 'bus low';
      return [
        `{ do: cut, wire: ${wire}, at: 1 m from KA:${cavity}, leaves: [${wire} tail, ${wire} rest] }`,
        `{ do: withdraw, cavity: KA:${cavity} }`,
        `{ do: remove off-cut, wire: ${wire} tail }`,
        `{ do: strip, end: ${wire} rest@cut }`,
        `{ do: fit terminal, ends: ${wire} rest@cut, with: PIN }`,
        `{ do: insert, end: ${wire} rest@cut, cavity: KA:${cavity} }`,
      ];
    });
    const text = busKit({ steps: ['{ do: unplug, connector: KA }', ...steps, '{ do: plug, connector: KA }'] })
      .replace('parts:\n', 'parts:\n  PIN: { is: terminal, size: 0.3..1 mm2 }\n')
      .replace('parts: { TAP: 2 }', 'parts: { TAP: 2, PIN: 2 }')
      .replace('run: bus high, at: 2 m from KA:1', 'run: bus high rest, at: 2 m from KB:1')
      .replace('run: bus low, at: 2 m from KA:2', 'run: bus low rest, at: 2 m from KB:2');
    expect(foundIn(text)).toEqual([]);
  });

  it('takes no piece for a wire of the bus that was cut off and stays in its old contact', () => {
    const steps = ['1', '2'].flatMap((cavity) => {
      const wire = cavity === '1' ? 'bus high' : 'bus low';
      return [
        `{ do: cut, wire: ${wire}, at: 1 m from KA:${cavity}, leaves: [${wire} tail, ${wire} rest] }`,
        `{ do: cover, end: ${wire} tail@cut, with: CAP }`,
        `{ do: tie back, end: ${wire} tail@cut, with: TIE }`,
        `{ do: strip, end: ${wire} rest@cut }`,
        `{ do: fit terminal, ends: ${wire} rest@cut, with: PIN }`,
        `{ do: insert, end: ${wire} rest@cut, cavity: KA:${Number(cavity) + 2} }`,
      ];
    });
    const text = busKit({ steps: ['{ do: unplug, connector: KA }', ...steps, '{ do: plug, connector: KA }'] })
      .replace(
        'parts:\n',
        'parts:\n  PIN: { is: terminal, size: 0.3..1 mm2 }\n  CAP: { is: cover, size: 0.3..1 mm2, zone: dry }\n  TIE: { is: tie }\n',
      )
      .replace('parts: { TAP: 2 }', 'parts: { TAP: 2, PIN: 2, CAP: 2, TIE: 2 }')
      .replaceAll('KA: { cavities: 1..2', 'KA: { cavities: 1..4')
      .replace('TA: { device: yes, cavities: 1..2', 'TA: { device: yes, cavities: 1..4')
      .replace('name: end A, from: 1, to: 2', 'name: end A, from: 3, to: 4')
      .replace('run: bus high, at: 2 m from KA:1', 'run: bus high rest, at: 2 m from KB:1')
      .replace('run: bus low, at: 2 m from KA:2', 'run: bus low rest, at: 2 m from KB:2');
    expect(foundIn(text)).toEqual([]);
  });
});
