import type { Colour } from './colour.ts';

/**
 * A colour as codes, base first: `RD`, `RD/BU`; and `GNYE`, which IEC 60757 writes without separator.
 *
 * @param colour - a colour
 * @returns its codes, which `parseColour` reads back to the same colour
 */
export function formatColour(colour: Colour): string {
  const text = colour.codes.join('/');
  return text === 'GN/YE' ? 'GNYE' : text;
}
