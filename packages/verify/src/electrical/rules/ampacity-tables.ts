import { ac4313Table119 } from '../wire/ac4313-table-11-9.ts';
import type { Published } from '../wire/published.ts';

/** The currents that one gauge may carry, in the order of the table's columns. */
export interface AmpacityRow {
  /** Gauge as it is spoken: `16`, `1/0`. */
  readonly awg: string;
  readonly ampere: readonly number[];
}

/** A published table of the currents that copper conductors may carry. */
export interface AmpacityTable extends Published {
  readonly id: '33cfr183-table-5' | 'engine-space-105' | 'ac4313-table-11-9';
  readonly title: string;
  /** For each column: rated temperature of the insulation in degrees Celsius, and where it holds if not anywhere. */
  readonly columns: readonly { readonly insulationC: number; readonly place: AmpacityPlace }[];
  /** Smallest gauge first. */
  readonly rows: readonly AmpacityRow[];
}

/** Where a current holds: `any` place that the table covers, or only inside or outside an engine space. */
export type AmpacityPlace = 'any' | 'outside-engine-space' | 'inside-engine-space';

/** 33 CFR 183.425 table 5: boats, surroundings at 30 degrees Celsius. */
export const cfr183Table5: AmpacityTable = {
  id: '33cfr183-table-5',
  title: '33 CFR 183.425 table 5, surroundings at 30 degrees Celsius',
  source: '33 CFR 183.425 table 5 (U.S. regulation)',
  confirmed: true,
  columns: [
    { insulationC: 60, place: 'any' },
    { insulationC: 75, place: 'any' },
    { insulationC: 80, place: 'any' },
    { insulationC: 90, place: 'any' },
    { insulationC: 105, place: 'any' },
    { insulationC: 125, place: 'any' },
    { insulationC: 200, place: 'any' },
  ],
  rows: [
    { awg: '18', ampere: [10, 10, 15, 20, 20, 25, 25] },
    { awg: '16', ampere: [15, 15, 20, 25, 25, 30, 35] },
    { awg: '14', ampere: [20, 20, 25, 30, 35, 40, 45] },
    { awg: '12', ampere: [25, 25, 35, 40, 45, 50, 55] },
    { awg: '10', ampere: [40, 40, 50, 55, 60, 70, 70] },
    { awg: '8', ampere: [55, 65, 70, 70, 80, 90, 100] },
    { awg: '6', ampere: [80, 95, 100, 100, 120, 125, 135] },
    { awg: '4', ampere: [105, 125, 130, 135, 160, 170, 180] },
    { awg: '3', ampere: [120, 145, 150, 155, 180, 195, 210] },
    { awg: '2', ampere: [140, 170, 175, 180, 210, 225, 240] },
    { awg: '1', ampere: [165, 195, 210, 210, 245, 265, 280] },
    { awg: '1/0', ampere: [195, 230, 245, 245, 285, 305, 325] },
    { awg: '2/0', ampere: [225, 265, 285, 285, 330, 355, 370] },
    { awg: '3/0', ampere: [260, 310, 330, 330, 385, 410, 430] },
    { awg: '4/0', ampere: [300, 360, 385, 385, 445, 475, 510] },
  ],
};

/** 105 degree insulation outside and inside an engine space, surroundings at 30 and at 50 degrees Celsius. */
export const engineSpace105: AmpacityTable = {
  id: 'engine-space-105',
  title: '105 degree insulation outside and inside engine spaces (ABYC E-11 practice)',
  source: '"Wire heat ratings", table E, jamestowndistributors.com (secondary text)',
  confirmed: true,
  columns: [
    { insulationC: 105, place: 'outside-engine-space' },
    { insulationC: 105, place: 'inside-engine-space' },
  ],
  rows: [
    { awg: '18', ampere: [20, 17] },
    { awg: '16', ampere: [25, 21] },
    { awg: '14', ampere: [35, 30] },
    { awg: '12', ampere: [45, 38] },
    { awg: '10', ampere: [60, 51] },
    { awg: '8', ampere: [80, 68] },
    { awg: '6', ampere: [120, 102] },
    { awg: '4', ampere: [160, 136] },
    { awg: '3', ampere: [180, 153] },
    { awg: '2', ampere: [210, 178] },
    { awg: '1', ampere: [245, 208] },
    { awg: '1/0', ampere: [285, 242] },
    { awg: '2/0', ampere: [330, 280] },
    { awg: '3/0', ampere: [385, 327] },
    { awg: '4/0', ampere: [445, 378] },
  ],
};

/** AC 43.13-1B table 11-9 as a table of currents; its conditions stand with {@link ac4313Table119}. */
export const ac4313Ampacity: AmpacityTable = {
  id: 'ac4313-table-11-9',
  title: 'AC 43.13-1B table 11-9, surroundings at 70 degrees Celsius, in a bundle, to 60 000 ft',
  source: ac4313Table119.source,
  confirmed: ac4313Table119.confirmed,
  columns: [
    { insulationC: 105, place: 'any' },
    { insulationC: 150, place: 'any' },
    { insulationC: 200, place: 'any' },
  ],
  rows: ac4313Table119.rows.map(({ awg, ampereAt105, ampereAt150, ampereAt200 }) => ({
    awg,
    ampere: [ampereAt105, ampereAt150, ampereAt200],
  })),
};
