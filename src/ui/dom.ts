type Attribute = string | number | boolean | ((event: Event) => void) | undefined;

/**
 * An element with attributes and children. `true` sets an attribute bare, `false` and undefined leave it out; a
 * function under `onclick`, `oninput`, ... listens to that event.
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, Attribute>> = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, '');
    else if (value !== undefined && value !== false) made.setAttribute(name, String(value));
  }
  made.append(...children);
  return made;
}

/** The element of the page with this id; the page's own markup promises it. */
export function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no element “${id}”`);
  return found;
}

/** Writes text only where it differs, so that an unchanged readout costs nothing, and into the text that is there: a new one would cost more. */
export function setText(node: Node, text: string): void {
  const { firstChild, lastChild } = node;
  if (firstChild instanceof Text && firstChild === lastChild) {
    if (firstChild.data !== text) firstChild.data = text;
  } else if (node.textContent !== text) node.textContent = text;
}

/** The same for what is hidden, and for an attribute: setting one again would have the browser look at the element again. */
export function setHidden(target: HTMLElement, hidden: boolean): void {
  if (target.hidden !== hidden) target.hidden = hidden;
}

export function setAttribute(target: Element, name: string, value: string): void {
  if (target.getAttribute(name) !== value) target.setAttribute(name, value);
}

interface ButtonOptions {
  readonly title?: string;
  /** The key that does the same, shown in the tooltip. */
  readonly keys?: string;
  readonly class?: string;
  readonly 'aria-label'?: string;
}

/** A button that reads as words. */
export function button(
  label: string,
  onclick: () => void,
  { title, keys, ...attributes }: ButtonOptions = {},
): HTMLButtonElement {
  const tooltip = keys ? `${title ?? label} (key ${keys})` : title;
  return element('button', { type: 'button', ...attributes, title: tooltip, onclick }, label);
}

/** Symbols of the table written out: `K_p` with its index lowered. */
export function symbolNode(symbol: string): HTMLElement {
  const [base = '', index] = symbol.split('_');
  return element('i', { class: 'symbol' }, base, ...(index ? [element('sub', {}, index)] : []));
}
