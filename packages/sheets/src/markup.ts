import { visibleText } from '@loomproof/netlist';

/** Text that is already HTML or SVG. Only {@link markup} and {@link trusted} make it. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

/** What may stand in a template: text is escaped, markup is not, null is left out. */
export type MarkupValue = Markup | string | number | null | readonly MarkupValue[];

const entities: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ["'", '&#39;'],
]);

/** Text as it may stand in an element or a quoted attribute; controls and turning marks are made visible. */
function escaped(text: string): string {
  return visibleText(text).replace(/[&<>"']/g, (one) => entities.get(one) ?? one);
}

/** HTML or SVG with every value escaped. Kit text comes into a page in no other way. */
export function markup(parts: TemplateStringsArray, ...values: readonly MarkupValue[]): Markup {
  let text = parts[0] ?? '';
  for (const [index, value] of values.entries()) text += written(value) + (parts[index + 1] ?? '');
  return new Markup(text);
}

/** Fixed text of this package that needs no escaping, such as its style sheet; never text of a kit. */
export function trusted(text: string): Markup {
  return new Markup(text);
}

function written(value: MarkupValue): string {
  if (value === null) return '';
  if (value instanceof Markup) return value.text;
  if (typeof value === 'string') return escaped(value);
  if (typeof value === 'number') return String(value);
  return value.map(written).join('');
}
