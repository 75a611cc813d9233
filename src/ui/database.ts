/** A table in a database of this browser, which opens it or makes it. */
export interface Table {
  readonly database: string;
  readonly version: number;
  readonly table: string;
  /** Name and path of the entry that the rows are ordered by as well. */
  readonly index: string;
}

/**
 * Asks one thing of a table.
 * @throws DOMException when the browser keeps nothing for this page, when it is full, or when a newer version of the page made the database
 */
export async function askTable<T>(
  { database, version, table, index }: Table,
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const opening = indexedDB.open(database, version);
  opening.onupgradeneeded = () => opening.result.createObjectStore(table).createIndex(index, index);
  const opened = await answer(opening);
  // A newer version of the page in another tab may want to change it.
  opened.onversionchange = () => opened.close();
  try {
    const transaction = opened.transaction(table, mode);
    const done = completion(transaction);
    const asked = await answer(ask(transaction.objectStore(table)));
    await done;
    return asked;
  } finally {
    opened.close();
  }
}

/** Removes the oldest rows of a table, by its index, above a number. */
export async function keepNewest(table: Table, most: number): Promise<void> {
  const count = await askTable(table, 'readonly', (store) => store.count());
  if (count <= most) return;
  const keys = await askTable(table, 'readonly', (store) =>
    store.index(table.index).getAllKeys(null, count - most),
  );
  for (const key of keys) await askTable(table, 'readwrite', (store) => store.delete(key));
}

function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** What was asked is kept only once its transaction is complete. */
function completion(transaction: IDBTransaction): Promise<void> {
  const done = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
  });
  // The answer may fail first, and is what is reported then.
  done.catch(() => {});
  return done;
}
