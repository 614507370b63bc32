import { compareText, sha256 } from '../text/index.ts';

/**
 * The digest that ties an output to its inputs: for a kit without tables the SHA-256 of the kit file itself, so that
 * any other program can check it; with tables the SHA-256 of a list in UTF-8 with one line `<SHA-256>  <name>` a file,
 * the kit file first under the name `kit`, then each table under the name that the kit file uses, sorted.
 *
 * @param kit - the kit file, as bytes or as its text
 * @param tables - each table by name; also the kit that this one stands on, and what that one is made of
 * @returns 64 hexadecimal digits
 */
export function inputDigest(
  kit: Uint8Array | string,
  tables: ReadonlyMap<string, Uint8Array | string>,
): string {
  if (tables.size === 0) return sha256(kit);
  const sorted = [...tables].sort(([a], [b]) => compareText(a, b));
  const lines = [['kit', kit] as const, ...sorted].map(([name, content]) => `${sha256(content)}  ${name}\n`);
  return sha256(lines.join(''));
}

/** The first twelve digits, for people. */
export function shortDigest(digest: string): string {
  return digest.slice(0, 12);
}
