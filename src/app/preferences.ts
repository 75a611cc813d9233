/** What the page remembers of a person's wishes on this machine. It works without. */
export type Preference = 'theme' | 'snapshots';

const key = (name: Preference) => `waybench ${name}`;

export function preferred(name: Preference): string | null {
  try {
    return localStorage.getItem(key(name));
  } catch {
    return null;
  }
}

/** Whether it will be remembered; not so where storage is switched off or full. */
export function prefer(name: Preference, value: string): boolean {
  try {
    localStorage.setItem(key(name), value);
    return true;
  } catch {
    return false;
  }
}
