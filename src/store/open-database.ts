import { type IDBPDatabase, openDB, unwrap } from 'idb';
import { type Outcome, ok } from '../domain/outcome.ts';
import { MIGRATIONS } from './migrations/list.ts';
import type { Migration } from './migrations/migration.ts';
import type { Database, HeadroomSchema } from './schema.ts';
import { asStorageRefusal, type StorageRefusal, storageRefusal } from './storage-failure.ts';

export interface OpenOptions {
  readonly migrations?: readonly Migration[];
  /** How long to wait for other tabs to let go of an older version, in milliseconds. */
  readonly patience?: number;
  /** Another tab wants a newer version. The connection is already closed when this is called. */
  readonly onUpdatedElsewhere?: () => void;
  /** The browser ended the connection (its storage process died, the user cleared the data). */
  readonly onTerminated?: () => void;
}

/**
 * Opens the database and brings it up to the last migration. A migration that fails leaves the version and everything
 * in it as it was.
 */
export async function openDatabase(
  name: string,
  { migrations = MIGRATIONS, patience = 4000, onUpdatedElsewhere, onTerminated }: OpenOptions = {},
): Promise<Outcome<Database, StorageRefusal>> {
  let upgradeError: unknown;
  let giveUp: (outcome: { ok: false } & StorageRefusal) => void = () => undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let gaveUp = false;
  const blocked = new Promise<{ ok: false } & StorageRefusal>((resolve) => {
    giveUp = resolve;
  });
  const opening = openDB<HeadroomSchema>(name, migrations.length, {
    upgrade(database, oldVersion, _newVersion, transaction) {
      try {
        for (const migration of migrations.slice(oldVersion)) migration.up(unwrap(database), unwrap(transaction));
      } catch (error) {
        // Aborting is what puts the old version back; openDB then rejects with a bare AbortError.
        upgradeError = error;
        transaction.done.catch(() => 'told through openDB');
        transaction.abort();
      }
    },
    blocked() {
      timer = setTimeout(() => {
        gaveUp = true;
        giveUp({ ok: false, ...storageRefusal('blocked') });
      }, patience);
    },
    blocking(_current, wanted, event) {
      (event.target as IDBDatabase).close();
      // No wanted version: the database is being deleted, as when the user clears the extension's data.
      if (wanted === null) onTerminated?.();
      else onUpdatedElsewhere?.();
    },
    terminated() {
      onTerminated?.();
    },
  });
  return Promise.race([settle(opening), blocked]);

  async function settle(promise: Promise<IDBPDatabase<HeadroomSchema>>): Promise<Outcome<Database, StorageRefusal>> {
    try {
      const database = await promise;
      // Nobody waits for it any more; left open it would block the next upgrade.
      if (gaveUp) database.close();
      return ok(database);
    } catch (error) {
      if (upgradeError !== undefined) return { ok: false, ...storageRefusal('upgrade-failed') };
      // Firefox answers InvalidStateError where it keeps no data; here that is about the window, not a dead connection.
      if (error instanceof Error && error.name === 'InvalidStateError')
        return { ok: false, ...storageRefusal('not-allowed') };
      const refusal = asStorageRefusal(error);
      if (refusal === null) throw error;
      return { ok: false, ...refusal };
    } finally {
      clearTimeout(timer);
    }
  }
}
