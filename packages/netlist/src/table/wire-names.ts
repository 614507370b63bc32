import { makeDiagnostic, quoteText } from '../text/index.ts';
import type { TableCell } from './pin-table.ts';
import type { TableSink } from './table-sink.ts';

/**
 * Notes the names of wires and reports a name that is used twice. Rows of two different variants may use
 * one name; a row without variant belongs to all of them.
 */
export class WireNames {
  readonly #uses = new Map<string, Map<string, TableCell>>();

  /**
   * @param wire - the wire's name
   * @param variant - the text of its variant, empty when the row belongs to all
   * @param sink - takes the diagnostic
   */
  note(wire: TableCell, variant: string, sink: TableSink): void {
    const uses = this.#uses.get(wire.raw);
    if (uses === undefined) {
      this.#uses.set(wire.raw, new Map([[variant, wire]]));
      return;
    }
    const anyUse = uses.values().next().value;
    const first = variant === '' ? anyUse : (uses.get(variant) ?? uses.get(''));
    if (first === undefined) {
      uses.set(variant, wire);
      return;
    }
    sink.add(
      makeDiagnostic({
        code: 'TABLE_WIRE_TWICE',
        message: `wire ${quoteText(wire.raw)} is named twice`,
        span: wire.span,
        related: [{ message: 'first named here', span: first.span }],
        help: 'give each wire a name of its own',
      }),
    );
  }
}
