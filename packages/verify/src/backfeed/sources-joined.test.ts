import { describe, expect, it } from 'vitest';
import { type StudKit, studKit } from '../../../../tests/support/stud-kit.ts';
import { changed, judged, verdictOf } from '../../../../tests/support/verdict-of.ts';

/** A lamp of the stock harness behind a switch; the second supply is at the stud B2. */
const plain: StudKit = {
  nets: ['B2', 'N2', 'A', 'M'],
  stock: [
    ['switch', 'S1', 'BAT', 'A'],
    ['load', 'lamp', 'A', 'GND', 'resistance: 6 ohm'],
  ],
  sections: ['electrical: { material: copper }'],
};

/** With a second supply, and wires between studs that the kit brings. */
function twoSupplies(kit: Partial<StudKit>, volts = '12 V', back = 'GND'): string {
  let text = studKit({ ...plain, ...kit });
  text = changed(
    text,
    'volts: 12 V } }',
    `volts: 12 V }, second: { at: B2, return: ${back}, volts: ${volts} } }`,
  );
  text = changed(text, '    B2: { source: never }', '    B2: { source: always }');
  for (const step of ['disconnect', 'reconnect'])
    text = changed(
      text,
      `  - { do: ${step}, supply: battery }\n`,
      `  - { do: ${step}, supply: battery }\n  - { do: ${step}, supply: second }\n`,
    );
  return text;
}

/** What obligation 10 says, and what is found of it; every witness is walked on the way. */
function said(text: string): readonly string[] {
  judged(text);
  const { obligations, findings } = verdictOf(text);
  return [
    obligations.find(({ obligation }) => obligation === 10)?.verdict ?? '',
    ...findings
      .flatMap((one) => [one, ...one.consequences])
      .filter(({ obligation }) => obligation === 10)
      .map(({ kind, points }) => `${kind} ${points.join()}`),
  ];
}

describe('two supplies that a wire of the kit joins, on which no element hangs', () => {
  it.each(['12 V', '24 V'])('are tied, one of 12 V and one of %s', (volts) => {
    expect(said(twoSupplies({ links: [['link', 'BAT', 'B2']] }, volts))).toEqual([
      'refuted',
      'sources-tied battery,second',
    ]);
  });

  it('may be where it is said that they may', () => {
    const text = twoSupplies({ links: [['link', 'BAT', 'B2']], wanted: ['may tie: [[battery, second]]'] });
    expect(said(text)).toEqual(['proved']);
  });

  it('are not tied by a load between them, by which only that load has power', () => {
    const between: StudKit = {
      ...plain,
      kit: [['load', 'heater', 'BAT', 'B2', 'resistance: 6 ohm']],
      powered: ['heater: always'],
    };
    expect(said(twoSupplies(between, '24 V'))).toEqual(['proved']);
  });

  it('are not told of where they were one before the work', () => {
    const text = twoSupplies({
      wires: [['joined', 'BAT', 'B2']],
      kit: [['load', 'lamp 2', 'A', 'GND', 'resistance: 6 ohm']],
      powered: ['lamp 2: S1'],
    });
    expect(said(text)).toEqual(['proved']);
    const onThePole = twoSupplies({
      wires: [['joined', 'BAT', 'B2']],
      kit: [['load', 'lamp 2', 'BAT', 'GND', 'resistance: 6 ohm']],
      powered: ['lamp 2: always'],
    });
    expect(said(onThePole)).toEqual(['proved']);
    const bridged = twoSupplies({
      stock: [...plain.stock, ['bridge', 'block', 'BAT', 'B2']],
      kit: [['switch', 'across', 'BAT', 'B2']],
    });
    expect(said(bridged)).toEqual(['proved']);
  });
});

describe('a boundary that a wire of the kit joins to a pole', () => {
  const joined = (pole: string, boundaries: string): string => {
    let text = studKit({ ...plain, links: [['link', pole, 'M']] });
    text = changed(text, '  studs:\n', `  boundaries:\n${boundaries}  studs:\n`);
    text = changed(
      text,
      '  wires:\n    S1 a',
      '  wires:\n    beyond: { from: trailer, to: M, size: 1 mm2 }\n    S1 a',
    );
    return changed(text, 'add: [M]', 'add: [M, trailer]');
  };

  it.each(['BAT', 'GND'])('leaves back-feed undecided where nobody said what is beyond, at %s', (pole) => {
    expect(said(joined(pole, '    trailer: {}\n'))).toEqual([
      'undecided',
      'back-feed-unknown whether current can come out at trailer',
    ]);
  });

  it('is a source tied to it where it is one', () => {
    expect(said(joined('BAT', '    trailer: { source: always, distinct: yes }\n'))).toEqual([
      'refuted',
      'sources-tied battery,trailer',
    ]);
  });

  it('does no harm where no current comes out and no other boundary may be one with it', () => {
    expect(said(joined('BAT', '    trailer: { source: never }\n'))).toEqual(['proved']);
    expect(said(joined('BAT', '    trailer: { source: never }\n    front: { source: never }\n'))).toEqual([
      'undecided',
      'back-feed-unknown whether trailer is one with another boundary beyond the model',
    ]);
    expect(
      said(joined('BAT', '    trailer: { source: never, distinct: yes }\n    front: { source: never }\n')),
    ).toEqual(['proved']);
  });
});

describe('a return that the work moves to the pole of another system', () => {
  const moved = (back: string): string => {
    const text = twoSupplies(
      {
        wires: [['back', 'M', 'GND']],
        stock: [...plain.stock, ['load', 'lamp 2', 'A', 'M', 'resistance: 6 ohm']],
        kit: [['load', 'other', 'BAT', 'GND', 'resistance: 6 ohm']],
        powered: ['other: always'],
      },
      '12 V',
      back,
    );
    return changed(
      changed(
        text,
        '  - { do: reconnect, supply: battery }\n',
        '  - { do: detach, end: back@GND }\n  - { do: attach, end: back@GND, stud: N2 }\n  - { do: reconnect, supply: battery }\n',
      ),
      '  additions:\n',
      '  additions:\n    left: { to: GND, take: [M, K lamp 2:2] }\n    moved: { to: N2, add: [M, K lamp 2:2] }\n',
    );
  };

  it('is no way back, though that pole is at no volts too', () => {
    expect(said(moved('N2'))).toEqual([
      'undecided',
      'back-feed-unknown what joins the returns GND and N2, between which S1 lies',
    ]);
    // Nothing at all comes back to a stud on which no pole hangs.
    expect(said(moved('GND'))).toEqual(['refuted', 'load-unpowered lamp 2']);
  });
});
