import { cents } from '../../../src/domain/money/cents.ts';
import { storeSchema } from '../../../src/domain/setup/store.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { canonicalJson } from '../../../src/journal/canonical-json.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { MIGRATIONS } from '../../../src/store/connection/migrations/list.ts';
import type { Migration } from '../../../src/store/connection/migrations/migration.ts';
import { openDatabase } from '../../../src/store/connection/open-database.ts';
import { openStore } from '../../../src/store/open-store.ts';
import type { Store } from '../../../src/store/store.ts';

/** The store in a page of the extension, without any screen: the tests call this from outside. */
const program = {
  notices: [] as string[],

  async open(name: string): Promise<void> {
    const opened = await openStore({
      name,
      now: () => instant(program.clock()),
      random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
      onUpdatedElsewhere: ({ message }) => program.notices.push(message),
    });
    stores.set(name, value(opened));
  },

  /** Types lots one after the other, as entries of their own. */
  async typeLots(name: string, mark: string, count: number): Promise<void> {
    for (let i = 0; i < count; i++)
      value(await storeOf(name).addLots('typed', [{ facts: { lotNumber: `${mark}${i}` } }]));
  },

  /** A bit of everything, with letters that are hard on files. */
  async doSomeWork(name: string): Promise<void> {
    const store = storeOf(name);
    const shop = storeSchema.parse({ name: 'Cottonwood Truck & Van', zone: 'America/Boise' });
    value(await store.saveSetup({ store: shop }));
    const facts = [
      { make: 'Alder', notes: 'línea “uno”\r\n\u2028 🚚 \ud83d' },
      { make: 'Birch', miles: 91_204 },
    ];
    const { lots } = value(
      await store.addLots(
        'typed',
        facts.map((f) => ({ facts: f })),
      ),
    );
    for (const id of lots) {
      const [change] = value(await store.changeLot(id, { set: { priceNow: cents(1_250_000) }, clear: ['miles'] }));
      if (change !== undefined) value(await store.undo(change.id));
    }
    const [lot] = lots;
    if (lot !== undefined) {
      const bytes = Uint8Array.from({ length: 1000 }, (_, i) => i % 256);
      const picture = { bytes, name: 'page.png', mediaType: 'image/png', about: 'page-picture' } as const;
      const { hash } = value(await store.keepAttachment(lot, picture));
      const at = instant(Date.now());
      value(await store.noteBid(lot, { action: 'live-bid', cents: cents(1_260_000), at, picture: hash }));
    }
    value(await store.recordShown(['digest/2026-04-10']));
  },

  /** Imports lots without an end; `written` says how many are kept. Whoever calls does not wait for it. */
  importWithoutEnd(name: string): void {
    function* rows() {
      for (let i = 0; ; i++) yield { facts: { lotNumber: `${i}`, notes: 'a row of a list that never ends' } };
    }
    const onProgress = (written: number) => {
      program.written = written;
    };
    storeOf(name)
      .addLots('file', rows(), { onProgress })
      .catch((error: unknown) => program.notices.push(String(error)));
  },
  written: 0,

  /**
   * Writes single lots, bids on them and lists of lots, in turns and without an end; `told` names the lots that are kept for
   * sure. Whoever calls does not wait for it.
   */
  writeWithoutEnd(name: string, mark: string): void {
    const write = async () => {
      for (let i = 0; ; i++) {
        const numbers = i % 3 === 2 ? Array.from({ length: 20 }, (_, k) => `${mark}${i}-${k}`) : [`${mark}${i}`];
        const rows = numbers.map((lotNumber) => ({ facts: { lotNumber } }));
        const { lots } = value(await storeOf(name).addLots('typed', rows));
        program.told.push(...numbers);
        const at = instant(program.clock());
        for (const lot of lots.slice(0, 1))
          value(await storeOf(name).noteBid(lot, { action: 'proxy-placed', cents: cents(900_000), at }));
      }
    };
    write().catch((error: unknown) => program.notices.push(String(error)));
  },
  told: [] as string[],
  /** The clock of this page is set so many milliseconds off. */
  setOff: 0,
  clock: () => Date.now() + program.setOff,

  /** Whether every view is what the journal alone says. */
  async viewsAreRight(name: string): Promise<boolean> {
    // In which order the members of a value stand says nothing.
    const all = async () => canonicalJson([await storeOf(name).allLots(), await storeOf(name).setup()]);
    const before = await all();
    value(await storeOf(name).rebuildViews());
    return (await all()) === before;
  },

  async lotNumbers(name: string): Promise<(string | undefined)[]> {
    return (await storeOf(name).allLots()).map((lot) => lot.facts.lotNumber);
  },

  async findings(name: string): Promise<readonly string[]> {
    return (await storeOf(name).checkJournal()).findings.map(({ message }) => message);
  },

  async backupText(name: string): Promise<string> {
    return (await storeOf(name).backup()).blob.text();
  },

  /**
   * Keeps files of several MB and takes them through a backup into another database. Gives the size of the backup, and
   * whether every byte came back.
   */
  async carryFiles(from: string, to: string, count: number, bytes: number): Promise<{ size: number; same: boolean }> {
    const { lots } = value(await storeOf(from).addLots('typed', [{ facts: {} }]));
    const [lot] = lots;
    if (lot === undefined) throw new Error('no lot');
    const hashes: string[] = [];
    for (let i = 0; i < count; i++) {
      const content = new Uint8Array(bytes).fill(i);
      const file = { bytes: new Blob([content]), name: `${i}.bin`, about: 'other' } as const;
      hashes.push(value(await storeOf(from).keepAttachment(lot, file)).hash);
    }
    const { blob } = await storeOf(from).backup();
    value(await storeOf(to).restore(value(await readBackup(blob)), { mode: 'merge' }));
    let same = true;
    for (const [i, hash] of hashes.entries()) {
      const back = new Uint8Array(
        (await (await storeOf(to).readAttachment(hash))?.arrayBuffer()) ?? new ArrayBuffer(0),
      );
      // Every byte in between was held against the file's hash by the restore.
      same &&= back.length === bytes && back[0] === i && back.at(-1) === i;
    }
    return { size: blob.size, same };
  },

  async fileFaults(name: string): Promise<readonly string[]> {
    return (await storeOf(name).checkJournal()).attachments.faults;
  },

  async restore(name: string, text: string): Promise<{ added: number }> {
    const backup = value(await readBackup(new Blob([text])));
    return value(await storeOf(name).restore(backup, { mode: 'merge' }));
  },

  /** Opens the database with one more migration, which adds a store and then perhaps fails. Gives the reason of a refusal. */
  async upgrade(name: string, fails: boolean): Promise<string | null> {
    const next: Migration = {
      number: MIGRATIONS.length + 1,
      name: 'next',
      up(database) {
        database.createObjectStore('half-way');
        if (fails) throw new Error('made to fail');
      },
    };
    const opened = await openDatabase(name, { migrations: [...MIGRATIONS, next] });
    if (opened.ok) opened.value.close();
    return opened.ok ? null : opened.reason;
  },

  /** The version of a database and the names of its stores, asked without our code. */
  look(name: string): Promise<{ version: number; stores: string[] }> {
    return new Promise((resolve, reject) => {
      const request = indexedDB.open(name);
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        const { version, objectStoreNames } = request.result;
        request.result.close();
        resolve({ version, stores: [...objectStoreNames] });
      };
    });
  },

  close(name: string): void {
    storeOf(name).close();
    stores.delete(name);
  },
};

const stores = new Map<string, Store>();

function storeOf(name: string): Store {
  const store = stores.get(name);
  if (store === undefined) throw new Error(`no store ${name} is open in this page`);
  return store;
}

function value<Value>(outcome: { ok: true; value: Value } | { ok: false; reason: string; message: string }): Value {
  if (!outcome.ok) throw new Error(`${outcome.reason}: ${outcome.message}`);
  return outcome.value;
}

declare global {
  interface Window {
    storeProgram: typeof program;
  }
}
window.storeProgram = program;
