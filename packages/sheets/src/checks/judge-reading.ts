import { type Bands, type Outcome, outcomeOf, readReadings } from '@loomproof/verify';

/** What one written reading says. */
export type JudgedReading =
  | { readonly is: 'read'; readonly outcome: Outcome /** Null for open. */; readonly ohm: number | null }
  | { readonly is: 'not done' | 'not reachable' }
  /** Not a reading; what to write instead. */
  | { readonly is: 'unreadable'; readonly help: string };

/**
 * Judges one reading as it is typed, by the reader that `diagnose` uses.
 *
 * @param written - such as `0.3 ohm` or `open`
 * @param leadZero - what the leads alone read, or nothing
 */
export function judgeReading(written: string, leadZero: string, bands: Bands): JudgedReading {
  const cells = ['a', 'b', written, leadZero].map((one) => `"${one.replaceAll('"', '""')}"`);
  const text = `from,to,reading,lead zero\n${cells.join(',')}\n`;
  const { value, diagnostics } = readReadings({ name: 'typed', text });
  const [row] = value ?? [];
  if (row === undefined) return { is: 'unreadable', help: diagnostics[0]?.help ?? '' };
  if (row.value.is === 'ohm')
    return { is: 'read', outcome: outcomeOf(row.value.ohm, bands), ohm: row.value.ohm };
  if (row.value.is === 'beyond')
    return row.value.ohm >= bands.openOhm
      ? { is: 'read', outcome: 'open', ohm: null }
      : { is: 'unreadable', help: 'it is beyond the range of the meter, so choose a higher range' };
  return row.value.is === 'open' ? { is: 'read', outcome: 'open', ohm: null } : { is: row.value.is };
}
