import type { WireStrands } from '@loomproof/netlist';
import { ElectricalMisuseError } from '../electrical-misuse-error.ts';
import { ac4313Table119 } from './ac4313-table-11-9.ts';
import { awgToMm2 } from './awg.ts';
import { type ConductorMaterial, conductorMaterials } from './conductor-material.ts';
import { iec60228 } from './iec60228.ts';
import { iso6722 } from './iso6722.ts';
import type { Published } from './published.ts';
import { temperatureFactor } from './temperature-factor.ts';

/**
 * Which text gives the resistance per length at 20 degrees Celsius. `formula`: resistivity over area, as of a solid
 * conductor. `iec60228-class5` (flexible) and `iec60228-class1-2` (solid and stranded): the greatest allowed by the
 * standard. `iso6722`: the greatest allowed for road-vehicle cable. `ac4313-table-11-9`: tin-plated aircraft wire by
 * gauge. The strand class is part of the choice.
 */
export type ResistanceBasis = WireStrands;

/** One conductor. */
export interface Conductor {
  readonly mm2: number;
  /** Length of metal, one way. */
  readonly lengthMm: number;
  readonly material: ConductorMaterial;
  readonly basis: ResistanceBasis;
  /** Temperature of the conductor itself, degrees Celsius. */
  readonly temperatureC: number;
}

/** A resistance with where it comes from, or what the basis does not state: it is never interpolated. */
export type ConductorResistance =
  | (Published & { readonly kind: 'known'; readonly ohm: number; readonly ohmPerKmAt20: number })
  | { readonly kind: 'unknown'; readonly because: 'size-not-stated' | 'material-not-stated' };

/**
 * Computes the resistance of a conductor.
 *
 * @param conductor - the conductor.
 * @returns ohms at its temperature; or that the basis does not state its size or material.
 * @throws ElectricalMisuseError for an area that is not positive, a negative length or an impossible temperature.
 * @example
 * // 4 m out and 4 m back of flexible 1.5 mm2: 13.3 ohm/km.
 * conductorResistance({ mm2: 1.5, lengthMm: 8000, material: 'copper', basis: 'iec60228-class5', temperatureC: 20 });
 * // => known, 0.1064 ohm
 */
export function conductorResistance(conductor: Conductor): ConductorResistance {
  const { mm2, lengthMm, material, basis, temperatureC } = conductor;
  const where = 'verify/conductorResistance';
  if (!(mm2 > 0 && Number.isFinite(mm2))) throw new ElectricalMisuseError(where, `an area of ${mm2} mm2`);
  if (!(lengthMm >= 0 && Number.isFinite(lengthMm))) {
    throw new ElectricalMisuseError(where, `a length of ${lengthMm} mm`);
  }
  const factor = temperatureFactor(material, temperatureC);
  const stated = statedOhmPerKm(mm2, material, basis);
  if (typeof stated === 'string') return { kind: 'unknown', because: stated };
  const { ohmPerKm, source, confirmed } = stated;
  return {
    kind: 'known',
    ohm: ohmPerKm * factor * (lengthMm / 1e6),
    ohmPerKmAt20: ohmPerKm,
    source,
    confirmed,
  };
}

function statedOhmPerKm(
  mm2: number,
  material: ConductorMaterial,
  basis: ResistanceBasis,
): (Published & { readonly ohmPerKm: number }) | 'size-not-stated' | 'material-not-stated' {
  if (basis === 'formula') {
    const constants = conductorMaterials.get(material);
    if (constants === undefined || constants.ohmMm2PerMetre === null) return 'material-not-stated';
    const { source, confirmed } = constants;
    return { ohmPerKm: (1000 * constants.ohmMm2PerMetre) / mm2, source, confirmed };
  }
  if (basis === 'iso6722') {
    if (material !== 'copper') return 'material-not-stated';
    const row = iso6722.rows.find((candidate) => candidate.mm2 === mm2);
    if (row === undefined) return 'size-not-stated';
    return { ohmPerKm: row.ohmPerKm, source: iso6722.source, confirmed: iso6722.confirmed };
  }
  if (basis === 'ac4313-table-11-9') {
    if (material !== 'tinned-copper') return 'material-not-stated';
    const row = ac4313Table119.rows.find(({ awg }) => {
      const area = awgToMm2(awg);
      return area !== null && Math.abs(area - mm2) <= 5e-4 * area;
    });
    if (row === undefined) return 'size-not-stated';
    const { source, confirmed } = ac4313Table119;
    // A foot is 0.3048 m.
    return { ohmPerKm: row.ohmPer1000Ft / 0.3048, source, confirmed };
  }
  if (material === 'aluminium') return 'material-not-stated';
  const row = iec60228.rows.find((candidate) => candidate.mm2 === mm2);
  if (row === undefined) return 'size-not-stated';
  const plain = material === 'copper';
  const flexible = plain ? row.class5Plain : row.class5Coated;
  const stranded = plain ? row.class1And2Plain : row.class1And2Coated;
  return {
    ohmPerKm: basis === 'iec60228-class5' ? flexible : stranded,
    source: iec60228.source,
    confirmed: iec60228.confirmed,
  };
}
