import { codeFrame } from './code-frame.ts';
import type { Diagnostic } from './diagnostic.ts';
import { positionAt } from './position-at.ts';
import type { Span } from './source.ts';
import { visibleText } from './visible-text.ts';

// A message is a sentence. One that is longer than this came from a text that nobody cut.
const longestSentence = 2_000;

function sentence(text: string): string {
  const cut = text.length > longestSentence ? `${text.slice(0, longestSentence)}…` : text;
  return visibleText(cut);
}

function renderPlace(span: Span): readonly string[] {
  const { line, column } = positionAt(span.source, span.start);
  const number = String(line);
  const margin = ' '.repeat(number.length);
  const frame = codeFrame(span);
  return [
    `${margin}--> ${sentence(span.source.name)}:${number}:${column}`,
    `${margin} |`,
    `${number} | ${frame.line}`,
    `${margin} | ${frame.carets}`,
  ];
}

/**
 * A diagnostic as text for people, without trailing line break and without colour.
 *
 * First `error[CODE]: message`, then the place with its source line and carets, then each related place
 * as a `note:`, then `help:`. No control, bidirectional or invisible character is ever printed raw.
 *
 * @param diagnostic - what to show; it is not changed
 * @returns lines joined by `\n`
 */
export function renderDiagnostic(diagnostic: Diagnostic): string {
  const { code, severity, message, span, related, help } = diagnostic;
  const lines = [`${severity}[${sentence(code)}]: ${sentence(message)}`];
  if (span !== null) lines.push(...renderPlace(span));
  for (const place of related) lines.push(`note: ${sentence(place.message)}`, ...renderPlace(place.span));
  if (help !== null) lines.push(`help: ${sentence(help)}`);
  return lines.join('\n');
}
