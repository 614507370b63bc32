import { displayWidth } from './display-width.ts';
import { lineStarts } from './line-starts.ts';
import { positionAt } from './position-at.ts';
import type { Span } from './source.ts';
import { visibleText } from './visible-text.ts';

/** The most columns of a source line that a code frame shows, the marks for what was cut among them. */
export const widestFrame = 110;

// How much of the line before the span is kept in view when both sides do not fit.
const leadColumns = 40;
const tab = '    ';
const cutMark = '…';

/** One character of the source as it is shown. */
interface Glyph {
  readonly text: string;
  readonly width: number;
  readonly start: number;
  readonly end: number;
}

/** A source line cut to size, and the carets below it. Both start at the same column. */
export interface CodeFrame {
  readonly line: string;
  readonly carets: string;
}

function glyphAt(character: string, start: number): Glyph {
  const end = start + character.length;
  if (character === '\t') return { text: tab, width: tab.length, start, end };
  const text = visibleText(character);
  return { text, width: text === character ? displayWidth(character) : text.length, start, end };
}

function isLineBreak(character: string): boolean {
  return character === '\n' || character === '\r';
}

function lineBounds(span: Span): { readonly first: number; readonly near: number; readonly far: number } {
  const { text } = span.source;
  const start = Math.min(Math.max(span.start, 0), text.length);
  const first = lineStarts(span.source)[positionAt(span.source, start).line - 1] ?? 0;
  // Only the neighbourhood of the span is looked at: a line may be megabytes long.
  let near = Math.max(first, start - 2 * widestFrame);
  const splitsPair = near > first && /^[\udc00-\udfff]/.test(text.charAt(near));
  if (splitsPair) near -= 1;
  return { first, near, far: Math.min(text.length, start + 4 * widestFrame) };
}

function glyphsAround(span: Span): {
  readonly glyphs: readonly Glyph[];
  readonly before: boolean;
  readonly after: boolean;
} {
  const { text } = span.source;
  const { first, near, far } = lineBounds(span);
  const glyphs: Glyph[] = [];
  let offset = near;
  while (offset < far) {
    const character = String.fromCodePoint(text.codePointAt(offset) ?? 0);
    if (isLineBreak(character)) return { glyphs, before: near > first, after: false };
    glyphs.push(glyphAt(character, offset));
    offset += character.length;
  }
  const next = text.charAt(offset);
  return { glyphs, before: near > first, after: next !== '' && !isLineBreak(next) };
}

function totalWidth(glyphs: readonly Glyph[]): number {
  return glyphs.reduce((sum, glyph) => sum + glyph.width, 0);
}

/** Chooses which glyphs to show: the span first, then some of what comes before, then what comes after. */
function windowOf(
  glyphs: readonly Glyph[],
  from: number,
  to: number,
): { readonly left: number; readonly right: number } {
  let budget = widestFrame - 2 * cutMark.length;
  let left = from;
  let right = from;
  const growRight = (limit: number): void => {
    for (let glyph = glyphs[right]; glyph !== undefined && right < limit; glyph = glyphs[right]) {
      if (glyph.width > budget) return;
      budget -= glyph.width;
      right += 1;
    }
  };
  const growLeft = (columns: number): void => {
    let allowed = Math.min(columns, budget);
    for (let glyph = glyphs[left - 1]; glyph !== undefined; glyph = glyphs[left - 1]) {
      if (glyph.width > allowed) return;
      allowed -= glyph.width;
      budget -= glyph.width;
      left -= 1;
    }
  };
  growRight(to);
  growLeft(leadColumns);
  growRight(glyphs.length);
  growLeft(budget);
  return { left, right };
}

function firstIndex(glyphs: readonly Glyph[], matches: (glyph: Glyph) => boolean): number {
  const index = glyphs.findIndex(matches);
  return index === -1 ? glyphs.length : index;
}

/**
 * The source line of a span, cut to at most `widestFrame` columns with the start of the span in view, and
 * carets as wide as the part of the span that is shown: at least one, and on the first line of the span only.
 *
 * Nothing hidden is printed raw. Apart from the line index of the source, which is made once, the cost does
 * not depend on the length of the line.
 *
 * @param span - the place to show
 * @returns the line and the carets
 */
export function codeFrame(span: Span): CodeFrame {
  const { glyphs, before, after } = glyphsAround(span);
  const from = firstIndex(glyphs, (glyph) => glyph.end > span.start);
  const to = firstIndex(glyphs, (glyph) => glyph.start >= Math.max(span.end, span.start));
  const whole = !before && !after && totalWidth(glyphs) <= widestFrame;
  const { left, right } = whole ? { left: 0, right: glyphs.length } : windowOf(glyphs, from, to);
  const head = before || left > 0 ? cutMark : '';
  const tail = after || right < glyphs.length ? cutMark : '';
  const line =
    head +
    glyphs
      .slice(left, right)
      .map((glyph) => glyph.text)
      .join('') +
    tail;
  const indent = head.length + totalWidth(glyphs.slice(left, from));
  const carets = Math.max(1, totalWidth(glyphs.slice(from, Math.min(to, right))));
  return { line, carets: ' '.repeat(indent) + '^'.repeat(carets) };
}
