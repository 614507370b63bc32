/** The thickest gauge that is read: 4/0, which counts as -3. */
export const thickestAwg = -3;
/** The thinnest gauge that is read: the last one of the usual published tables. */
export const thinnestAwg = 40;

/**
 * The cross-section of a solid round wire of an American wire gauge, by the rule of ASTM B258: gauge 36 is
 * 0.127 mm thick, 4/0 is 11.684 mm thick, and the 39 steps between them are equal ratios.
 *
 * @param awg - the gauge; 2/0 is -1, 3/0 is -2, 4/0 is -3
 * @returns the area in mm²
 */
export function awgToMm2(awg: number): number {
  const diameter = 0.127 * 92 ** ((36 - awg) / 39);
  return (Math.PI / 4) * diameter * diameter;
}
