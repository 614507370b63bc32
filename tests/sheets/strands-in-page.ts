/*
 * The circuits of a document as a reader of its drawings sees them: every line by where it begins and ends, every point by
 * the shape that stands there. Nothing is taken from anything but the drawing.
 */

/** A wire of a drawing. */
export interface DrawnWire {
  /** Words of the points that its line joins, the upper one first. */
  readonly from: string;
  readonly to: string;
  readonly told: string;
  readonly paint: string;
  readonly stripe: string | null;
  readonly width: number;
  readonly dashed: boolean;
}

/** A point of a drawing, with the shape that it is drawn as. */
export interface DrawnPoint {
  readonly told: string;
  readonly shape: string;
  /** Which cavity of the face in little beside it is filled, counted as drawn; -1 where there is no face. */
  readonly filled: number;
}

/** One net as it is drawn. */
export interface DrawnStrand {
  readonly points: readonly DrawnPoint[];
  readonly wires: readonly DrawnWire[];
}

/** The strands that stand under a head of a document. */
export function strandsUnder(page: string, head: string): readonly DrawnStrand[] {
  const [, section = ''] = new RegExp(`<section><h2>${head}</h2>([\\s\\S]*?)</section>`).exec(page) ?? [];
  return [...section.matchAll(/<svg class="strand"[^>]*>([\s\S]*?)<\/svg>/g)].map(([, drawing = '']) =>
    strandIn(drawing),
  );
}

interface Shape {
  readonly tag: string;
  readonly at: (name: string) => string;
  readonly inside: string;
}

function strandIn(drawing: string): DrawnStrand {
  const shapes = [
    ...drawing.matchAll(/<(path|rect|circle|text|g)\b([^>]*?)(?:\/>|>([\s\S]*?)<\/(?:text|g)>)/g),
  ].map(
    ([, tag = '', attributes = '', inside = '']): Shape => ({
      tag,
      at: (name) => new RegExp(`\\b${name}="([^"]*)"`).exec(attributes)?.[1] ?? '',
      inside,
    }),
  );
  const kind = (name: string): readonly Shape[] =>
    shapes.filter(({ at }) => at('class').split(' ')[0] === name);
  const faces = shapes.filter(({ tag, at }) => tag === 'g' && at('class') === 'tiny');
  const marks = shapes.filter(
    ({ tag, at }) => tag !== 'text' && tag !== 'g' && /^(point|solid|beyond)$/.test(at('class')),
  );
  const points = kind('point-text').map((text) => {
    const { x, y, told } = linesOf(text);
    return { x: x - 20, y: y - 5, told };
  });
  const pointAt = (x: number, y: number): string => {
    const found = points.filter((one) => one.x === x && one.y === y);
    if (found.length !== 1) throw new Error(`${found.length} points at ${x}, ${y}`);
    return found[0]?.told ?? '';
  };
  const outlines = kind('outline');
  const bars = outlines.filter(({ at }) => at('class').includes('bar-line')).map(({ at }) => walkOf(at('d')));
  const wires = outlines.filter(({ at }) => !at('class').includes('bar-line'));
  const paints = kind('strand-wire');
  const texts = kind('wire-text');
  return {
    points: points.map(({ x, y, told }) => ({
      told,
      shape: shapeAt(marks, x, y),
      filled: Math.max(-1, ...faces.map((face) => filledIn(face.inside, y))),
    })),
    wires: wires.map(({ at }, index) => {
      const [start, end] = walkOf(at('d'));
      const bar = bars.find(([, foot]) => foot.x === start.x && foot.y === start.y);
      const [first, second, ...more] = paints.filter((paint) => paint.at('d') === at('d'));
      if (first === undefined || more.length > 0) throw new Error(`${more.length} paints more on ${at('d')}`);
      return {
        from: pointAt((bar?.[0] ?? start).x, (bar?.[0] ?? start).y),
        to: pointAt(end.x, end.y),
        told: linesOf(texts[index] ?? first).told,
        paint: first.at('stroke'),
        stripe: second?.at('stroke') ?? null,
        width: Number(first.at('stroke-width')),
        dashed: first.at('stroke-dasharray') !== 'none' && at('stroke-dasharray') !== 'none',
      };
    }),
  };
}

/** Words of a text with its lines put together, and where its first line begins. */
function linesOf({ inside }: Shape): { readonly x: number; readonly y: number; readonly told: string } {
  const lines = [...inside.matchAll(/<tspan x="([\d.]+)" y="([\d.]+)">(.*?)<\/tspan>/g)];
  const told = lines
    .map(([, , , line = '']) => line.replaceAll('&#39;', "'").replaceAll('&amp;', '&'))
    .join(' ');
  return { x: Number(lines[0]?.[1]), y: Number(lines[0]?.[2]), told };
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where a path begins and ends: moves, straight lines and curves, absolute or relative. */
function walkOf(path: string): readonly [Spot, Spot] {
  let [x, y] = [0, 0];
  let start: Spot | null = null;
  for (const [, letter = '', list = ''] of path.matchAll(/([MVhq])([-\d. ]*)/g)) {
    const numbers = list.trim().split(/\s+/).map(Number);
    if (letter === 'M') [x = 0, y = 0] = numbers;
    else if (letter === 'V') [y = 0] = numbers;
    else if (letter === 'h') x += numbers[0] ?? 0;
    else
      for (let at = 0; at < numbers.length; at += 4) {
        x += numbers[at + 2] ?? 0;
        y += numbers[at + 3] ?? 0;
      }
    start ??= { x, y };
  }
  return [start ?? { x, y }, { x, y }];
}

/** What stands at a point, by its outline alone. */
function shapeAt(marks: readonly Shape[], x: number, y: number): string {
  const found = marks.flatMap(({ tag, at }): readonly string[] => {
    if (tag === 'circle') {
      if (Number(at('cx')) !== x || Number(at('cy')) !== y || at('class') !== 'point') return [];
      return [at('stroke-dasharray') === '' ? 'ring' : 'broken ring'];
    }
    if (tag === 'rect') {
      const [left, top] = [Number(at('x')) - x, Number(at('y')) - y];
      if (at('class') === 'point' && left === -12 && top === -10) return ['housing'];
      if (at('class') === 'point' && left === -7 && top === -12) return ['barrel'];
      return at('class') === 'solid' && left === -8 && top === -9 ? ['band'] : [];
    }
    const d = at('d');
    if (d.startsWith(`M${x - 11} ${y - 9} h22`)) return ['triangle'];
    if (d.startsWith(`M${x - 8} ${y - 8} h16`)) return ['cap'];
    if (d.startsWith(`M${x - 8} ${y - 8} L`)) return ['cross'];
    return d.startsWith(`M${x - 11} ${y - 6} q5`) ? ['waves'] : [];
  });
  return found.join(' and ');
}

/** Which cavity of a face in little is filled, where the face stands beside that height; else -1. */
function filledIn(face: string, y: number): number {
  const cells = [...face.matchAll(/<(rect|circle) ([^>]*?)\/>/g)].map(([, tag = '', attributes = '']) => ({
    tag,
    at: (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1] ?? '',
  }));
  // The housing comes first, then its latch or key.
  const [body, , ...cavities] = cells;
  if (body === undefined) return -1;
  const middle =
    body.tag === 'circle' ? Number(body.at('cy')) : Number(body.at('y')) + Number(body.at('height')) / 2;
  return Math.abs(middle - y) < 0.5 ? cavities.findIndex(({ at }) => at('class') === 'solid') : -1;
}
