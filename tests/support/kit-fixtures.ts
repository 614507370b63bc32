import { foldersIn } from './fixture-folder.ts';

/** Folders of the fixtures that hold no kit of their own. */
const notKits: ReadonlySet<string> = new Set(['broken', 'wrong-input']);

/** Names of the complete kits, each a folder with a `kit.yaml`. */
export const kitNames: readonly string[] = foldersIn('.').filter((name) => !notKits.has(name));

/** Path of a kit file below the fixtures. */
export function kitPath(name: string): string {
  return `${name}/kit.yaml`;
}
