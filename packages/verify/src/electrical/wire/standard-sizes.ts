import { abycE11 } from './abyc-e11.ts';
import { ac4313Table119 } from './ac4313-table-11-9.ts';
import { awgLabel, awgToMm2 } from './awg.ts';
import { circularMilToMm2 } from './circular-mil.ts';
import { type ConductorMaterial, conductorMaterials } from './conductor-material.ts';
import { iec60228 } from './iec60228.ts';
import { iso6722 } from './iso6722.ts';
import type { Published } from './published.ts';

/** A family of sizes that conductors are sold in, with the text that gives their resistance. */
export type SizeFamily = 'awg' | 'iec60228-class5' | 'iso6722' | 'ac4313-table-11-9' | 'abyc-e11';

/** One size of a family. */
export interface StandardSize extends Published {
  readonly family: SizeFamily;
  /** `16 AWG` or `1.5 mm2`. */
  readonly label: string;
  readonly mm2: number;
  readonly material: ConductorMaterial;
  readonly ohmPerKm: number;
  /**
   * True when the resistance is that at 20 degrees Celsius and has to be corrected; false for the ABYC rule, whose
   * constant holds as it stands.
   */
  readonly at20C: boolean;
}

const metresPerFoot = 0.3048;

/**
 * Lists the sizes of a family, smallest first.
 *
 * @param family - `awg`: solid round annealed copper, 40 to 4/0, by formula. `iec60228-class5`: flexible bare copper.
 * `iso6722`: road-vehicle cable, only the sizes read in a public text. `ac4313-table-11-9`: tin-plated aircraft wire.
 * `abyc-e11`: boat wire of the least allowed area.
 * @returns the sizes, each with its source.
 */
export function standardSizes(family: SizeFamily): readonly StandardSize[] {
  switch (family) {
    case 'awg':
      return awgSizes();
    case 'iec60228-class5':
      return iec60228.rows.map(({ mm2, class5Plain }) => ({
        family,
        label: `${mm2} mm2`,
        mm2,
        material: 'copper',
        ohmPerKm: class5Plain,
        at20C: true,
        source: iec60228.source,
        confirmed: iec60228.confirmed,
      }));
    case 'iso6722':
      return iso6722.rows.map(({ mm2, ohmPerKm }) => ({
        family,
        label: `${mm2} mm2`,
        mm2,
        material: 'copper',
        ohmPerKm,
        at20C: true,
        source: iso6722.source,
        confirmed: iso6722.confirmed,
      }));
    case 'ac4313-table-11-9':
      return ac4313Table119.rows.map(({ awg, circularMil, ohmPer1000Ft }) => ({
        family,
        label: `${awg} AWG`,
        mm2: circularMilToMm2(circularMil),
        material: 'tinned-copper',
        ohmPerKm: ohmPer1000Ft / metresPerFoot,
        at20C: true,
        source: ac4313Table119.source,
        confirmed: ac4313Table119.confirmed,
      }));
    case 'abyc-e11':
      return abycE11.rows.map(({ awg, circularMil }) => ({
        family,
        label: `${awg} AWG`,
        mm2: circularMilToMm2(circularMil),
        material: 'copper',
        ohmPerKm: (abycE11.ohmCircularMilPerFoot / circularMil) * (1000 / metresPerFoot),
        at20C: false,
        source: abycE11.source,
        confirmed: abycE11.confirmed,
      }));
  }
}

function awgSizes(): readonly StandardSize[] {
  const copper = conductorMaterials.get('copper');
  const sizes: StandardSize[] = [];
  for (let gauge = 40; gauge >= -3; gauge--) {
    const awg = awgLabel(gauge);
    const mm2 = awgToMm2(awg) ?? Number.NaN;
    sizes.push({
      family: 'awg',
      label: `${awg} AWG`,
      mm2,
      material: 'copper',
      ohmPerKm: (1000 * (copper?.ohmMm2PerMetre ?? Number.NaN)) / mm2,
      at20C: true,
      source: `ASTM B258 diameters, solid conductor; ${copper?.source ?? ''}`,
      confirmed: true,
    });
  }
  return sizes;
}
