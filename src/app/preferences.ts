/** What the page remembers of a person's wishes on this machine. It works without. */
export type Preference = 'theme';

const key = (name: Preference) => `waybench ${name}`;

export function preferred(name: Preference): string | null {
  try {
    return localStorage.getItem(key(name));
  } catch {
    return null;
  }
}

export function prefer(name: Preference, value: string): void {
  try {
    localStorage.setItem(key(name), value);
  } catch {
    // Storage is switched off: the wish lasts as long as the page.
  }
}
