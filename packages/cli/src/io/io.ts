/** A file as read, or why it could not be. */
export type FileReading =
  | { readonly ok: true; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly why: 'missing' | 'directory' | 'denied' | 'too large' | 'failed' };

/** Everything that the program needs of the world around it, so that it can be run without one. */
export interface Io {
  /** Reads a whole file of at most `limit` bytes; never throws. */
  readonly read: (path: string, limit: number) => FileReading;
  /** Whether there is anything at a path. */
  readonly exists: (path: string) => boolean;
  /** Makes a folder where there is none, with those above it; false when that cannot be. */
  readonly makeFolder: (path: string) => boolean;
  /** Puts a whole file in place of what was there, or changes nothing and gives the reason. */
  readonly write: (path: string, text: string) => { readonly ok: boolean; readonly why: string };
  /** Results go here. */
  readonly out: (text: string) => void;
  /** Everything else goes here. */
  readonly err: (text: string) => void;
  /** Whether results go to a terminal. */
  readonly isTerminal: boolean;
  /** Whether everything else goes to a terminal, where lines may be written over. */
  readonly isErrorTerminal: boolean;
  /** Calls back when the user wants the program to stop; gives what ends the listening. */
  readonly onInterrupt: (stop: () => void) => () => void;
  readonly env: Readonly<Record<string, string | undefined>>;
}
