import type { Published } from '../wire/published.ts';

/** The largest protectors that the circular's chart puts before one gauge. */
export interface ProtectorRow {
  /** Gauge as it is spoken: `16`, `1/0`. */
  readonly awg: string;
  /** Amperes; null where the chart has no entry. */
  readonly breakerAmpere: number | null;
  readonly fuseAmpere: number;
}

/**
 * AC 43.13-1B table 11-3, which the circular itself calls conservative. The columns were matched by their order: the
 * breaker column has 11 entries, taken as those of the first 11 gauges.
 */
export const ac4313Table113: Published & { readonly rows: readonly ProtectorRow[] } = {
  source: 'FAA AC 43.13-1B CHG 1, table 11-3, p. 11-15',
  confirmed: true,
  rows: [
    { awg: '22', breakerAmpere: 5, fuseAmpere: 5 },
    { awg: '20', breakerAmpere: 7.5, fuseAmpere: 5 },
    { awg: '18', breakerAmpere: 10, fuseAmpere: 10 },
    { awg: '16', breakerAmpere: 15, fuseAmpere: 10 },
    { awg: '14', breakerAmpere: 20, fuseAmpere: 15 },
    { awg: '12', breakerAmpere: 30, fuseAmpere: 20 },
    { awg: '10', breakerAmpere: 40, fuseAmpere: 30 },
    { awg: '8', breakerAmpere: 50, fuseAmpere: 50 },
    { awg: '6', breakerAmpere: 80, fuseAmpere: 70 },
    { awg: '4', breakerAmpere: 100, fuseAmpere: 70 },
    { awg: '2', breakerAmpere: 125, fuseAmpere: 100 },
    { awg: '1', breakerAmpere: null, fuseAmpere: 150 },
    { awg: '1/0', breakerAmpere: null, fuseAmpere: 150 },
  ],
};
