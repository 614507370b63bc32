import type { Io } from '../io/io.ts';

/** A colour that helps to find a word; the word alone says the same. */
export type Paint = (text: string, colour: 'green' | 'red' | 'yellow' | 'bold') => string;

const codes = { green: '32', red: '31', yellow: '33', bold: '1' } as const;

/**
 * Colours only for a terminal that wants them: not into a file or a pipe, and not where `NO_COLOR` is set (to
 * anything but an empty text, see no-color.org) or `TERM` is `dumb`.
 */
export function paintFor(io: Pick<Io, 'isTerminal' | 'env'>): Paint {
  const wanted = io.isTerminal && (io.env['NO_COLOR'] ?? '') === '' && io.env['TERM'] !== 'dumb';
  if (!wanted) return (text) => text;
  return (text, colour) => `\u001b[${codes[colour]}m${text}\u001b[0m`;
}
