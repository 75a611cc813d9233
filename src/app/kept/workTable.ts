import { askTable, keepNewest, type Table } from '../../ui/database.ts';
import type { Work } from './work.ts';

/** A newer version of the page that keeps work otherwise raises the version: this one then neither reads nor overwrites it. */
const WORK: Table = { database: 'waybench work', version: 1, table: 'work', index: 'kept' };
/** Pages whose work is kept; the oldest go first. */
const MOST = 8;

/** Keeps the work of a page under its name, in place of what was kept of it before. */
export async function keepWork(page: string, work: Work): Promise<void> {
  await askTable(WORK, 'readwrite', (table) => table.put(work, page));
  await keepNewest(WORK, MOST);
}

/** The newest work of a page that is closed by now; null: none. */
export async function lastWork(): Promise<{ readonly page: string; readonly work: Work } | null> {
  const open = await openPages();
  const pages = await askTable(WORK, 'readonly', (table) => table.index('kept').getAllKeys());
  const page = pages
    .map(String)
    .reverse()
    .find((each) => !open.has(each));
  if (page === undefined) return null;
  const work = await askTable<Work | undefined>(WORK, 'readonly', (table) => table.get(page));
  return work ? { page, work } : null;
}

/** A name for the work of a page that no other has. */
export function newPage(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((each) => each.toString(36)).join('-');
}

const LOCK = 'waybench page ';

/** Tells other tabs that the work is worked on here, until this page is closed. Without a secure address there are no such locks. */
export function claim(page: string): void {
  void navigator.locks?.request(LOCK + page, () => new Promise(() => {}));
}

async function openPages(): Promise<ReadonlySet<string>> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return new Set(held.flatMap(({ name }) => (name?.startsWith(LOCK) ? name.slice(LOCK.length) : [])));
}
