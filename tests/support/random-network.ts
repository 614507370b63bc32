import fc from 'fast-check';
import type { Network, NetworkElement } from '../../packages/verify/src/electrical/network/network.ts';

/** What a random network may hold. */
export interface RandomNetworkShape {
  readonly maxNodes: number;
  readonly maxElements: number;
  readonly maxDiodes: number;
  /** Whether current sources and rings of zero ohm may occur. */
  readonly awkward: boolean;
}

const ohm = fc
  .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: -3, max: 4 }))
  .map(([m, e]) => m * 10 ** e);
const volt = fc.integer({ min: -480, max: 480 }).map((tenths) => tenths / 10);

/** Makes networks that may fall apart, float or contradict themselves; the reference is any node. */
export function randomNetwork(shape: RandomNetworkShape): fc.Arbitrary<Network> {
  return fc.integer({ min: 2, max: shape.maxNodes }).chain((nodeCount) => {
    const node = fc.nat({ max: nodeCount - 1 });
    const ends = { from: node, to: node };
    const linear = fc.oneof(
      { weight: 6, arbitrary: fc.record({ kind: fc.constant('resistor' as const), ...ends, ohm }) },
      { weight: 1, arbitrary: fc.record({ kind: fc.constant('joint' as const), ...ends }) },
      {
        weight: 2,
        arbitrary: fc.record({
          kind: fc.constant('voltage-source' as const),
          ...ends,
          volt,
          ohm: fc.oneof(fc.constant(0), ohm),
        }),
      },
      {
        weight: shape.awkward ? 1 : 0,
        arbitrary: fc.record({
          kind: fc.constant('current-source' as const),
          ...ends,
          ampere: fc.integer({ min: -20, max: 20 }).map((halves) => halves / 2),
        }),
      },
    );
    const diode = fc.record({
      kind: fc.constant('diode' as const),
      ...ends,
      forwardVolt: fc.constantFrom(0, 0.3, 0.7, 2),
      onOhm: fc.constantFrom(0.001, 0.01, 1),
    });
    return fc
      .record({
        reference: node,
        linear: fc.array(linear, { minLength: 1, maxLength: shape.maxElements }),
        diodes: fc.array(diode, { maxLength: shape.maxDiodes }),
      })
      .map(({ reference, linear, diodes }) => ({
        nodeCount,
        reference,
        elements: shape.awkward
          ? [...linear, ...diodes]
          : withoutZeroOhmRings(nodeCount, [...linear, ...diodes]),
      }));
  });
}

/** Leaves out each joint and ideal source that would close a ring of zero ohm. */
export function withoutZeroOhmRings(
  nodeCount: number,
  elements: readonly NetworkElement[],
): NetworkElement[] {
  const label = Array.from({ length: nodeCount }, (_, node) => node);
  return elements.filter((element) => {
    const ideal = element.kind === 'joint' || (element.kind === 'voltage-source' && element.ohm === 0);
    if (!ideal) return true;
    const from = label[element.from];
    const to = label[element.to];
    if (from === to) return false;
    for (const [node, name] of label.entries()) if (name === from) label[node] = to ?? 0;
    return true;
  });
}
