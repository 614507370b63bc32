import * as z from 'zod';

/**
 * Has schemas checked by plain code instead of code that is compiled at run time: that pays only after many uses, and
 * here it was a fifth of the time that a small kit takes. To be called before any schema is made.
 */
export function usePlainParsers(): void {
  z.config({ jitless: true });
}
