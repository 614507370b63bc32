import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LocalEffects } from './local-effects.ts';

const graph = fc.integer({ min: 2, max: 12 }).chain((nodes) =>
  fc.record({
    nodes: fc.constant(nodes),
    joins: fc.array(fc.tuple(fc.nat({ max: nodes - 1 }), fc.nat({ max: nodes - 1 })), { maxLength: 16 }),
  }),
);

/** Whether two nodes hang together, by flooding. */
function together(joins: readonly (readonly [number, number])[], a: number, b: number): boolean {
  const reached = new Set([a]);
  for (let before = 0; before !== reached.size; ) {
    before = reached.size;
    for (const [x, y] of joins) {
      if (reached.has(x)) reached.add(y);
      if (reached.has(y)) reached.add(x);
    }
  }
  return reached.has(b);
}

it('parts and joins nets as flooding does, parallel joins and rings included', () => {
  fc.assert(
    fc.property(graph, ({ nodes, joins }) => {
      const effects = new LocalEffects(
        nodes,
        Int32Array.from(joins, ([a]) => a),
        Int32Array.from(joins, ([, b]) => b),
      );
      for (const [join] of joins.entries()) {
        const effect = effects.opened(join);
        const rest = joins.filter((_, index) => index !== join);
        const below = (node: number): boolean =>
          effect.is === 'split' &&
          (effects.order[node] ?? -1) >= effect.first &&
          (effects.order[node] ?? -1) < effect.last;
        for (let a = 0; a < nodes; a += 1)
          for (let b = 0; b < a; b += 1) {
            const predicted = effects.net[a] === effects.net[b] && below(a) === below(b);
            expect(predicted).toBe(together(rest, a, b));
          }
      }
      for (let a = 0; a < nodes; a += 1)
        for (let b = 0; b < a; b += 1)
          expect(effects.joined(a, b).is).toBe(together(joins, a, b) ? 'none' : 'joined');
    }),
  );
});
