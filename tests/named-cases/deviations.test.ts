import { describe, expect, it } from 'vitest';
import { changed, judged, verdictOf } from '../support/verdict-of.ts';

/** A sealed connector whose free cavity was found open, and one bare end: one rule may be excused, the other never. */
const kit = `
kit: lamp at the sill
revision: A
parts:
  CAP: { is: cover, size: 0.3..1 mm2, zone: wet }
stock:
  zone: wet
  supplies: { battery: { at: BAT } }
  studs: { BAT: { source: always } }
  connectors:
    K1: { cavities: 1..2, into: L, sealed: yes }
    L: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }
  wires:
    lamp: { from: BAT, to: K1:1, size: 0.5 mm2, length: 1 m }
bag:
  parts: { CAP: 1 }
work:
  - { do: disconnect, supply: battery }
  - { do: cut, wire: lamp, at: 200 mm from BAT, leaves: [near, far] }
  - { do: cover, end: near@cut, with: CAP }
  - { do: reconnect, supply: battery }
wanted:
  retired: [{ wire: lamp }]
  stubs:
    - { of: lamp, at: BAT, is: live }
    - { of: lamp, at: K1:1, is: dead }
  deviations:
    - { allows: open-cavity, at: K1:2, by: chief of service, why: found so }
`;
const capped = changed(
  changed(kit, 'CAP: 1', 'CAP: 2'),
  '  - { do: reconnect',
  '  - { do: cover, end: far@cut, with: CAP }\n  - { do: reconnect',
);
const allowing = (text: string, rule: string): string => changed(text, 'allows: open-cavity, at: K1:2', rule);

describe('a deviation', () => {
  it('excuses a finding of obligation 6, and is listed in what is proved', () => {
    const verdict = verdictOf(capped);
    expect(verdict.verdict).toBe('proved');
    expect(verdict.deviations).toEqual([
      {
        allows: 'open-cavity',
        at: 'K1:2',
        by: 'chief of service',
        why: 'found so',
        excuses: ['cavity K1:2 of a sealed connector is left open'],
      },
    ]);
  });

  it('excuses a finding of obligation 7', () => {
    const left = allowing(
      capped.replace('  - { do: reconnect, supply: battery }\n', ''),
      'allows: supply-left-off, at: battery',
    );
    expect(judged(left).findings).toEqual(['open-cavity@-']);
  });

  it('never excuses a finding of obligation 5: it is then itself without a match', () => {
    const bare = allowing(kit, 'allows: bare-end');
    expect(judged(bare)).toMatchObject({
      verdict: 'refuted',
      findings: ['bare-end@2', 'open-cavity@-', 'deviation-unmatched@-'],
    });
  });

  it('never excuses a wrong net', () => {
    const wrong = allowing(
      capped.replace('retired: [{ wire: lamp }]', 'circuits: { lamp: [BAT, K1:1] }'),
      'allows: circuit-open',
    );
    expect(judged(wrong).findings).toEqual(['circuit-open@2', 'open-cavity@-', 'deviation-unmatched@-']);
  });

  it('is a finding where it matches nothing, or another place', () => {
    expect(judged(allowing(capped, 'allows: open-cavity, at: K1:1')).findings).toEqual([
      'open-cavity@-',
      'deviation-unmatched@-',
    ]);
    expect(judged(allowing(capped, 'allows: seal-missing')).findings).toEqual([
      'open-cavity@-',
      'deviation-unmatched@-',
    ]);
  });

  it('without a place excuses the only finding of its kind, and never one of several', () => {
    const one = verdictOf(allowing(capped, 'allows: open-cavity'));
    expect([one.verdict, one.deviations[0]?.excuses.length]).toEqual(['proved', 1]);
    const two = changed(
      allowing(capped, 'allows: open-cavity'),
      'cavities: 1..2, into: L, sealed',
      'cavities: 1..3, into: L, sealed',
    ).replace('L: { device: yes, cavities: 1..2', 'L: { device: yes, cavities: 1..3');
    expect(judged(two)).toMatchObject({
      verdict: 'refuted',
      findings: ['open-cavity@-', 'open-cavity@-', 'deviation-unmatched@-'],
    });
  });

  it('never excuses another deviation that matches nothing', () => {
    const chained = changed(
      allowing(capped, 'allows: seal-missing, at: K1:2'),
      'why: found so }\n',
      'why: found so }\n    - { allows: open-cavity, by: me, why: so }\n    - { allows: deviation-unmatched, by: me, why: so }\n',
    );
    expect(judged(chained)).toMatchObject({
      verdict: 'refuted',
      findings: ['deviation-unmatched@-', 'deviation-unmatched@-'],
    });
  });
});
