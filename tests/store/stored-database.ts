import { openDB, unwrap } from 'idb';
import { dump } from './raw-database.ts';

interface StoredStore {
  readonly keyPath: string | string[] | null;
  readonly indexes: Record<string, { keyPath: string | string[]; unique: boolean }>;
  readonly rows: [IDBValidKey, unknown][];
}

/** A database as a file: its version, its stores with their indexes, and all that is in them. */
export interface StoredDatabase {
  readonly version: number;
  readonly stores: Record<string, StoredStore>;
}

/** Takes a database down, structure and all, without our code. */
export async function takeDown(name: string): Promise<StoredDatabase> {
  const rows = await dump(name);
  const database = await openDB(name);
  const stores: Record<string, StoredStore> = {};
  for (const storeName of database.objectStoreNames) {
    const store = unwrap(database.transaction(storeName).store);
    const indexes = Object.fromEntries(
      Array.from(store.indexNames, (index) => {
        const { keyPath, unique } = store.index(index);
        return [index, { keyPath, unique }];
      }),
    );
    stores[storeName] = { keyPath: store.keyPath, indexes, rows: rows[storeName] ?? [] };
  }
  const { version } = database;
  database.close();
  return { version, stores };
}

/** Puts a database up as it was, without our code: with the structure that the file says, not that of today. */
export async function putUp(name: string, { version, stores }: StoredDatabase): Promise<void> {
  const database = await openDB(name, version, {
    upgrade(fresh) {
      for (const [storeName, { keyPath, indexes, rows }] of Object.entries(stores)) {
        const store = unwrap(fresh.createObjectStore(storeName, { keyPath }));
        for (const [index, { keyPath: path, unique }] of Object.entries(indexes))
          store.createIndex(index, path, { unique });
        for (const [key, value] of rows) store.add(value, keyPath === null ? key : undefined);
      }
    },
  });
  database.close();
}
