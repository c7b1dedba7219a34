import { openDB, unwrap } from 'idb';
import { fromBase64, toBase64 } from '../../src/journal/base64.ts';
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
  const rows = await asJson(await dump(name));
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
        for (const [key, value] of rows) store.add(withBlob(value), keyPath === null ? key : undefined);
      }
    },
  });
  database.close();
}

/** JSON has no word for a blob: it is written as its text in base 64. */
interface WrittenBlob {
  readonly base64: string;
  readonly type: string;
}

async function asJson(stores: Awaited<ReturnType<typeof dump>>): Promise<Awaited<ReturnType<typeof dump>>> {
  for (const row of stores.files ?? []) {
    const { hash, blob } = row[1] as { hash: string; blob: Blob };
    row[1] = { hash, blob: { base64: toBase64(new Uint8Array(await blob.arrayBuffer())), type: blob.type } };
  }
  return stores;
}

function withBlob(value: unknown): unknown {
  const written = (value as { blob?: WrittenBlob } | null)?.blob;
  if (written === undefined) return value;
  const bytes = fromBase64(written.base64);
  if (bytes === null) throw new Error('not base 64');
  return { ...(value as object), blob: new Blob([bytes], { type: written.type }) };
}
