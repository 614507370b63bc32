import type { Published } from './published.ts';

/** A gauge with the least area that ABYC E-11 lets it have. */
export interface AbycAreaRow {
  readonly awg: string;
  readonly circularMil: number;
}

/**
 * The sizing rule of ABYC E-11: circular mils = 10.75 * amperes * feet out and back / volts lost. The constant and the
 * areas are partly from memory; together they give 75 of the 76 cells of the printed 12 V, 3 % table.
 */
export const abycE11: Published & {
  readonly ohmCircularMilPerFoot: number;
  readonly rows: readonly AbycAreaRow[];
} = {
  source: 'ABYC E-11: constant 10.75 and least areas partly from memory',
  confirmed: false,
  ohmCircularMilPerFoot: 10.75,
  rows: [
    { awg: '18', circularMil: 1537 },
    { awg: '16', circularMil: 2336 },
    { awg: '14', circularMil: 3702 },
    { awg: '12', circularMil: 5833 },
    { awg: '10', circularMil: 9343 },
    { awg: '8', circularMil: 14810 },
    { awg: '6', circularMil: 25910 },
    { awg: '4', circularMil: 37360 },
    { awg: '2', circularMil: 62450 },
    { awg: '1', circularMil: 77790 },
    { awg: '1/0', circularMil: 98980 },
    { awg: '2/0', circularMil: 125100 },
  ],
};
