import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/** Two wires leave the model; a third is cut, and one of its ends hangs on a wire that leaves the model as well. */
const kit = `
kit: where the drawing ends
revision: A
parts:
  CAP: { is: cover, size: 0.3..1 mm2, zone: wet }
stock:
  zone: dry
  supplies: { battery: { at: front } }
  boundaries:
    front: { source: always, distinct: yes }
    rear: { source: never, distinct: yes }
  connectors:
    K1: { cavities: 1..4, into: M }
    M: { device: yes, cavities: 1..4, source: { 1..4: never } }
  wires:
    feed: { from: front, to: K1:1, size: 1 mm2 }
    tail: { from: rear, to: K1:2, size: 1 mm2 }
    spare: { from: K1:3, to: K1:4, size: 0.5 mm2 }
    stub: { from: K1:2, to: K1:4, size: 0.5 mm2, length: 2 m }
bag:
  parts: { CAP: 2 }
work:
  - { do: disconnect, supply: battery }
  - { do: cut, wire: stub, at: 200 mm from K1:2, leaves: [short, long] }
  - { do: cover, end: short@cut, with: CAP }
  - { do: cover, end: long@cut, with: CAP }
  - { do: reconnect, supply: battery }
wanted:
  retired: [{ wire: stub }]
  stubs:
    - { of: stub, at: K1:2, is: dead }
    - { of: stub, at: K1:4, is: dead }
  apart: [[K1:1, K1:2]]
`;

describe('wires that leave the model', () => {
  it('stay apart and dead where both boundaries are declared distinct and harmless', () => {
    expect(judged(kit)).toMatchObject({ verdict: 'proved', findings: [] });
  });

  it('are undecided where one of them is not declared distinct', () => {
    for (const boundary of ['source: always, distinct: yes', 'source: never, distinct: yes']) {
      const unsaid = changed(kit, boundary, boundary.replace(', distinct: yes', ''));
      expect(judged(unsaid)).toMatchObject({ verdict: 'undecided', findings: ['apart-unknown@-'] });
    }
  });

  it('may feed a stub that is declared dead, where nothing says what comes from beyond', () => {
    const unsaid = changed(kit, 'source: never, distinct: yes', 'distinct: yes');
    expect(judged(unsaid)).toEqual({
      verdict: 'undecided',
      findings: ['stub-unknown@2'],
      stubs: ['short@long not known', 'long@short dead'],
    });
  });

  it('feed it for certain where something is said to come from beyond', () => {
    const driven = changed(kit, 'source: never, distinct: yes', 'source: switched, distinct: yes');
    expect(judged(driven)).toMatchObject({ verdict: 'refuted', findings: ['stub-not-dead@2'] });
  });

  it('are refuted where the model itself joins what must stay apart', () => {
    const joined = changed(kit, 'apart: [[K1:1, K1:2]]', 'apart: [[K1:3, M:4]]');
    expect(judged(joined)).toMatchObject({ verdict: 'refuted', findings: ['apart-joined@-'] });
  });
});
