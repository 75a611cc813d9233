import { forgetColours } from './look/colours.ts';
import { prefer, preferred } from './preferences.ts';

export type Theme = 'light' | 'dark';

const DARK = '(prefers-color-scheme: dark)';

/** Light or dark: what the person chose here, or else what the system says, as it changes. */
export class ThemeSwitch {
  readonly #onChange: (theme: Theme) => void;

  constructor(onChange: (theme: Theme) => void) {
    this.#onChange = onChange;
    matchMedia(DARK).addEventListener('change', () => this.#apply());
    this.#apply();
  }

  get theme(): Theme {
    const chosen = preferred('theme');
    if (chosen === 'light' || chosen === 'dark') return chosen;
    return matchMedia(DARK).matches ? 'dark' : 'light';
  }

  toggle(): void {
    prefer('theme', this.theme === 'dark' ? 'light' : 'dark');
    this.#apply();
  }

  #apply(): void {
    document.documentElement.setAttribute('data-theme', this.theme);
    forgetColours();
    this.#onChange(this.theme);
  }
}
