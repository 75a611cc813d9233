import { isRecord } from '../../shared/core/problem.ts';

/** What the page remembers of a person's wishes on this machine. It works without. */
type Preference = 'theme' | 'currents' | 'snapshots' | 'layout' | 'lower area' | 'loop point' | 'lesson';

const key = (name: Preference) => `waybench ${name}`;

export function preferred(name: Preference): string | null {
  try {
    return localStorage.getItem(key(name));
  } catch {
    return null;
  }
}

/** The entries of what was remembered as such; none where there is nothing, or something else. */
export function preferredEntries<Entry extends string>(name: Preference): Partial<Record<Entry, unknown>> {
  try {
    const kept: unknown = JSON.parse(preferred(name) ?? '{}');
    return isRecord(kept) ? (kept as Partial<Record<Entry, unknown>>) : {};
  } catch {
    return {};
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
