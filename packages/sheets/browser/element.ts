/** What an element is made with. */
export interface ElementFacts {
  readonly class?: string;
  readonly id?: string;
  readonly type?: string;
  readonly attributes?: readonly (readonly [name: string, value: string])[];
  readonly onClick?: () => void;
}

/** An element with its children; text stays text, whatever is in it. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  facts: ElementFacts = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  if (facts.class !== undefined) made.className = facts.class;
  if (facts.id !== undefined) made.id = facts.id;
  if (facts.type !== undefined) made.setAttribute('type', facts.type);
  for (const [name, value] of facts.attributes ?? []) made.setAttribute(name, value);
  if (facts.onClick !== undefined) made.addEventListener('click', facts.onClick);
  made.append(...children);
  return made;
}

/** A button of the page. */
export function button(text: string, onClick: () => void, facts: ElementFacts = {}): HTMLButtonElement {
  return element('button', { ...facts, type: 'button', onClick }, text);
}

/** A field with its label. */
export function field(
  label: string,
  id: string,
  attributes: readonly (readonly [string, string])[] = [],
): { readonly whole: HTMLElement; readonly input: HTMLInputElement } {
  const input = element('input', { id, type: 'text', attributes });
  const whole = element(
    'p',
    { class: 'field' },
    element('label', { attributes: [['for', id]] }, label),
    input,
  );
  return { whole, input };
}

/** An element that the page is known to have. */
export function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no element ${id}`);
  return found;
}
