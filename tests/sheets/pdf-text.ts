import { inflateSync } from 'node:zlib';

/** A page of a PDF: its paper in points and every text on it, in the order in which it was drawn. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly text: string;
}

/**
 * The pages of a PDF as Chromium prints them: plain objects, streams that are deflated or not, and fonts that tell the
 * letters of their glyphs (ISO 32000-1, 9.10.3). It is no reader for PDFs of other programs.
 */
export function pdfPages(bytes: Buffer): readonly PdfPage[] {
  const objects = objectsOf(bytes);
  const at = (number: string | undefined): PdfObject => objects.get(number ?? '') ?? { head: '', body: null };
  const kids = (head: string): readonly string[] =>
    [...(/\/Kids\s*\[([^\]]*)\]/.exec(head)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map(([, one = '']) => one);
  const pages: PdfPage[] = [];
  const catalog = [...objects.values()].find(({ head }) => /\/Type\s*\/Catalog/.test(head))?.head ?? '';
  const open = kids(at(/\/Pages (\d+) 0 R/.exec(catalog)?.[1]).head);
  const walk = [...open].reverse();
  while (walk.length > 0) {
    const { head } = at(walk.pop());
    if (/\/Type\s*\/Pages\b/.test(head)) {
      walk.push(...[...kids(head)].reverse());
      continue;
    }
    const [, width = '0', height = '0'] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(head) ?? [];
    const fonts = new Map(
      [...(/\/Font\s*<<([\s\S]*?)>>/.exec(head)?.[1] ?? '').matchAll(/\/(\w+) (\d+) 0 R/g)].map(
        ([, name = '', number = '']) => [
          name,
          lettersOf(at(/\/ToUnicode (\d+) 0 R/.exec(at(number).head)?.[1])),
        ],
      ),
    );
    const content = at(/\/Contents (\d+) 0 R/.exec(head)?.[1]).body?.toString('latin1') ?? '';
    pages.push({ width: Number(width), height: Number(height), text: textOf(content, fonts) });
  }
  return pages;
}

interface PdfObject {
  readonly head: string;
  readonly body: Buffer | null;
}

function objectsOf(bytes: Buffer): ReadonlyMap<string, PdfObject> {
  const text = bytes.toString('latin1');
  const found = new Map<string, PdfObject>();
  const start = /(?:^|\n)(\d+) 0 obj\s/g;
  for (let match = start.exec(text); match !== null; match = start.exec(text)) {
    const from = match.index + match[0].length;
    const streamAt = text.indexOf('stream', from);
    const endAt = text.indexOf('endobj', from);
    if (streamAt < 0 || streamAt > endAt) {
      found.set(match[1] ?? '', { head: text.slice(from, endAt), body: null });
      continue;
    }
    const head = text.slice(from, streamAt);
    const length = Number(/\/Length (\d+)/.exec(head)?.[1]);
    const bodyAt = streamAt + (text[streamAt + 6] === '\r' ? 8 : 7);
    const raw = bytes.subarray(bodyAt, bodyAt + length);
    found.set(match[1] ?? '', { head, body: head.includes('/FlateDecode') ? inflateSync(raw) : raw });
    start.lastIndex = bodyAt + length;
  }
  return found;
}

/** The letters of a font by the number of the glyph. */
function lettersOf({ body }: PdfObject): ReadonlyMap<number, string> {
  const letters = new Map<number, string>();
  const text = body?.toString('latin1') ?? '';
  const letter = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, list = ''] of text.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, glyph = '', hex = ''] of list.matchAll(/<(\w+)>\s*<(\w+)>/g))
      letters.set(Number.parseInt(glyph, 16), letter(hex));
  for (const [, list = ''] of text.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, first = '', last = '', hex = ''] of list.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      const from = Number.parseInt(first, 16);
      for (let glyph = from; glyph <= Number.parseInt(last, 16); glyph += 1)
        letters.set(glyph, String.fromCodePoint(Number.parseInt(hex, 16) + glyph - from));
    }
  return letters;
}

function textOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<number, string>>): string {
  let letters: ReadonlyMap<number, string> = new Map();
  let text = '';
  for (const [, font, hex, end] of content.matchAll(/\/(\w+) [\d.]+ Tf|<([0-9A-Fa-f]+)>|\b(ET)\b/g)) {
    if (font !== undefined) letters = fonts.get(font) ?? letters;
    else if (end !== undefined) text += ' ';
    else
      for (const [glyph] of (hex ?? '').matchAll(/.{4}/g))
        text += letters.get(Number.parseInt(glyph, 16)) ?? '\ufffd';
  }
  return text;
}
