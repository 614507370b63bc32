import { parseNumber } from '@loomproof/netlist';

const written = /^(?:> ?)?([\d.,]+) ?([kKM]?)(?:ohms?|Ω|Ω)?$/iu;
const factors: ReadonlyMap<string, number> = new Map([
  ['', 1],
  ['k', 1e3],
  ['K', 1e3],
  ['M', 1e6],
]);

/**
 * Ohms as people write them: `0.3 ohm`, `0,3 Ω`, `4.7 kohm`, `2 Mohm`, `> 20 Mohm`.
 *
 * @returns null for what is no resistance, and for `2 mohm`: that is 2 milliohm, and what many write for 2 megohm
 */
export function parseOhms(text: string): number | null {
  const [, digits = '', prefix = ''] = written.exec(text) ?? [];
  const number = parseNumber(digits);
  const factor = factors.get(prefix);
  return number.ok && factor !== undefined ? number.value * factor : null;
}
