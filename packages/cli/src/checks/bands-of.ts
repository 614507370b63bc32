import { type Diagnostic, makeDiagnostic } from '@loomproof/netlist';
import { type Bands, defaultBands, parseOhms } from '@loomproof/verify';

/** The limits of readings as typed; null where the default holds. */
export interface BandOptions {
  readonly whole: string | null;
  readonly open: string | null;
}

/**
 * The limits of readings from what was typed.
 *
 * @returns the default bands with the limits that were given, and a diagnostic for each that cannot be used
 */
export function bandsOf({ whole, open }: BandOptions): {
  readonly value: Bands;
  readonly diagnostics: readonly Diagnostic[];
} {
  const diagnostics: Diagnostic[] = [];
  const limit = (text: string | null, usual: number, option: string): number => {
    if (text === null) return usual;
    const ohm = /\d$/u.test(text) ? null : parseOhms(text);
    if (ohm !== null && ohm > 0) return ohm;
    diagnostics.push(
      makeDiagnostic({
        code: 'bands',
        message: `\`${text}\` after \`${option}\` is no resistance`,
        help: 'write ohms with their unit, such as `2 ohm` or `10 Mohm`',
      }),
    );
    return usual;
  };
  const value: Bands = {
    ...defaultBands,
    wholeOhm: limit(whole, defaultBands.wholeOhm, '--whole'),
    openOhm: limit(open, defaultBands.openOhm, '--open'),
  };
  if (value.wholeOhm * value.loadFactor >= value.openOhm)
    diagnostics.push(
      makeDiagnostic({
        code: 'bands',
        message: 'the limit for open lies too near the one for whole',
        help: `it has to be more than ${value.loadFactor} times as much`,
      }),
    );
  return { value, diagnostics };
}
