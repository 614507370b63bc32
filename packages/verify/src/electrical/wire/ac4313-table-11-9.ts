import type { Published } from './published.ts';

/** One gauge of tin-plated aircraft wire. */
export interface Ac4313WireRow {
  /** Gauge as it is spoken: `16`, `1/0`. */
  readonly awg: string;
  /** Greatest resistance, ohm per 1000 ft at 20 degrees Celsius. */
  readonly ohmPer1000Ft: number;
  readonly circularMil: number;
  /** Amperes by the conductor's rated temperature in degrees Celsius. */
  readonly ampereAt105: number;
  readonly ampereAt150: number;
  readonly ampereAt200: number;
}

/**
 * AC 43.13-1B table 11-9, smallest gauge first. The currents hold for surroundings at 70 degrees, a bundle of at
 * least 33 wires (24 to 10 AWG) or 9 wires (8 AWG and larger) loaded to at most 20 %, up to 60 000 ft.
 */
export const ac4313Table119: Published & { readonly rows: readonly Ac4313WireRow[] } = {
  source: 'FAA AC 43.13-1B CHG 1, table 11-9, p. 11-23',
  confirmed: true,
  rows: [
    { awg: '24', ohmPer1000Ft: 28.4, circularMil: 475, ampereAt105: 2.5, ampereAt150: 4, ampereAt200: 5 },
    { awg: '22', ohmPer1000Ft: 16.2, circularMil: 755, ampereAt105: 3, ampereAt150: 5, ampereAt200: 6 },
    { awg: '20', ohmPer1000Ft: 9.88, circularMil: 1216, ampereAt105: 4, ampereAt150: 7, ampereAt200: 9 },
    { awg: '18', ohmPer1000Ft: 6.23, circularMil: 1900, ampereAt105: 6, ampereAt150: 9, ampereAt200: 12 },
    { awg: '16', ohmPer1000Ft: 4.81, circularMil: 2426, ampereAt105: 7, ampereAt150: 11, ampereAt200: 14 },
    { awg: '14', ohmPer1000Ft: 3.06, circularMil: 3831, ampereAt105: 10, ampereAt150: 14, ampereAt200: 18 },
    { awg: '12', ohmPer1000Ft: 2.02, circularMil: 5874, ampereAt105: 13, ampereAt150: 19, ampereAt200: 25 },
    { awg: '10', ohmPer1000Ft: 1.26, circularMil: 9354, ampereAt105: 17, ampereAt150: 26, ampereAt200: 32 },
    { awg: '8', ohmPer1000Ft: 0.7, circularMil: 16983, ampereAt105: 38, ampereAt150: 57, ampereAt200: 71 },
    { awg: '6', ohmPer1000Ft: 0.44, circularMil: 26818, ampereAt105: 50, ampereAt150: 76, ampereAt200: 97 },
    { awg: '4', ohmPer1000Ft: 0.28, circularMil: 42615, ampereAt105: 68, ampereAt150: 103, ampereAt200: 133 },
    { awg: '2', ohmPer1000Ft: 0.18, circularMil: 66500, ampereAt105: 95, ampereAt150: 141, ampereAt200: 179 },
    {
      awg: '1',
      ohmPer1000Ft: 0.15,
      circularMil: 81700,
      ampereAt105: 113,
      ampereAt150: 166,
      ampereAt200: 210,
    },
    {
      awg: '1/0',
      ohmPer1000Ft: 0.12,
      circularMil: 104500,
      ampereAt105: 128,
      ampereAt150: 192,
      ampereAt200: 243,
    },
    {
      awg: '2/0',
      ohmPer1000Ft: 0.09,
      circularMil: 133000,
      ampereAt105: 147,
      ampereAt150: 222,
      ampereAt200: 285,
    },
    {
      awg: '3/0',
      ohmPer1000Ft: 0.07,
      circularMil: 166500,
      ampereAt105: 172,
      ampereAt150: 262,
      ampereAt200: 335,
    },
    {
      awg: '4/0',
      ohmPer1000Ft: 0.06,
      circularMil: 210900,
      ampereAt105: 204,
      ampereAt150: 310,
      ampereAt200: 395,
    },
  ],
};
