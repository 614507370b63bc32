/** Largest and smallest gauge known: 4/0 counts as -3. */
const largest = -3;
const smallest = 40;

/**
 * Reads an American wire gauge as people write it.
 *
 * @param label - `16`, `0`, `00`, `0000`, `1/0`, `4/0`.
 * @returns the gauge as a whole number, 0 for 1/0 down to -3 for 4/0; null for any other text.
 */
export function awgNumber(label: string): number | null {
  if (/^0{1,4}$/.test(label)) return 1 - label.length;
  const aught = /^([1-4])\/0$/.exec(label);
  if (aught !== null) return 1 - Number(aught[1]);
  if (!/^[1-9][0-9]?$/.test(label)) return null;
  const gauge = Number(label);
  return gauge <= smallest ? gauge : null;
}

/**
 * Writes a gauge as it is spoken.
 *
 * @param gauge - a whole number from -3 to 40.
 * @returns `16`, `1/0`, `4/0`.
 */
export function awgLabel(gauge: number): string {
  return gauge > 0 ? `${gauge}` : `${1 - gauge}/0`;
}

/**
 * The area of a solid round conductor of a gauge, by the rule of ASTM B258: 36 is 0.005 in thick, 4/0 is 0.46 in,
 * and the 39 steps between are equal ratios.
 *
 * @param label - the gauge, as {@link awgNumber} reads it.
 * @returns mm2; null when the text is no gauge.
 * @example
 * awgToMm2('16'); // => 1.3087...
 */
export function awgToMm2(label: string): number | null {
  const gauge = awgNumber(label);
  if (gauge === null) return null;
  const diameterMm = 0.127 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameterMm ** 2;
}

/**
 * The largest gauge whose area a conductor has at least: the row of a gauge table that is safe to use for it.
 *
 * @param mm2 - the conductor's area.
 * @returns the gauge, or null for less than 40 AWG.
 * @example
 * awgWithin(1.5); // => '16'
 */
export function awgWithin(mm2: number): string | null {
  for (let gauge = largest; gauge <= smallest; gauge++) {
    const label = awgLabel(gauge);
    const area = awgToMm2(label);
    if (area !== null && area <= mm2) return label;
  }
  return null;
}
