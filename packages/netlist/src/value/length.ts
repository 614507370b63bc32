/** A unit in which lengths are given. */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

/** A length or a diameter. `mm` is in millimetres whatever the unit it was given in; `raw` is the text as written. */
export interface Length {
  readonly mm: number;
  readonly unit: LengthUnit;
  readonly raw: string;
}
