/** Square millimetres in one circular mil: the area of a circle 0.001 in across. */
const mm2PerCircularMil = (Math.PI / 4) * 0.0254 ** 2;

/**
 * Converts an area.
 *
 * @param mm2 - square millimetres.
 * @returns circular mils.
 */
export function mm2ToCircularMil(mm2: number): number {
  return mm2 / mm2PerCircularMil;
}

/**
 * Converts an area.
 *
 * @param circularMil - circular mils.
 * @returns square millimetres.
 */
export function circularMilToMm2(circularMil: number): number {
  return circularMil * mm2PerCircularMil;
}
