import { describe, expect, it } from 'vitest';
import { complaintsOf } from '../support/kit-text.ts';
import { changed, judged } from '../support/verdict-of.ts';

/** A lamp is tapped from a wire which is then cut for good: what counts is on which side of the cut the tap lies. */
const kit = `
kit: lamp tapped ahead of a cut
revision: A
parts:
  TAP: { is: tap, run: 0.3..1 mm2, branch: 0.3..1 mm2, zone: wet }
  CAP: { is: cover, size: 0.3..1 mm2, zone: wet }
stock:
  zone: dry
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..2, into: M }
    M: { device: yes, cavities: 1..2, source: { 1: never, 2: driven } }
    K2: { cavities: 1..2, into: L }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    main: { from: BAT, to: K1:1, size: 2.5 mm2 }
    lamp: { from: K1:2, to: K2:1, size: 0.75 mm2, length: 1 m }
bag:
  zone: dry
  connectors:
    K3: { cavities: 1..2, into: N }
    N: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    new: { from: A, to: K3:1, size: 0.5 mm2 }
  parts: { TAP: 1, CAP: 2 }
work:
  - { do: disconnect, supply: battery }
  - { do: tap, run: lamp, at: 100 mm from K1:2, branch: new@A, with: TAP, as: T1 }
  - { do: cut, wire: lamp, at: 200 mm from K1:2, leaves: [near, far] }
  - { do: cover, end: near@cut, with: CAP }
  - { do: cover, end: far@cut, with: CAP }
  - { do: place, device: N }
  - { do: plug, connector: K3 }
  - { do: reconnect, supply: battery }
wanted:
  circuits: { new: [K1:2, K3:1] }
  retired: [{ wire: lamp }]
  stubs:
    - { of: lamp, at: K1:2, is: live }
    - { of: lamp, at: K2:1, is: dead }
`;
const tap = '  - { do: tap, run: lamp, at: 100 mm from K1:2, branch: new@A, with: TAP, as: T1 }\n';
const cut = '  - { do: cut, wire: lamp, at: 200 mm from K1:2, leaves: [near, far] }\n';

describe('a tap and a cut on one wire', () => {
  it('leave the tap with the fed side where the cut lies beyond it', () => {
    expect(judged(kit)).toEqual({
      verdict: 'proved',
      findings: [],
      stubs: ['near@far live', 'far@near dead'],
    });
  });

  it('are in order however each is measured, once the length of the wire is known', () => {
    const fromFarEnd = changed(kit, 'at: 200 mm from K1:2', 'at: 800 mm from K2:1').replace(
      'leaves: [near, far]',
      'leaves: [far, near]',
    );
    expect(judged(fromFarEnd)).toEqual(judged(kit));
  });

  it('are refuted where the tap lies beyond the cut', () => {
    const wrong = changed(kit, 'at: 100 mm from K1:2', 'at: 300 mm from K1:2');
    expect(judged(wrong)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@2'] });
  });

  it('are the same the other way round in time: the tap is on the piece that it names', () => {
    const near = changed(changed(kit, tap, ''), cut, cut + tap.replace('run: lamp', 'run: near'));
    expect(judged(near)).toEqual(judged(kit));
    const far = changed(
      changed(kit, tap, ''),
      cut,
      cut + tap.replace('run: lamp, at: 100 mm from K1:2', 'run: far, at: 100 mm from cut'),
    );
    expect(judged(far)).toMatchObject({ verdict: 'refuted', findings: ['wrong-connection@3'] });
  });

  it('are an input error where nobody can tell their order', () => {
    const unknown = changed(
      changed(kit, ', length: 1 m', ''),
      'at: 200 mm from K1:2',
      'at: 800 mm from K2:1',
    );
    expect(complaintsOf(unknown)[0]).toBe(
      '30:32 mark-order: whether `800 mm from K2:1` lies before or beyond `T1` is not known (measure both from the same end, or give the length of the wire)',
    );
  });

  it('are an input error where they fall on one spot', () => {
    expect(complaintsOf(changed(kit, 'at: 200 mm from K1:2', 'at: 100 mm from K1:2'))[0]).toBe(
      '30:32 mark-order: `100 mm from K1:2` falls on the tap that is there already',
    );
  });

  it('are an input error beyond the end of the wire', () => {
    expect(complaintsOf(changed(kit, 'at: 200 mm from K1:2', 'at: 1000 mm from K1:2'))[0]).toBe(
      '30:32 position: `1000 mm from K1:2` is not on `lamp` (the wire is 1000 mm long)',
    );
  });
});
