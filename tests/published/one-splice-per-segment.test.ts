import { describe, expect, it } from 'vitest';
import { changed, judged } from '../support/verdict-of.ts';

/*
 * FAA AC 43.13-1B paragraph 11-167c: not more than one splice in any wire segment between two connectors or other
 * disconnect points, except for a spare pigtail of a potted connector, to join several wires to one, to adapt the wire
 * size to a contact barrel, and for an approved repair. Excerpt:
 * https://comanchegear.com/excerpts-from-ac43-13-1b-chg-10/ .
 */
function kit({
  splices = '',
  wires,
  cuts,
  parts,
}: {
  splices?: string;
  wires: string;
  cuts: string;
  parts: string;
}): string {
  return `
kit: lead renewed
revision: A
rules: one splice per segment
parts:
  SP: { is: splice, size: 0.2..4 mm2, tube: built in, zone: wet }
  SP3: { is: splice, size: 0.2..4 mm2, ends: 3, tube: built in, zone: wet }
stock:
  zone: dry
  splices: { ${splices} }
  connectors:
    K1: { cavities: 1..3, source: { 1..3: never } }
    K2: { cavities: 1..3, source: { 1..3: never } }
    K3: { cavities: 1..3, source: { 1..3: never } }
  wires:
${wires}
bag:
  zone: dry
  wires:
    piece: { from: A, to: B, size: 1 mm2 }
  parts: ${parts}
work:
${cuts}
wanted:
`;
}
const lead = '    lead: { from: K1:1, to: K2:1, size: 1 mm2, length: 2 m }';
const wanted = '  circuits: { lead: [K1:1, K2:1] }\n';
const oneSplice = `  - { do: cut, wire: lead, at: 500 mm from K1:1, leaves: [near, far] }
  - { do: strip, end: near@cut }
  - { do: strip, end: far@cut }
  - { do: join, ends: [near@cut, far@cut], with: SP, as: J1 }
  - { do: seal, joint: J1 }`;
const withPiece = `  - { do: cut, wire: lead, at: 500 mm from K1:1, leaves: [near, far] }
  - { do: strip, end: near@cut }
  - { do: strip, end: far@cut }
  - { do: strip, end: piece@A }
  - { do: strip, end: piece@B }
  - { do: join, ends: [near@cut, piece@A], with: SP, as: J1 }
  - { do: seal, joint: J1 }
  - { do: join, ends: [piece@B, far@cut], with: SP, as: J2 }
  - { do: seal, joint: J2 }`;

describe('one splice in a segment (FAA AC 43.13-1B paragraph 11-167c)', () => {
  it('is kept by one splice', () => {
    const one = changed(
      kit({ wires: lead, cuts: oneSplice, parts: '{ SP: 1 }' }),
      '    piece: { from: A, to: B, size: 1 mm2 }\n',
      '',
    ).replace('  wires:\n  parts', '  parts');
    expect(judged(one + wanted)).toEqual({ verdict: 'proved', findings: [], stubs: [] });
  });

  it('is not kept by two, and the step of the second is named', () => {
    const two = kit({ wires: lead, cuts: withPiece, parts: '{ SP: 2 }' });
    expect(judged(two + wanted)).toMatchObject({ verdict: 'refuted', findings: ['second-splice@8'] });
  });

  it('is not asked for where the kit does not choose the rule', () => {
    const two = changed(
      kit({ wires: lead, cuts: withPiece, parts: '{ SP: 2 }' }),
      'rules: one splice per segment\n',
      '',
    );
    expect(judged(two + wanted).verdict).toBe('proved');
  });

  it('counts the splice that the factory made', () => {
    const factory = kit({
      splices: 'S1: {}',
      wires:
        '    lead: { from: K1:1, to: S1, size: 1 mm2, length: 2 m }\n    rest: { from: S1, to: K2:1, size: 1 mm2 }',
      cuts: oneSplice,
      parts: '{ SP: 1 }',
    })
      .replace('    piece: { from: A, to: B, size: 1 mm2 }\n', '')
      .replace('  wires:\n  parts', '  parts');
    expect(judged(factory + wanted)).toMatchObject({ verdict: 'refuted', findings: ['second-splice@4'] });
  });

  it('says nothing of two splices that the factory made, where the kit makes none', () => {
    const factory = kit({
      splices: 'S1: {}, S2: {}',
      wires: `    lead: { from: K1:1, to: S1, size: 1 mm2 }
    middle: { from: S1, to: S2, size: 1 mm2 }
    rest: { from: S2, to: K2:1, size: 1 mm2 }`,
      cuts: '  - { do: fasten, wire: middle }',
      parts: '{ SP: 0 }',
    })
      .replace('    piece: { from: A, to: B, size: 1 mm2 }\n', '')
      .replace('  wires:\n  parts', '  parts');
    expect(judged(factory + wanted)).toMatchObject({ verdict: 'proved', findings: [] });
  });

  it('counts each side of a connector by itself, which is a disconnect point', () => {
    const sides = kit({
      wires: `    lead: { from: K1:1, to: K2:1, size: 1 mm2, length: 2 m }
    other: { from: K2:1, to: K3:1, size: 1 mm2, length: 2 m }`,
      cuts: `${oneSplice}
${oneSplice.replaceAll('lead', 'other').replaceAll('near', 'this').replaceAll('far', 'that').replaceAll('K1:1', 'K2:1').replaceAll('J1', 'J2')}`,
      parts: '{ SP: 2 }',
    })
      .replace('    piece: { from: A, to: B, size: 1 mm2 }\n', '')
      .replace('  wires:\n  parts', '  parts');
    expect(judged(`${sides}  circuits: { lead: [K1:1, K2:1, K3:1] }\n`)).toMatchObject({
      verdict: 'proved',
      findings: [],
    });
  });

  it('excepts a splice that joins several wires to one', () => {
    const branch = kit({
      splices: 'S1: {}',
      wires: `    lead: { from: K1:1, to: S1, size: 1 mm2, length: 2 m }
    rest: { from: S1, to: K2:1, size: 1 mm2 }`,
      cuts: `  - { do: cut, wire: lead, at: 500 mm from K1:1, leaves: [near, far] }
  - { do: strip, end: near@cut }
  - { do: strip, end: far@cut }
  - { do: strip, end: piece@A }
  - { do: join, ends: [near@cut, far@cut, piece@A], with: SP3, as: J1 }
  - { do: seal, joint: J1 }`,
      parts: '{ SP3: 1 }',
    })
      .replace('piece: { from: A, to: B,', 'piece: { from: A, to: K4:1,')
      .replace(
        '  wires:\n    piece',
        '  connectors: { K4: { cavities: 1..1, source: { 1: never } } }\n  wires:\n    piece',
      );
    expect(judged(`${branch}  circuits: { lead: [K1:1, K2:1, K4:1] }\n`)).toMatchObject({
      verdict: 'proved',
      findings: [],
    });
  });

  it('excepts a splice that adapts the wire size to a contact', () => {
    const adapted = kit({ wires: lead, cuts: withPiece, parts: '{ SP: 2 }' })
      .replace('lead: { from: K1:1, to: K2:1, size: 1 mm2', 'lead: { from: K1:1, to: K2:1, size: 2 mm2')
      .replace('at: 500 mm from K1:1', 'at: 1900 mm from K1:1');
    expect(judged(adapted + wanted).findings).toEqual([]);
  });

  it('is knowingly not kept for an approved repair or a spare pigtail, which is said as a deviation', () => {
    const two = kit({ wires: lead, cuts: withPiece, parts: '{ SP: 2 }' });
    const repair =
      '  deviations: [{ allows: second-splice, at: J2, by: repair station, why: approved repair }]\n';
    expect(judged(two + wanted + repair)).toMatchObject({ verdict: 'proved', findings: [] });
  });
});
