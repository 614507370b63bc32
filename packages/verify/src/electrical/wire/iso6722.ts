import type { Published } from './published.ts';

/** One size of single-core road-vehicle cable with a bare copper conductor. */
export interface Iso6722Row {
  readonly mm2: number;
  /** Greatest resistance, ohm per km at 20 degrees Celsius. */
  readonly ohmPerKm: number;
  /** Guide value for a single PVC cable with its conductor at 70 degrees, surroundings at 30 (DIN VDE 0298-4). */
  readonly ampereAt30: number;
  /** The same with the surroundings at 50 degrees. */
  readonly ampereAt50: number;
}

/** ISO 6722 sizes whose values were read in a public text, smallest first; others are left out, not guessed. */
export const iso6722: Published & { readonly rows: readonly Iso6722Row[] } = {
  source:
    'DIN ISO 6722-3 and DIN VDE 0298-4, as printed in "Autoelektrik Grundlagen", t3-pedia.de (one secondary text)',
  confirmed: true,
  rows: [
    { mm2: 1, ohmPerKm: 18.5, ampereAt30: 19, ampereAt50: 13.5 },
    { mm2: 1.5, ohmPerKm: 12.7, ampereAt30: 24, ampereAt50: 17 },
    { mm2: 2.5, ohmPerKm: 7.6, ampereAt30: 32, ampereAt50: 22.7 },
    { mm2: 4, ohmPerKm: 4.71, ampereAt30: 42, ampereAt50: 29.8 },
    { mm2: 6, ohmPerKm: 3.14, ampereAt30: 54, ampereAt50: 38.3 },
    { mm2: 10, ohmPerKm: 1.82, ampereAt30: 73, ampereAt50: 51.8 },
    { mm2: 16, ohmPerKm: 1.16, ampereAt30: 98, ampereAt50: 69.6 },
    { mm2: 25, ohmPerKm: 0.743, ampereAt30: 129, ampereAt50: 91.6 },
    { mm2: 35, ohmPerKm: 0.527, ampereAt30: 158, ampereAt50: 112 },
    { mm2: 50, ohmPerKm: 0.368, ampereAt30: 198, ampereAt50: 140 },
    { mm2: 70, ohmPerKm: 0.259, ampereAt30: 245, ampereAt50: 174 },
    { mm2: 95, ohmPerKm: 0.196, ampereAt30: 292, ampereAt50: 207 },
    { mm2: 120, ohmPerKm: 0.153, ampereAt30: 344, ampereAt50: 244 },
  ],
};
