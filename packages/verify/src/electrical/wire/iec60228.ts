import type { Published } from './published.ts';

/** Greatest resistances of one conductor size, in ohm per km at 20 degrees Celsius. */
export interface Iec60228Row {
  readonly mm2: number;
  /** Flexible, bare copper; class 6 has the same limits. */
  readonly class5Plain: number;
  /** Flexible, metal-coated copper. */
  readonly class5Coated: number;
  /** Solid and stranded, bare copper. */
  readonly class1And2Plain: number;
  /** Solid and stranded, metal-coated copper. */
  readonly class1And2Coated: number;
}

/** IEC 60228, greatest direct-current resistances, 0.5 to 50 mm2, smallest size first. */
export const iec60228: Published & { readonly rows: readonly Iec60228Row[] } = {
  source:
    'IEC 60228, as printed in "IEC 60228 DC resistance", mycableengineering.com, and etechnik-synergie.com',
  confirmed: true,
  rows: [
    { mm2: 0.5, class5Plain: 39.0, class5Coated: 40.1, class1And2Plain: 36.0, class1And2Coated: 36.7 },
    { mm2: 0.75, class5Plain: 26.0, class5Coated: 26.7, class1And2Plain: 24.5, class1And2Coated: 24.8 },
    { mm2: 1, class5Plain: 19.5, class5Coated: 20.0, class1And2Plain: 18.1, class1And2Coated: 18.2 },
    { mm2: 1.5, class5Plain: 13.3, class5Coated: 13.7, class1And2Plain: 12.1, class1And2Coated: 12.2 },
    { mm2: 2.5, class5Plain: 7.98, class5Coated: 8.21, class1And2Plain: 7.41, class1And2Coated: 7.56 },
    { mm2: 4, class5Plain: 4.95, class5Coated: 5.09, class1And2Plain: 4.61, class1And2Coated: 4.7 },
    { mm2: 6, class5Plain: 3.3, class5Coated: 3.39, class1And2Plain: 3.08, class1And2Coated: 3.11 },
    { mm2: 10, class5Plain: 1.91, class5Coated: 1.95, class1And2Plain: 1.83, class1And2Coated: 1.84 },
    { mm2: 16, class5Plain: 1.21, class5Coated: 1.24, class1And2Plain: 1.15, class1And2Coated: 1.16 },
    { mm2: 25, class5Plain: 0.78, class5Coated: 0.795, class1And2Plain: 0.727, class1And2Coated: 0.734 },
    { mm2: 35, class5Plain: 0.554, class5Coated: 0.565, class1And2Plain: 0.524, class1And2Coated: 0.529 },
    { mm2: 50, class5Plain: 0.386, class5Coated: 0.393, class1And2Plain: 0.387, class1And2Coated: 0.391 },
  ],
};
