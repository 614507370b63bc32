import { type Face, type Side, viewFrom } from '@loomproof/netlist';
import { colourPaint } from './colour-paint.ts';
import { type Markup, type MarkupValue, markup } from './markup.ts';

/** What is drawn in a cavity. */
export interface CavityLook {
  readonly holds: 'wire' | 'pin' | 'plug' | 'nothing';
  /** Colour codes of the wire, base first. */
  readonly codes: readonly string[];
}

/** Which face is drawn and how. */
export interface FaceFigureOptions {
  readonly side: Side;
  /** Text of the flag at each marked cavity, by label. */
  readonly marks: ReadonlyMap<string, string>;
  readonly look: (label: string) => CavityLook;
  /** What a person who cannot see the picture is told. */
  readonly title: string;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly label: string | null;
  readonly blocked: boolean;
}

const margin = 22;

/**
 * A connector's face as it is held: the housing with its latch or key, each cavity where it is, what stands in it, and
 * the marked ones by a thick frame and a flag, so that they are found without colour. Units are pixels at full size.
 */
export function faceFigure(given: Face, options: FaceFigureOptions): Markup {
  const face = viewFrom(given, options.side);
  const { pitch, spots, w, h } = laidOut(face, options.marks.size);
  // Wide and high faces are made smaller on paper; their labels are larger here, so that 7 pt are left there.
  const font = Math.max(11, (11 * w) / 620, (11 * h) / 960);
  // The least height on paper, in pixels of 1/96 inch, at which they are 7 pt.
  const least = Math.ceil((h * (7.05 * 4)) / 3 / font);
  return markup`<svg class="face" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${options.title}" viewBox="0 0 ${w} ${h}" width="${w}" height="${h}" style="--least: ${least}px"><g font-family="inherit" font-size="${font.toFixed(1)}" text-anchor="middle">${
    face.kind === 'grid'
      ? housing(w, h, face.mark, face.edge)
      : markup`<circle cx="${w / 2}" cy="${h / 2}" r="${Math.min(w, h) / 2 - margin + 12}" class="body"/><path d="M${w / 2 - 8} ${margin - 14} h16 v10 h-16 z" class="latch"/>`
  }${spots.map((spot) => cavity(spot, options, pitch))}${spots.map((spot) => frame(spot, options.marks, pitch))}${spots.map((spot) => flag(spot, options.marks, pitch))}</g></svg>`;
}

/** Whether the two views of a face must stand below each other, since side by side their labels would be too small. */
export function isWideFace(face: Face, markCount: number): boolean {
  return laidOut(face, markCount).w > 330;
}

function laidOut(
  face: Face,
  markCount: number,
): { readonly pitch: number; readonly spots: readonly Spot[]; readonly w: number; readonly h: number } {
  const longest = Math.max(1, ...face.rows.flat().map(({ label }) => (label ?? '').length));
  // Flags side by side need more room than one alone, or each would hide what its neighbour holds.
  const pitch = Math.max(markCount > 1 ? 46 : 36, longest * 8 + 14);
  const { spots, width, height } = face.kind === 'grid' ? gridSpots(face, pitch) : ringSpots(face, pitch);
  return { pitch, spots, w: width + 2 * margin, h: height + 2 * margin };
}

function housing(
  w: number,
  h: number,
  mark: 'latch' | 'key',
  edge: 'top' | 'bottom' | 'left' | 'right',
): MarkupValue {
  const inset = margin - 8;
  const upright = edge === 'top' || edge === 'bottom';
  const long = mark === 'latch' ? Math.min(64, (upright ? w : h) / 2) : 14;
  const deep = 12;
  const x = upright ? (w - long) / 2 : edge === 'left' ? inset - deep + 2 : w - inset - 2;
  const y = upright ? (edge === 'top' ? inset - deep + 2 : h - inset - 2) : (h - long) / 2;
  const [width, height] = upright ? [long, deep] : [deep, long];
  return markup`<rect x="${x}" y="${y}" width="${width}" height="${height}" rx="2" class="latch"/><rect x="${inset}" y="${inset}" width="${w - 2 * inset}" height="${h - 2 * inset}" rx="8" class="body"/>`;
}

function gridSpots(
  face: Extract<Face, { kind: 'grid' }>,
  pitch: number,
): { spots: readonly Spot[]; width: number; height: number } {
  const spots: Spot[] = [];
  for (const [row, positions] of face.rows.entries()) {
    for (const { at, label, blocked } of positions)
      spots.push({ x: margin + ((at + 1) * pitch) / 2, y: margin + (row + 0.5) * pitch, label, blocked });
  }
  return { spots, width: (face.width * pitch) / 2, height: face.rows.length * pitch };
}

function ringSpots(
  face: Extract<Face, { kind: 'round' }>,
  pitch: number,
): { spots: readonly Spot[]; width: number; height: number } {
  const rings = face.rows.length - (face.centre ? 1 : 0);
  // Square cavities stay apart in any direction when their centres are a diagonal apart.
  const apart = Math.SQRT2 * (pitch - 4) + 1;
  const radii: number[] = [];
  for (let ring = rings - 1, inner = face.centre ? 0 : -apart; ring >= 0; ring -= 1) {
    const gap = smallestGap((face.rows[ring] ?? []).map(({ at }) => at));
    inner = Math.max(gap === null ? 0 : apart / (2 * Math.sin(gap / 2)), inner + apart);
    radii[ring] = inner;
  }
  const size = 2 * (radii[0] ?? 0) + pitch;
  const spots = face.rows.flatMap((positions, ring) =>
    positions.map(({ at, label, blocked }): Spot => {
      const radius = radii[ring] ?? 0;
      const angle = (at / 720) * 2 * Math.PI;
      const middle = margin + size / 2;
      return {
        x: round(middle + radius * Math.sin(angle)),
        y: round(middle - radius * Math.cos(angle)),
        label,
        blocked,
      };
    }),
  );
  return { spots, width: size, height: size };
}

/** The smallest angle between two neighbours on a ring, in radians, or null when there is only one position. */
function smallestGap(minutes: readonly number[]): number | null {
  const sorted = [...minutes].sort((a, b) => a - b);
  const gaps = sorted.map(
    (at, index) => (((sorted[index + 1] ?? (sorted[0] ?? 0) + 720) - at) / 720) * 2 * Math.PI,
  );
  return gaps.length < 2 ? null : Math.min(...gaps, Math.PI);
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function cavity(
  { x, y, label, blocked }: Spot,
  { look, side }: FaceFigureOptions,
  pitch: number,
): MarkupValue {
  const half = pitch / 2 - 2;
  const frame = markup`<rect x="${round(x - half)}" y="${round(y - half)}" width="${half * 2}" height="${half * 2}" rx="4" class="${blocked ? 'blocked' : 'cavity'}"/>`;
  if (label === null) return frame;
  if (blocked) return markup`${frame}<text x="${x}" y="${y + 4}" class="pale">${label}</text>`;
  const { holds, codes } = look(label);
  const top = y - half + 9;
  return markup`${frame}${content(holds, codes, x, top, side)}<text x="${x}" y="${round(y + half - 4)}">${label}</text>`;
}

function content(
  holds: CavityLook['holds'],
  codes: readonly string[],
  x: number,
  y: number,
  side: Side,
): MarkupValue {
  if (holds === 'nothing') return null;
  if (holds === 'plug') return markup`<path d="M${x - 6} ${y - 6} l12 12 m0 -12 l-12 12" class="plug"/>`;
  if (holds === 'pin' || side === 'mating side')
    return markup`<rect x="${x - 3}" y="${y - 5}" width="6" height="11" class="contact"/>`;
  return markup`<circle cx="${x}" cy="${y}" r="7" fill="${colourPaint(codes[0])}" class="wire"/>${
    codes[1] === undefined
      ? null
      : markup`<path d="M${x - 5} ${y + 5} L${x + 5} ${y - 5}" stroke="${colourPaint(codes[1])}" class="stripe"/>`
  }`;
}

function frame(
  { x, y, label, blocked }: Spot,
  marks: ReadonlyMap<string, string>,
  pitch: number,
): MarkupValue {
  if (label === null || blocked || !marks.has(label)) return null;
  const half = pitch / 2 - 1;
  return markup`<rect x="${round(x - half)}" y="${round(y - half)}" width="${half * 2}" height="${half * 2}" rx="6" class="marked"/>`;
}

function flag(
  { x, y, label, blocked }: Spot,
  marks: ReadonlyMap<string, string>,
  pitch: number,
): MarkupValue {
  const text = label === null || blocked ? undefined : marks.get(label);
  if (text === undefined) return null;
  const inset = marks.size > 1 ? 8 : 4;
  const [cx, cy] = [round(x + pitch / 2 - inset), round(y - pitch / 2 + inset)];
  return markup`<circle cx="${cx}" cy="${cy}" r="10" class="flag"/><text x="${cx}" y="${cy + 4}" class="flag-text">${text}</text>`;
}
