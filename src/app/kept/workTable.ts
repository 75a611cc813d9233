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

/** The work of a page, as it was kept last. */
export interface EarlierWork {
  readonly page: string;
  readonly work: Work;
  /** Some tab works on it. */
  readonly isOpen: boolean;
}

/** All work that is kept, the newest first. Each is asked for by its name: another may be kept or deleted meanwhile. */
export async function earlierWork(): Promise<readonly EarlierWork[]> {
  const open = await openPages();
  const pages = await askTable(WORK, 'readonly', (table) => table.index('kept').getAllKeys());
  const found = await Promise.all(pages.reverse().map((page) => earlierWorkOf(String(page), open)));
  return found.filter((each) => each !== null);
}

async function earlierWorkOf(page: string, open: ReadonlySet<string>): Promise<EarlierWork | null> {
  const work = await askTable<Work | undefined>(WORK, 'readonly', (table) => table.get(page));
  return work ? { page, work, isOpen: open.has(page) } : null;
}

/** Deletes the work of a page. */
export async function forgetWork(page: string): Promise<void> {
  await askTable(WORK, 'readwrite', (table) => table.delete(page));
}

/** A name for the work of a page that no other has. */
export function newPage(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((each) => each.toString(36)).join('-');
}

const LOCK = 'waybench page ';

/**
 * Tells other tabs that the work is worked on here, until this page is closed or what is returned is called. Without a secure address there
 * are no such locks.
 */
export function claim(page: string): () => void {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  void navigator.locks?.request(LOCK + page, () => held);
  return release;
}

async function openPages(): Promise<ReadonlySet<string>> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return new Set(held.flatMap(({ name }) => (name?.startsWith(LOCK) ? name.slice(LOCK.length) : [])));
}
