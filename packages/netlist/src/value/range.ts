/**
 * The sizes or diameters that a part takes, both ends included, `min` at most `max`. `mm2`: cross-sections
 * in mm², whatever unit they were given in; `mm`: diameters or lengths in mm. `raw` is the text as written.
 */
export interface Range {
  readonly unit: 'mm2' | 'mm';
  readonly min: number;
  readonly max: number;
  readonly raw: string;
}
