const written = /^(?:> ?)?(\d{1,12}(?:\.\d{1,12})?) ?([mkM]?)(?:ohm|Ω|Ω)?$/u;

/**
 * Ohms as people write them: `0.3 ohm`, `4.7 kohm`, `2 Mohm`, `> 20 Mohm`. The prefix decides between 2 milliohm and
 * 2 megohm, so its case matters.
 *
 * @returns null for what is no resistance
 */
export function parseOhms(text: string): number | null {
  const match = written.exec(text);
  if (match === null) return null;
  const factor = { m: 1e-3, k: 1e3, M: 1e6 }[match[2] ?? ''] ?? 1;
  return Number(match[1]) * factor;
}
