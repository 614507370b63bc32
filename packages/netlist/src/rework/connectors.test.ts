import { describe, expect, it } from 'vitest';
import { effectOf, reworkOf } from '../../../../tests/support/rework-of.ts';

/** Two harness halves X1 and X2, a plug K1 on device D, a loose plug K2, and what an adapter needs. */
const kit = (work: string): string => `kit: a
revision: A
parts: { T: { is: terminal } }
stock:
  supplies: { battery: { at: BAT }, second: { at: BAT } }
  studs: { BAT: {} }
  connectors:
    X1: { cavities: 1..3, into: X2, lock: closed, latch: closed }
    X2: { cavities: 1..3, lock: open, latch: open }
    K1: { cavities: 1..2, into: D, latch: closed }
    D: { device: yes, cavities: 1..2 }
    K2: { cavities: 1..1, lock: closed, latch: open }
  wires:
    a: { from: X1:1, to: K1:1 }
    b: { from: X2:1, to: K2:1 }
    c: { from: X1:2, to: BAT }
bag:
  connectors:
    N: { cavities: 1..2 }
    F: { cavities: 2..3 }
    K3: { cavities: 1..1, into: E }
    E: { device: yes, cavities: 1..1 }
  wires: { n: { from: N:1, to: F:2 } }
work:
${work}wanted: { retired: [{ wire: a }] }
`;
const effect = (...rows: readonly string[]): ReturnType<typeof effectOf> => effectOf(kit, rows);
const refused = (reason: string): ReturnType<typeof effectOf> => ({
  outcome: `refused: ${reason}`,
  touches: [],
  changes: [],
});

describe('as found', () => {
  it('mates conduct where both halves have a contact, or one is a device', () => {
    const { graph, job } = reworkOf(kit, ['do: prove dead, at: BAT']);
    const edges = Array.from({ length: graph.edgeCount }, (_, edge) => edge);
    const mates = edges.flatMap((edge) =>
      graph.kindOf(edge) === 'mate'
        ? [[job.places[graph.fromOf(edge)]?.address, job.places[graph.toOf(edge)]?.address]]
        : [],
    );
    expect(mates).toEqual([
      ['X1:1', 'X2:1'],
      ['K1:1', 'D:1'],
      ['K1:2', 'D:2'],
      ['K3:1', 'E:1'],
    ]);
  });
});

describe('supplies', () => {
  it('are disconnected and reconnected one by one', () => {
    expect(effect('do: disconnect, supply: battery')).toEqual({
      outcome: 'done',
      touches: [],
      changes: ['- on battery'],
    });
    expect(effect('do: disconnect, supply: second').changes).toEqual(['- on second']);
    expect(effect('do: disconnect, supply: battery', 'do: reconnect, supply: battery').changes).toEqual([
      '+ on battery',
    ]);
  });

  it('are refused to be what they are already', () => {
    expect(effect('do: reconnect, supply: battery')).toEqual(refused('already so'));
    expect(effect('do: disconnect, supply: battery', 'do: disconnect, supply: battery')).toEqual(
      refused('already so'),
    );
  });

  it('are not touched by proving dead', () => {
    expect(effect('do: prove dead, at: BAT')).toEqual({ outcome: 'done', touches: [], changes: [] });
  });
});

describe('locks and latches', () => {
  it('open and close, and touch their connector', () => {
    expect(effect('do: open lock, connector: X1')).toEqual({
      outcome: 'done',
      touches: ['connector X1'],
      changes: [
        '- X1 plugged, faces X2, lock closed, latch closed, placed',
        '+ X1 plugged, faces X2, lock open, latch closed, placed',
      ],
    });
    expect(effect('do: close lock, connector: X2').changes).toEqual([
      '- X2 plugged, faces X1, lock open, latch open, placed',
      '+ X2 plugged, faces X1, lock closed, latch open, placed',
    ]);
    expect(effect('do: open latch, connector: X1').changes).toEqual([
      '- X1 plugged, faces X2, lock closed, latch closed, placed',
      '+ X1 plugged, faces X2, lock closed, latch open, placed',
    ]);
    expect(effect('do: close latch, connector: X2').changes).toEqual([
      '- X2 plugged, faces X1, lock open, latch open, placed',
      '+ X2 plugged, faces X1, lock open, latch closed, placed',
    ]);
  });

  it('are refused where there is none, or where they are so already', () => {
    expect(effect('do: open lock, connector: K1')).toEqual(refused('no lock'));
    expect(effect('do: close lock, connector: D')).toEqual(refused('no lock'));
    expect(effect('do: open latch, connector: N')).toEqual(refused('no latch'));
    expect(effect('do: close latch, connector: N')).toEqual(refused('no latch'));
    expect(effect('do: close lock, connector: X1')).toEqual(refused('already so'));
    expect(effect('do: open lock, connector: X2')).toEqual(refused('already so'));
    expect(effect('do: open latch, connector: X2')).toEqual(refused('already so'));
    expect(effect('do: close latch, connector: X1')).toEqual(refused('already so'));
  });

  it('hold nothing: a latch is not closed on a connector that is not plugged', () => {
    expect(effect('do: close latch, connector: K2')).toEqual(refused('not plugged'));
    expect(effect('do: open lock, connector: K2').outcome).toBe('done');
  });
});

describe('unplugging and plugging', () => {
  it('parts both halves, and the mates with them', () => {
    expect(effect('do: open latch, connector: X1', 'do: unplug, connector: X2')).toEqual({
      outcome: 'done',
      touches: ['connector X2', 'connector X1'],
      changes: [
        '- X1 plugged, faces X2, lock closed, latch open, placed',
        '- X2 plugged, faces X1, lock open, latch open, placed',
        '- mate X1:1 = X2:1 since 0, 0',
        '+ X1 unplugged, faces X2, lock closed, latch open, placed',
        '+ X2 unplugged, faces X1, lock open, latch open, placed',
        '+ mate X1:1 = X2:1 since 0, 0 (parted)',
      ],
    });
  });

  it('joins both halves again', () => {
    const rows = [
      'do: open latch, connector: X1',
      'do: unplug, connector: X1',
      'do: close lock, connector: X2',
      'do: plug, connector: X1',
    ];
    expect(effect(...rows)).toEqual({
      outcome: 'done',
      touches: ['connector X1', 'connector X2'],
      changes: [
        '- X1 unplugged, faces X2, lock closed, latch open, placed',
        '- X2 unplugged, faces X1, lock closed, latch open, placed',
        '- mate X1:1 = X2:1 since 0, 0 (parted)',
        '+ X1 plugged, faces X2, lock closed, latch open, placed',
        '+ X2 plugged, faces X1, lock closed, latch open, placed',
        '+ mate X1:1 = X2:1 since 0, 0',
      ],
    });
  });

  it('is refused while a latch of either half is closed', () => {
    expect(effect('do: unplug, connector: X1')).toEqual(refused('latched'));
    expect(effect('do: unplug, connector: X2')).toEqual(refused('latched'));
    expect(
      effect('do: open latch, connector: X1', 'do: close latch, connector: X2', 'do: unplug, connector: X1'),
    ).toEqual(refused('latched'));
  });

  it('is refused without another half, or where it is so already', () => {
    expect(effect('do: unplug, connector: K2')).toEqual(refused('no counterpart'));
    expect(effect('do: plug, connector: K2')).toEqual(refused('no counterpart'));
    expect(effect('do: plug, connector: X1')).toEqual(refused('already plugged'));
    expect(effect('do: unplug, connector: K3')).toEqual(refused('not plugged'));
  });

  it('is done with a lock open or a device not placed, against the rule', () => {
    const apart = ['do: open latch, connector: X1', 'do: unplug, connector: X1'];
    expect(effect(...apart, 'do: plug, connector: X1').outcome).toBe('done, plugged with lock open');
    expect(effect(...apart, 'do: plug, connector: X2').outcome).toBe('done, plugged with lock open');
    expect(
      effect(
        ...apart,
        'do: close lock, connector: X2',
        'do: open lock, connector: X1',
        'do: plug, connector: X2',
      ).outcome,
    ).toBe('done, plugged with lock open');
    expect(effect('do: plug, connector: K3').outcome).toBe('done, not placed');
    expect(effect('do: plug, connector: E').outcome).toBe('done, not placed');
    expect(effect('do: place, device: E', 'do: plug, connector: K3').outcome).toBe('done');
  });
});

describe('placing', () => {
  it('puts a kit device in its place, once', () => {
    expect(effect('do: place, device: E')).toEqual({
      outcome: 'done',
      touches: [],
      changes: [
        '- E unplugged, faces K3, lock none, latch none, loose',
        '+ E unplugged, faces K3, lock none, latch none, placed',
      ],
    });
    expect(effect('do: place, device: E', 'do: place, device: E')).toEqual(refused('already so'));
    expect(effect('do: place, device: D')).toEqual(refused('already so'));
  });
});

describe('interposing an adapter', () => {
  const apart = ['do: open latch, connector: X1', 'do: unplug, connector: X1'];

  it('lets both halves face the adapter by their labels, plugged at once', () => {
    expect(effect(...apart, 'do: interpose, at: X1, near: N, far: F')).toEqual({
      outcome: 'done',
      touches: ['connector X1', 'connector X2'],
      changes: [
        '- X1 unplugged, faces X2, lock closed, latch open, placed',
        '- X2 unplugged, faces X1, lock open, latch open, placed',
        '- N unplugged, faces -, lock none, latch none, loose',
        '- F unplugged, faces -, lock none, latch none, loose',
        '- X1:1 faces X2:1',
        '- X1:2 faces X2:2',
        '- X1:3 faces X2:3',
        '- X2:1 faces X1:1',
        '- X2:2 faces X1:2',
        '- X2:3 faces X1:3',
        '- mate X1:1 = X2:1 since 0, 0 (parted)',
        '+ X1 plugged, faces N, lock closed, latch open, placed',
        '+ X2 plugged, faces F, lock open, latch open, placed',
        '+ N plugged, faces X1, lock none, latch none, loose',
        '+ F plugged, faces X2, lock none, latch none, loose',
        '+ X1:1 faces N:1',
        '+ X1:2 faces N:2',
        '+ X2:2 faces F:2',
        '+ X2:3 faces F:3',
        '+ N:1 faces X1:1',
        '+ N:2 faces X1:2',
        '+ F:2 faces X2:2',
        '+ F:3 faces X2:3',
        '+ mate X1:1 = N:1 since 3, 0',
      ],
    });
  });

  it('brings the device pins along without a contact', () => {
    const { changes } = effect(
      'do: open latch, connector: K1',
      'do: unplug, connector: K1',
      'do: interpose, at: K1, near: N, far: F',
    );
    expect(changes.filter((line) => line.includes('mate'))).toEqual([
      '- mate K1:1 = D:1 since 0, 2 (parted)',
      '- mate K1:2 = D:2 since 0, 2 (parted)',
      '+ mate K1:1 = N:1 since 3, 2',
      '+ mate F:2 = D:2 since 3, 6',
    ]);
  });

  it('is refused on a pair that is plugged, without another half, or with an adapter in use', () => {
    expect(effect('do: interpose, at: X1, near: N, far: F')).toEqual(refused('still attached'));
    expect(effect('do: interpose, at: K2, near: N, far: F')).toEqual(refused('no counterpart'));
    expect(effect(...apart, 'do: interpose, at: X1, near: K3, far: F')).toEqual(refused('already plugged'));
    expect(effect(...apart, 'do: interpose, at: X1, near: N, far: K1')).toEqual(refused('already plugged'));
  });
});
