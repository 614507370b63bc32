import { describe, expect, it } from 'vitest';
import { complaintsOf, jobOf } from '../support/kit-text.ts';

const kit = (work: string): string => `kit: names
revision: A
parts: { CAP: { is: cover } }
stock:
  connectors: { K1: { cavities: 1..2 }, K2: { cavities: 1..2 } }
  wires: { lamp: { from: K1:1, to: K2:1, length: 1 m }, horn: { from: K1:2, to: K2:2 } }
work:
  - { do: cut, wire: lamp, at: 200 mm from K1:1, leaves: [near, rest] }
${work}wanted:
  retired: [{ wire: lamp }]
`;

describe('the name of a wire that was cut', () => {
  it('is an error that offers the live pieces', () => {
    expect(complaintsOf(kit('  - { do: fasten, wire: lamp }\n'))).toEqual([
      '9:25 was-cut: `lamp` was cut before this step (it is now `near` and `rest`)',
    ]);
  });

  it('offers what is left of pieces that were cut again', () => {
    const again = '  - { do: cut, wire: rest, at: 100 mm from cut, leaves: [middle, far] }\n';
    expect(complaintsOf(kit(`${again}  - { do: fasten, wire: lamp }\n`))).toEqual([
      '10:25 was-cut: `lamp` was cut before this step (it is now `near` and `middle` and `far`)',
    ]);
    expect(complaintsOf(kit(`${again}  - { do: strip, end: rest@cut }\n`))).toEqual([
      '10:23 was-cut: `rest` was cut before this step (it is now `middle` and `far`)',
    ]);
  });

  it('stays the name of the wire in what is wanted', () => {
    expect([...jobOf(kit('')).wanted.retiredWires]).toEqual([0]);
  });

  it('cannot be given to a piece again, nor can that of another wire', () => {
    const reused = '  - { do: cut, wire: rest, at: 100 mm from cut, leaves: [lamp, horn] }\n';
    expect(complaintsOf(kit(reused))).toEqual([
      '9:58 written-twice: `lamp` is the name of a wire already (every piece gets a new name)',
      '9:64 written-twice: `horn` is the name of a wire already (every piece gets a new name)',
    ]);
  });

  it('leaves original ends their home names for ever, and new ends the name of the piece beyond', () => {
    const job = jobOf(
      kit(
        '  - { do: cover, end: near@K1:1, with: CAP }\n  - { do: cover, end: near@rest, with: CAP }\n  - { do: cover, end: rest@cut, with: CAP }\n',
      ),
    );
    const ends = job.steps.flatMap(({ action }) =>
      action.kind === 'cover' ? [job.ends[action.end]?.name] : [],
    );
    expect(ends).toEqual(['lamp@K1:1', 'near@rest', 'rest@near']);
  });

  it('is unknown as an end where the piece has no such end', () => {
    expect(complaintsOf(kit('  - { do: cover, end: near@K2:1, with: CAP }\n'))).toEqual([
      '9:23 end: `near` has no end `K2:1` (its ends are `near@K1:1` and `near@rest`)',
    ]);
  });

  it('has two ends called cut where it was cut on both sides, and each is named by what lies beyond', () => {
    const middle = '  - { do: cut, wire: rest, at: 100 mm from cut, leaves: [middle, far] }\n';
    expect(complaintsOf(kit(`${middle}  - { do: cover, end: middle@cut, with: CAP }\n`))).toEqual([
      '10:23 end: `middle` has two ends called `cut` (its ends are `middle@near` and `middle@far`)',
    ]);
    expect(complaintsOf(kit(`${middle}  - { do: cover, end: middle@far, with: CAP }\n`))).toEqual([]);
  });
});
