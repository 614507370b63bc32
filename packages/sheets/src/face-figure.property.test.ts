import { locate, resolveKit } from '@loomproof/netlist';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { faceFigure } from './face-figure.ts';

/** Up to 60 cavities, which is what a face must stay legible with. */
const numbered = fc
  .record({
    side: fc.constantFrom('wire side', 'mating side'),
    latch: fc.constantFrom('top', 'bottom', 'left', 'right'),
    rows: fc.integer({ min: 1, max: 5 }),
    columns: fc.integer({ min: 1, max: 30 }),
    count: fc.constantFrom('rows', 'columns', 'serpentine rows', 'serpentine columns'),
  })
  .filter(({ rows, columns }) => rows * columns <= 60);

/** The face of a connector as a kit file gives it. */
function faceOf({
  side,
  latch,
  rows,
  columns,
  count,
}: typeof numbered extends fc.Arbitrary<infer T> ? T : never) {
  const cavities = `1..${rows * columns}`;
  const face = { 'seen from': side, latch, rows, columns, count };
  const read = resolveKit(
    locate({
      kit: 'k',
      revision: 'A',
      stock: {
        studs: { G: {} },
        connectors: { K: { cavities, face } },
        wires: { w: { from: 'K:1', to: 'G' } },
      },
      work: [{ do: 'fasten', wire: 'w' }],
      wanted: { circuits: { w: ['K:1', 'G'] } },
    }),
    () => null,
  );
  const made = read.value?.variants[0]?.job.connectors[0]?.face;
  if (made == null) throw new Error(read.diagnostics.map(({ message }) => message).join('; '));
  return made;
}

it('draws every label once inside the housing, and letters that are 11 pixels on a phone and 7 points on A4', () => {
  fc.assert(
    fc.property(numbered, (numbers) => {
      const { rows, columns } = numbers;
      const text = faceFigure(faceOf(numbers), {
        side: 'wire side',
        marks: new Map([['1', '7']]),
        look: () => ({ holds: 'nothing', codes: [] }),
        title: 't',
      }).text;
      const [width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(text) ?? [])
        .slice(1)
        .map(Number);
      const labels = [...text.matchAll(/<text x="([\d.]+)" y="([\d.]+)">(\d+)<\/text>/g)];
      expect(labels.map((one) => Number(one[3])).sort((a, b) => a - b)).toEqual(
        Array.from({ length: rows * columns }, (_, index) => index + 1),
      );
      for (const [, x, y] of labels) {
        expect(Number(x)).toBeGreaterThan(0);
        expect(Number(x)).toBeLessThan(width);
        expect(Number(y)).toBeLessThan(height);
      }
      const font = Number(/font-size="([\d.]+)"/.exec(text)?.[1]);
      expect(font).toBeGreaterThanOrEqual(11);
      // On A4 the figure is at most 702 pixels wide; a point is 4/3 of a pixel.
      expect((font * Math.min(1, 702 / width) * 3) / 4).toBeGreaterThanOrEqual(7);
      // A digit of the sheets' fonts is less than two thirds of its height wide.
      const longest = String(rows * columns).length;
      expect((longest * font * 2) / 3).toBeLessThanOrEqual((width - 44) / columns);
      expect(text.match(/class="flag"/g)?.length).toBe(1);
    }),
  );
});
