import fc from 'fast-check';
import type { Network, NetworkElement } from '../../packages/verify/src/electrical/network/network.ts';
import { withoutZeroOhmRings } from '../support/random-network.ts';

/** Four decades, from a conductor to a lamp: further apart, the simulator itself loses the digits compared. */
const ohm = fc
  .tuple(fc.integer({ min: 10, max: 99 }), fc.integer({ min: -3, max: 0 }))
  .map(([mantissa, exponent]) => mantissa * 10 ** exponent);

/**
 * Makes networks in which resistors tie all nodes together, with sources and diodes across them: what a simulator
 * accepts, which knows no floating part and no ring of ideal sources.
 *
 * @param shape - the most nodes (at least two) and diodes.
 */
export function connectedNetwork(shape: {
  readonly maxNodes: number;
  readonly maxDiodes: number;
}): fc.Arbitrary<Network> {
  return fc.integer({ min: 2, max: shape.maxNodes }).chain((nodeCount) => {
    const node = fc.nat({ max: nodeCount - 1 });
    const ends = fc.tuple(node, node).filter(([from, to]) => from !== to);
    const extra = fc.oneof<fc.Arbitrary<NetworkElement>[]>(
      fc.tuple(ends, ohm).map(([[from, to], value]) => ({ kind: 'resistor', from, to, ohm: value })),
      ends.map(([from, to]): NetworkElement => ({ kind: 'joint', from, to })),
      fc
        .tuple(ends, fc.integer({ min: -480, max: 480 }), fc.oneof(fc.constant(0), ohm))
        .map(([[from, to], tenths, value]) => ({
          kind: 'voltage-source',
          from,
          to,
          volt: tenths / 10,
          ohm: value,
        })),
      fc
        .tuple(ends, fc.integer({ min: -20, max: 20 }))
        .map(([[from, to], ampere]) => ({ kind: 'current-source', from, to, ampere })),
    );
    const diode: fc.Arbitrary<NetworkElement> = fc
      .tuple(ends, fc.constantFrom(0.3, 0.7, 2), fc.constantFrom(0.01, 0.1))
      .map(([[from, to], forwardVolt, onOhm]) => ({ kind: 'diode', from, to, forwardVolt, onOhm }));
    return fc
      .record({
        reference: node,
        tree: fc.tuple(
          ...Array.from({ length: nodeCount - 1 }, (_, at) => fc.tuple(fc.nat({ max: at }), ohm)),
        ),
        battery: fc.tuple(ends, fc.constantFrom(6, 12, 24, 48)),
        extras: fc.array(extra, { maxLength: nodeCount }),
        diodes: fc.array(diode, { maxLength: shape.maxDiodes }),
      })
      .map(({ reference, tree, battery: [[from, to], volt], extras, diodes }) => ({
        nodeCount,
        reference,
        elements: withoutZeroOhmRings(nodeCount, [
          ...tree.map(
            ([earlier, value], at): NetworkElement => ({
              kind: 'resistor',
              from: earlier,
              to: at + 1,
              ohm: value,
            }),
          ),
          { kind: 'voltage-source', from, to, volt, ohm: 0.02 },
          ...extras,
          ...diodes,
        ]),
      }));
  });
}
