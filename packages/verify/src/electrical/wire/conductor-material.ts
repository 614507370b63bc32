import type { WireMaterial } from '@loomproof/netlist';
import type { Published } from './published.ts';

/** What a conductor is made of. Tinned copper has no formula here, since the coating's part is not known. */
export type ConductorMaterial = WireMaterial;

/** The constants of one material. */
export interface MaterialConstants extends Published {
  /** Ohm times mm2 per m at 20 degrees Celsius; null when a formula would be a guess. */
  readonly ohmMm2PerMetre: number | null;
  /** Degrees below zero Celsius at which the resistance, drawn as a straight line, would vanish. */
  readonly inferredZeroC: number;
}

const copperZero = 'FAA AC 43.13-1B CHG 1, p. 11-22 (234.5 degrees)';

/** Constants of each material. */
export const conductorMaterials: ReadonlyMap<ConductorMaterial, MaterialConstants> = new Map([
  [
    'copper',
    {
      // Standard annealed copper is defined by this fraction.
      ohmMm2PerMetre: 1 / 58,
      inferredZeroC: 234.5,
      source: `International Annealed Copper Standard, 58 MS/m; ${copperZero}`,
      confirmed: true,
    },
  ],
  ['tinned-copper', { ohmMm2PerMetre: null, inferredZeroC: 234.5, source: copperZero, confirmed: true }],
  [
    'aluminium',
    {
      ohmMm2PerMetre: 0.028264,
      inferredZeroC: 238.1,
      source: 'from memory: IEC 60889, 0.028264 ohm mm2/m; FAA AC 43.13-1B CHG 1, p. 11-22 (238.1 degrees)',
      confirmed: false,
    },
  ],
]);
