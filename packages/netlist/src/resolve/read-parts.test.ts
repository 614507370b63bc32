import { describe, expect, it } from 'vitest';
import { complaintsOf, jobOf } from '../../../../tests/support/kit-text.ts';

const kit = (parts: string, bag = ''): string => `kit: a
revision: A
parts:
${parts}
stock: { connectors: { K1: { cavities: 1..2 } }, wires: { w: { from: K1:1, to: K1:2 } } }
bag: { parts: { ${bag} } }
work: [{ do: fasten, wire: w }]
wanted: { retired: [{ wire: w }] }
`;
const part = (row: string): unknown => jobOf(kit(`  P: { ${row} }`)).parts.get('P');

describe('the catalogue of parts', () => {
  it('reads what each kind fits', () => {
    expect(part('is: terminal, size: 0.5..1 mm2, wires: 2, ring: yes, strip: 5 mm')).toEqual({
      is: 'terminal',
      name: 'P',
      size: { min: 0.5, max: 1 },
      wires: 2,
      ring: true,
      stripMm: 5,
    });
    expect(part('is: seal, insulation: 1.2..2 mm')).toEqual({
      is: 'seal',
      name: 'P',
      insulation: { min: 1.2, max: 2 },
    });
    expect(part('is: splice, size: 1..2 mm2, ends: 3, tube: separate, zone: wet, strip: 0.8 cm')).toEqual({
      is: 'splice',
      name: 'P',
      size: { min: 1, max: 2 },
      ends: 3,
      tube: 'separate',
      zone: 'wet',
      stripMm: 8,
    });
    expect(part('is: tap, run: 1..2 mm2, branch: 0.5..1 mm2, zone: dry')).toEqual({
      is: 'tap',
      name: 'P',
      run: { min: 1, max: 2 },
      branch: { min: 0.5, max: 1 },
      zone: 'dry',
    });
    expect(part('is: cover, size: 1..2 mm2, zone: wet')).toEqual({
      is: 'cover',
      name: 'P',
      size: { min: 1, max: 2 },
      zone: 'wet',
    });
    expect(part('is: tube, size: 1..2 mm2, zone: wet')).toEqual({
      is: 'tube',
      name: 'P',
      size: { min: 1, max: 2 },
      zone: 'wet',
    });
    expect(part('is: fuse, rating: 15 A')).toEqual({ is: 'fuse', name: 'P', ratingAmps: 15 });
  });

  it('takes what is not said as not known, one wire, two ends, no tube', () => {
    expect(part('is: terminal')).toEqual({
      is: 'terminal',
      name: 'P',
      size: null,
      wires: 1,
      ring: false,
      stripMm: null,
    });
    expect(part('is: terminal, ring: no')).toMatchObject({ ring: false });
    expect(part('is: terminal, ring: true')).toMatchObject({ ring: true });
    expect(part('is: seal')).toEqual({ is: 'seal', name: 'P', insulation: null });
    expect(part('is: splice')).toEqual({
      is: 'splice',
      name: 'P',
      size: null,
      ends: 2,
      tube: 'none',
      zone: 'unknown',
      stripMm: null,
    });
    expect(part('is: splice, tube: built in')).toMatchObject({ tube: 'built in' });
    expect(part('is: tap')).toEqual({ is: 'tap', name: 'P', run: null, branch: null, zone: 'unknown' });
    expect(part('is: cover')).toEqual({ is: 'cover', name: 'P', size: null, zone: 'unknown' });
    expect(part('is: fuse')).toEqual({ is: 'fuse', name: 'P', ratingAmps: null });
    for (const is of ['plug', 'jumper', 'tie', 'tape']) expect(part(`is: ${is}`)).toEqual({ is, name: 'P' });
  });

  it('complains of ranges, counts and ratings that are none', () => {
    expect(
      complaintsOf(kit('  P: { is: terminal, size: 1 to 2 }')).map((one) =>
        one.split(':').slice(0, 2).join(':'),
      ),
    ).toEqual(['4:28 range']);
    expect(complaintsOf(kit('  P: { is: terminal, wires: none }'))).toEqual([
      '4:29 count: `none` is no count (write a whole number from 1 on)',
    ]);
    expect(complaintsOf(kit('  P: { is: splice, ends: 0 }'))).toHaveLength(1);
    expect(
      complaintsOf(kit('  P: { is: fuse, rating: strong }')).map((one) =>
        one.split(':').slice(0, 2).join(':'),
      ),
    ).toEqual(['4:26 quantity']);
  });
});

describe('the bag', () => {
  it('counts pieces, none included', () => {
    expect([...jobOf(kit('  P: { is: tie }\n  Q: { is: tie }', 'P: 3, Q: 0')).bag]).toEqual([
      ['P', 3],
      ['Q', 0],
    ]);
  });

  it('complains of a part that is not in the catalogue, and of what is no count', () => {
    expect(complaintsOf(kit('  PLUG: { is: plug }', 'PLUGS: 1'))).toEqual([
      '6:17 unknown-name: no part is called `PLUGS` (did you mean `PLUG`?)',
    ]);
    for (const count of ['-1', '1.5', 'two', '1234567'])
      expect(complaintsOf(kit('  P: { is: plug }', `P: ${count}`))).toEqual([
        `6:20 count: \`${count}\` is no count (write how many pieces are in the bag, such as 2)`,
      ]);
  });
});
