import { ElectricalMisuseError } from '../electrical-misuse-error.ts';

/** A rule of `overcurrentRules` that sets the largest protector before a conductor. */
export type ProtectorRule = 'O4' | 'O5' | 'O6' | 'O7';

/** What the limit depends on. */
export interface ProtectorQuestion {
  readonly rule: ProtectorRule;
  /** What the conductor may carry by the table that belongs to the rule. */
  readonly ampacity: number;
  /** Volts of the circuit. */
  readonly systemVolt: number;
  /** Ratings that are made, in any order; O5 and O6 ask for them. */
  readonly standardRatings: readonly number[];
}

/** The largest rating; `inclusive` false when the rating has to stay below it. */
export type ProtectorLimit =
  | { readonly kind: 'limit'; readonly ampere: number; readonly inclusive: boolean }
  | { readonly kind: 'does-not-apply' };

/**
 * Computes the largest fuse or breaker that a rule allows before a conductor.
 *
 * - O4 (33 CFR 183.455, below 50 V): 150 % of the table value.
 * - O5 (33 CFR 183.455, 50 V and above) and O6 (46 CFR 183.380): the table value; where no rating is made for exactly
 *   that, the next larger one, if it is at most 150 %.
 * - O7 (AC 43.13-1B para 11-48): less than the conductor carries.
 *
 * @param question - the rule and what it depends on.
 * @returns the limit; or that the rule is for another range of volts.
 * @throws ElectricalMisuseError for amperes or volts that are not positive.
 * @example
 * // 16 AWG with 105 degree insulation carries 25 A: a 35 A fuse is allowed, 40 A is not.
 * protectorLimit({ rule: 'O4', ampacity: 25, systemVolt: 12, standardRatings: [] }); // => 37.5 A, inclusive
 */
export function protectorLimit(question: ProtectorQuestion): ProtectorLimit {
  const { rule, ampacity, systemVolt, standardRatings } = question;
  for (const value of [ampacity, systemVolt, ...standardRatings]) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw new ElectricalMisuseError(
        'verify/protectorLimit',
        `a value of ${value}, more than zero is wanted`,
      );
    }
  }
  if (rule === 'O4') {
    if (systemVolt >= 50) return { kind: 'does-not-apply' };
    return { kind: 'limit', ampere: 1.5 * ampacity, inclusive: true };
  }
  if (rule === 'O7') return { kind: 'limit', ampere: ampacity, inclusive: false };
  if (rule === 'O5' && systemVolt < 50) return { kind: 'does-not-apply' };
  const next = standardRatings.reduce(
    (least, rating) => (rating >= ampacity && rating < least ? rating : least),
    Number.POSITIVE_INFINITY,
  );
  return { kind: 'limit', ampere: next <= 1.5 * ampacity ? next : ampacity, inclusive: true };
}

/**
 * Tells whether a protector keeps a limit.
 *
 * @param limit - the limit.
 * @param ratingAmpere - the protector's rating.
 * @returns true when it does; null when the rule does not apply.
 */
export function keepsProtectorLimit(limit: ProtectorLimit, ratingAmpere: number): boolean | null {
  if (limit.kind === 'does-not-apply') return null;
  return limit.inclusive ? ratingAmpere <= limit.ampere : ratingAmpere < limit.ampere;
}
