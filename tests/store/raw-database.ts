import { openDB } from 'idb';
import type { Entry } from '../../src/journal/entry.ts';
import { type Envelope, readEntry } from '../../src/journal/read-entry.ts';

/** Every store of a database with all its keys and values, read without our code. */
export async function dump(name = 'headroom'): Promise<Record<string, [IDBValidKey, unknown][]>> {
  const database = await openDB(name);
  const all: Record<string, [IDBValidKey, unknown][]> = {};
  for (const store of database.objectStoreNames) {
    const keys = await database.getAllKeys(store);
    const values: unknown[] = await database.getAll(store);
    all[store] = keys.map((key, i) => [key, values[i]]);
  }
  database.close();
  return all;
}

export async function storedEntries(name = 'headroom'): Promise<Envelope[]> {
  const { entries = [] } = await dump(name);
  return entries.map(([, raw]) => raw as Envelope);
}

/** The entries as the folds want them. @throws when one is not known. */
export async function journalOf(name = 'headroom'): Promise<Entry[]> {
  return (await storedEntries(name)).map((raw) => {
    const read = readEntry(raw);
    if (read.as !== 'known') throw new Error(`entry ${raw.id} is ${read.as}`);
    return read.entry;
  });
}
