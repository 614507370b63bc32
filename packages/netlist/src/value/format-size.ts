import type { Size } from './size.ts';

/** A gauge as it is written, without its unit: `18`, `0`, `4/0`. */
function gaugeText(awg: number): string {
  return awg < 0 ? `${1 - awg}/0` : String(awg);
}

/**
 * A size in the unit in which it was given: `0.5 mm2`, `AWG 18`, `AWG 4/0`.
 *
 * @param size - a size
 * @returns text that `parseSize` reads back to the same size
 */
export function formatSize(size: Size): string {
  return size.unit === 'awg' ? `AWG ${gaugeText(size.awg)}` : `${size.mm2} mm2`;
}
