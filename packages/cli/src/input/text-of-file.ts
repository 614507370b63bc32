import { type Diagnostic, makeDiagnostic, type Source } from '@loomproof/netlist';
import type { FileReading } from '../io/io.ts';

/** A file as text with the fingerprint that digests are made from, or what is wrong with it. */
export type TextOfFile =
  | { readonly source: Source; readonly bytes: Uint8Array; readonly diagnostic: null }
  | { readonly source: null; readonly bytes: null; readonly diagnostic: Diagnostic };

const words = {
  missing: { code: 'file-missing', message: 'there is no file', help: 'see whether the name is typed right' },
  directory: { code: 'file-is-folder', message: 'this is a folder', help: 'name the file in it' },
  denied: { code: 'file-denied', message: 'it is not allowed to read', help: null },
  'too large': { code: 'file-too-large', message: 'too large to be read:', help: null },
  failed: { code: 'file-failed', message: 'the system could not read', help: null },
} as const;

/**
 * Makes text of a file that was read.
 *
 * @param name - the file's name as it is shown
 * @param reading - what reading it gave
 * @param decoding - `exact` refuses what is not UTF-8; `marked` puts U+FFFD there, which the reader of tables reports
 * @returns the text, or a diagnostic without place
 */
export function textOfFile(name: string, reading: FileReading, decoding: 'exact' | 'marked'): TextOfFile {
  if (!reading.ok) {
    const { code, message, help } = words[reading.why];
    return refuse(code, `${message} \`${name}\``, help);
  }
  const { bytes } = reading;
  const [first, second] = bytes;
  const wide = (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
  if (wide) return refuse('file-not-text', `\`${name}\` is in UTF-16`, 'save it as UTF-8');
  if (bytes.includes(0)) return refuse('file-not-text', `\`${name}\` is no text file`, null);
  try {
    // The byte order mark stays, so that offsets of the text and of the file agree.
    const text = new TextDecoder('utf-8', { fatal: decoding === 'exact', ignoreBOM: true }).decode(bytes);
    return { source: { name, text }, bytes, diagnostic: null };
  } catch {
    return refuse('file-not-text', `\`${name}\` is not in UTF-8`, 'save it as UTF-8');
  }
}

function refuse(code: string, message: string, help: string | null): TextOfFile {
  return { source: null, bytes: null, diagnostic: makeDiagnostic({ code, message, help }) };
}
