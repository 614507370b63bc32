/** A unit in which conductor sizes are given. */
export type SizeUnit = 'mm2' | 'awg';

/**
 * The size of a conductor. `mm2` is its cross-section in mm², computed for a gauge; `raw` is the text as it
 * was written. Among gauges 2/0 is -1, 3/0 is -2 and 4/0 is -3.
 */
export type Size =
  | { readonly unit: 'mm2'; readonly mm2: number; readonly raw: string }
  | { readonly unit: 'awg'; readonly mm2: number; readonly awg: number; readonly raw: string };
