/** The script of a work instruction as text, bundled anew. */
export function phoneScript(): string;
