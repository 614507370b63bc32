/**
 * How the colours of conductors are drawn, by their codes; the shades are this program's own. An outline makes each
 * of them visible on white and on black.
 */
const paints: ReadonlyMap<string, string> = new Map([
  ['BK', '#1b1b1b'],
  ['BN', '#7a4a21'],
  ['RD', '#c8201d'],
  ['OG', '#ee7d11'],
  ['YE', '#f2cf10'],
  ['GN', '#1d8a3a'],
  ['BU', '#1f5fc4'],
  ['VT', '#7b3fa0'],
  ['GY', '#8c9196'],
  ['WH', '#ffffff'],
  ['PK', '#f2a0b8'],
  ['GD', '#b8923a'],
  ['TQ', '#28b3b0'],
  ['SR', '#c9cdd1'],
  ['BG', '#dcc9a3'],
  ['TN', '#c29a68'],
]);

/** The paint of a colour code, grey when there is none. */
export function colourPaint(code: string | undefined): string {
  return paints.get(code ?? '') ?? '#b9bdc1';
}
