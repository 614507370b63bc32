import type { Located } from '../kit/located.ts';
import type { Diagnostic, Span } from '../text/index.ts';
import { nearestName } from '../text/index.ts';

/** Collects the complaints of one run; nothing is thrown, so that all of them are seen at once. */
export class Complaints {
  readonly diagnostics: Diagnostic[] = [];

  error(code: string, message: string, span: Span | null, help: string | null = null): void {
    this.diagnostics.push({ code, severity: 'error', message, span, related: [], help });
  }

  /** A name that is not there, with the nearest one that is. */
  unknown(what: string, name: string, span: Span | null, known: Iterable<string>): void {
    const near = nearestName(name, [...known]);
    this.error(
      'unknown-name',
      `no ${what} is called \`${name}\``,
      span,
      near === null ? null : `did you mean \`${near}\`?`,
    );
  }

  get failed(): boolean {
    return this.diagnostics.length > 0;
  }
}

/** The text of a scalar, or an empty text for anything else, which the schema has refused before. */
export function textOr(node: Located | null): string {
  return node?.kind === 'text' ? node.text : '';
}
