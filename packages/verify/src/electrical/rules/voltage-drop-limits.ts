import type { Published } from '../wire/published.ts';

/** A published limit of the volts lost on the way, or of the resistance that loses them. */
export interface VoltageDropLimit extends Published {
  readonly id: string;
  /** What it is for, in words. */
  readonly context: string;
  /** Nominal volts of the system that it is stated for; null for any. */
  readonly nominalVolt: number | null;
  readonly value: number;
  readonly unit: 'percent' | 'volt' | 'ohm';
}

/**
 * The limits known to this program. Limits stated for one piece of equipment always take precedence over them
 * ("Voltage drop testing", apextechnation.com).
 */
export const voltageDropLimits: readonly VoltageDropLimit[] = [
  {
    id: 'V1',
    context: 'feeders, bilge blowers, electronics, navigation lights (boat)',
    nominalVolt: null,
    value: 3,
    unit: 'percent',
    source:
      '"Wire size charts", tables IX and X from ABYC E-11, suremarineservice.com, marincofaq.wordpress.com',
    confirmed: true,
  },
  {
    id: 'V2',
    context: 'other lighting and non-critical (boat)',
    nominalVolt: null,
    value: 10,
    unit: 'percent',
    source: '"Wire size charts", tables IX and X from ABYC E-11, suremarineservice.com',
    confirmed: true,
  },
  {
    id: 'V3',
    context:
      'panel mains, navigation lights, bilge blowers, bilge pumps, safety equipment (small craft d.c.)',
    nominalVolt: null,
    value: 3,
    unit: 'percent',
    source: 'ISO 10133:2012 excerpt, lateststandardsdownload.com',
    confirmed: true,
  },
  {
    id: 'V4',
    context: 'other circuits (small craft d.c., ISO 10133)',
    nominalVolt: null,
    value: 10,
    unit: 'percent',
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'V5',
    context: 'main power wires, generator or battery to bus (aircraft)',
    nominalVolt: null,
    value: 2,
    unit: 'percent',
    source: 'FAA handbook text, flight-mechanic.com',
    confirmed: true,
  },
  {
    id: 'V6',
    context: 'load circuit, continuous (aircraft, AC 43.13-1B table 11-6)',
    nominalVolt: 14,
    value: 0.5,
    unit: 'volt',
    source:
      'from memory; 0.5, 1, 4, 7 V appear as limits in tables 11-7 and 11-8 of FAA AC 43.13-1B CHG 1 pp. 11-22, 11-26',
    confirmed: false,
  },
  {
    id: 'V7',
    context: 'load circuit, continuous (aircraft, table 11-6)',
    nominalVolt: 28,
    value: 1,
    unit: 'volt',
    source: 'from memory; the pairing of volts and limits of FAA AC 43.13-1B table 11-6 was not read',
    confirmed: false,
  },
  {
    id: 'V8',
    context: 'load circuit, continuous (aircraft, table 11-6)',
    nominalVolt: 115,
    value: 4,
    unit: 'volt',
    source: 'from memory; the pairing of volts and limits of FAA AC 43.13-1B table 11-6 was not read',
    confirmed: false,
  },
  {
    id: 'V9',
    context: 'load circuit, continuous (aircraft, table 11-6)',
    nominalVolt: 200,
    value: 7,
    unit: 'volt',
    source: 'from memory; the pairing of volts and limits of FAA AC 43.13-1B table 11-6 was not read',
    confirmed: false,
  },
  {
    id: 'V10',
    context: 'load circuit, intermittent (aircraft, table 11-6)',
    nominalVolt: 14,
    value: 1,
    unit: 'volt',
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'V11',
    context: 'load circuit, intermittent (aircraft, table 11-6)',
    nominalVolt: 28,
    value: 2,
    unit: 'volt',
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'V12',
    context: 'load circuit, intermittent (aircraft, table 11-6)',
    nominalVolt: 115,
    value: 8,
    unit: 'volt',
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'V13',
    context: 'load circuit, intermittent (aircraft, table 11-6)',
    nominalVolt: 200,
    value: 14,
    unit: 'volt',
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'V14',
    context: 'ground return through structure, any device to battery or generator ground (aircraft)',
    nominalVolt: null,
    value: 0.005,
    unit: 'ohm',
    source: 'FAA handbook text, flight-mechanic.com',
    confirmed: true,
  },
  {
    id: 'V15',
    context: 'drop across a ground path (vehicle service rule)',
    nominalVolt: 12,
    value: 0.1,
    unit: 'volt',
    source: '"Voltage drop testing", apextechnation.com',
    confirmed: true,
  },
  {
    id: 'V16',
    context: 'drop along a wire or cable (vehicle service rule)',
    nominalVolt: 12,
    value: 0.2,
    unit: 'volt',
    source: '"Voltage drop testing", apextechnation.com',
    confirmed: true,
  },
  {
    id: 'V17',
    context: 'drop across a switch (vehicle service rule)',
    nominalVolt: 12,
    value: 0.3,
    unit: 'volt',
    source: '"Voltage drop testing", apextechnation.com',
    confirmed: true,
  },
  {
    id: 'V18',
    context: 'high-current (starter) circuit total (vehicle service rule)',
    nominalVolt: 12,
    value: 0.5,
    unit: 'volt',
    source: '"Voltage drop testing", apextechnation.com',
    confirmed: true,
  },
];
