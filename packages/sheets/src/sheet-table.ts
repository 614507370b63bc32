/** A file of the result: its name without folder, and its text. */
export interface SheetFile {
  readonly name: string;
  readonly text: string;
}

/** A table of a sheet, from which both its page and its CSV are made. */
export interface SheetTable {
  readonly head: readonly string[];
  readonly rows: readonly SheetRow[];
}

/** A row; `changed` marks what the work changes. */
export interface SheetRow {
  readonly cells: readonly string[];
  readonly changed: boolean;
}

/** The rows of a table as plain texts, head first. */
export function tableTexts({ head, rows }: SheetTable): readonly (readonly string[])[] {
  return [head, ...rows.map(({ cells }) => cells)];
}
