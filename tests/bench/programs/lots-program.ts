import Papa from 'papaparse';
import { DEMO_ZONE, demoSetup } from '../../../src/demo/demo-setup.ts';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { guessColumns } from '../../../src/intake/columns/guess-columns.ts';
import { importPlan } from '../../../src/intake/import-plan.ts';
import { importResult } from '../../../src/intake/import-result.ts';
import { openTable } from '../../../src/intake/open-table.ts';
import { readInChunks } from '../../../src/intake/read-in-chunks.ts';
import { openStore } from '../../../src/store/open-store.ts';
import type { Store } from '../../../src/store/store.ts';
import { readFirstRows } from '../../../src/store/views/read-first-rows.ts';
import { manyRows } from './many-rows.ts';

const random = (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes));

/** What the benchmarks do in a page of the extension without any screen. */
const program = {
  /** Brings `count` rows into the store `name` as the Add lots screen does. Gives back the milliseconds it took. */
  async import(name: string, count: number): Promise<number> {
    const now = instant(Date.now());
    const text = manyRows(count, now);
    const store = await open(name);
    const setup = demoSetup(dateIn(DEMO_ZONE, now));
    await store.saveSetup(setup);
    const started = performance.now();
    const table = openTable(text);
    if (!table.ok) throw new Error(table.message);
    const { venues, titles } = setup;
    const columns = guessColumns(table.value.headings, table.value.sample, { venues, titles });
    const context = {
      now,
      from: 'file',
      storeZone: setup.store.zone,
      venues,
      titles,
      readClose: readCloseTime,
    } as const;
    const plan = await importPlan(readInChunks(table.value, columns, context), { now, existing: () => [] });
    const added = await store.addLots('file', importResult(plan.rows, 'file').add);
    if (!added.ok || added.value.lots.length !== count) throw new Error('not every row came in');
    const spent = performance.now() - started;
    store.close();
    return spent;
  },

  /** The rival of `import`: the same text through the bare parser, and each row put into a bare database. */
  async importBare(name: string, count: number): Promise<number> {
    const text = manyRows(count, Date.now());
    const database = await openBare(name);
    const started = performance.now();
    const rows = Papa.parse<object>(text, { header: true }).data;
    await new Promise<void>((resolve, reject) => {
      const transaction = database.transaction('rows', 'readwrite', { durability: 'strict' });
      const store = transaction.objectStore('rows');
      for (const row of rows) store.put(row);
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error);
    });
    const spent = performance.now() - started;
    database.close();
    return spent;
  },

  /** Whether the background has put the list's first rows into words. */
  async firstRowsAreKept(): Promise<boolean> {
    return (await readFirstRows(chrome.runtime.getManifest().version)).length > 0;
  },

  /** Throws a database away, so that the next round begins as this one did. */
  remove(name: string): Promise<void> {
    return new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(name);
      request.onsuccess = () => resolve();
      request.onerror = () => reject(request.error);
    });
  },
};

async function open(name: string): Promise<Store> {
  const opened = await openStore({ name, now: () => instant(Date.now()), random });
  if (!opened.ok) throw new Error(opened.message);
  return opened.value;
}

function openBare(name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore('rows', { autoIncrement: true });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

declare global {
  interface Window {
    lotsProgram: typeof program;
  }
}
window.lotsProgram = program;
