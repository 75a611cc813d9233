import { element, setText } from './dom.ts';
import { type ActionName, type Actions, keyOf } from './keys.ts';

export interface MenuItem {
  readonly label: string;
  readonly action: () => void;
  readonly keys?: string;
  readonly title?: string;
  /** For an item that is on or off. */
  readonly isOn?: () => boolean;
}

/** A menu item that sets off an action of the keyboard. */
export function item<N extends ActionName>(
  label: string,
  actions: Pick<Actions, N>,
  name: N,
  isOn?: () => boolean,
): MenuItem {
  return { label, action: actions[name], keys: keyOf(name), ...(isOn && { isOn }) };
}

/** A button that folds out a short list of buttons. */
export function createMenu(text: string, items: readonly MenuItem[]): HTMLElement {
  const rows = items.map((each) => createRow(each, close, () => opener.focus()));
  const list = element('div', { class: 'menu-list', hidden: true }, ...rows.map(({ button }) => button));
  const opener = element('button', { type: 'button', 'aria-expanded': 'false', onclick: toggle }, text);
  const menu = element(
    'div',
    {
      class: 'menu',
      onkeydown: (event) => onKey(event as KeyboardEvent),
      onfocusout: (event) => {
        if (!menu.contains((event as FocusEvent).relatedTarget as Node | null)) close();
      },
    },
    opener,
    list,
  );

  function toggle(): void {
    if (list.hidden) open();
    else close();
  }

  function open(): void {
    list.hidden = false;
    opener.setAttribute('aria-expanded', 'true');
    for (const row of rows) row.refresh();
  }

  function close(): void {
    list.hidden = true;
    opener.setAttribute('aria-expanded', 'false');
  }

  function onKey(event: KeyboardEvent): void {
    if (event.key === 'Escape') {
      opener.focus();
      close();
    }
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step === undefined || list.hidden) return;
    event.preventDefault();
    const at = rows.findIndex(({ button }) => button === document.activeElement);
    rows.at((at + step) % rows.length)?.button.focus();
  }

  return menu;
}

interface MenuRow {
  readonly button: HTMLButtonElement;
  /** Marks the item as it is now. */
  refresh(): void;
}

function createRow(
  { label, action, keys, title, isOn }: MenuItem,
  close: () => void,
  goBack: () => void,
): MenuRow {
  const mark = element('span', { class: 'menu-mark', 'aria-hidden': 'true' });
  const onclick = (event: Event) => {
    // Pressed by a key: what the action opens gives the focus back to where one can go on from.
    if ((event as MouseEvent).detail === 0) goBack();
    close();
    action();
  };
  const button = element(
    'button',
    { type: 'button', title, onclick },
    mark,
    element('span', {}, label),
    element('kbd', {}, keys ?? ''),
  );
  return {
    button,
    refresh() {
      if (!isOn) return;
      const on = isOn();
      setText(mark, on ? '✓' : '');
      button.setAttribute('aria-pressed', String(on));
    },
  };
}
