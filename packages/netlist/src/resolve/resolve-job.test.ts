import { describe, expect, it } from 'vitest';
import { jobOf, pointedComplaintsOf } from '../../../../tests/support/kit-text.ts';

const kit = (head = '', work = '{ do: cut, wire: a, at: 1 mm from K1:1, leaves: [x, y] }'): string => `kit: a
revision: 7
${head}parts: { T: { is: terminal } }
stock:
  splices: { S1: {} }
  connectors: { K1: { cavities: 1..2 } }
  wires: { a: { from: K1:1, to: K1:2 }, b: { from: S1, to: K1:2 } }
bag: { wires: { c: { from: A, to: B } } }
work: [${work}, { do: fit terminal, ends: c@A, with: T }]
wanted: { retired: [{ wire: a }] }
`;

describe('resolveJob', () => {
  it('numbers every node once: places first, then terminals, ends and joints of stock, bag and steps', () => {
    const job = jobOf(kit());
    const nodes = [
      ...job.places.map((_, place) => place),
      ...job.joints.map((joint) => joint.node),
      ...job.terminals.map((terminal) => terminal.node),
      ...job.ends.map((end) => end.node),
    ];
    expect(job.nodeCount).toBe(nodes.length);
    expect([...nodes].sort((a, b) => a - b)).toEqual(nodes.map((_, index) => index));
    expect(job.places.map((place) => place.address)).toEqual(['K1:1', 'K1:2']);
    expect(job.ends).toHaveLength(8);
    expect(job.terminals).toHaveLength(3);
  });

  it('carries kit, revision and variant', () => {
    expect(jobOf(kit())).toMatchObject({
      kit: 'a',
      revision: '7',
      variant: 'only',
      oneSplicePerSegment: false,
    });
  });

  it('knows one rule set', () => {
    expect(jobOf(kit('rules: one splice per segment\n')).oneSplicePerSegment).toBe(true);
    expect(pointedComplaintsOf(kit('rules: [one splice per segmnt]\n'))).toEqual([
      'unknown-name "one splice per segmnt": no rule set is called `one splice per segmnt` (did you mean `one splice per segment`?)',
    ]);
  });

  it('complains of an electrical length that is none', () => {
    const head = (length: string): string =>
      `electrical: { limits: own, own limits: { source: a sheet, lead to protector: ${length} } }\n`;
    expect(jobOf(kit(head('180 mm'))).electrical.own?.leadMm).toBe(180);
    expect(pointedComplaintsOf(kit(head('x mm')))).toEqual([expect.stringMatching(/^length "x mm": ./)]);
  });

  it('complains of everything at once', () => {
    const wrong = kit('rules: zzz\n', '{ do: fasten, wire: zzz }')
      .replace('cavities: 1..2', 'cavities: 2..1')
      .replace('retired: [{ wire: a }]', 'retired: [{ wire: zzz }]');
    // The cavities of the connector whose list is wrong are not complained of again: their cause is.
    expect(pointedComplaintsOf(wrong).map((one) => one.split(' ')[0])).toEqual([
      'unknown-name',
      'label-range',
      'unknown-name',
      'unknown-name',
    ]);
  });
});
