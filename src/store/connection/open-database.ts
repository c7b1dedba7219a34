import { openDB, unwrap } from 'idb';
import { type Outcome, ok } from '../../domain/outcome.ts';
import { isDiskFull } from './disk-room.ts';
import { MIGRATIONS } from './migrations/list.ts';
import type { Migration } from './migrations/migration.ts';
import type { Database, HeadroomSchema } from './schema.ts';
import { type StorageRefusal, storageRefusal, storageRefusalOf } from './storage-failure.ts';

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
  let timer: ReturnType<typeof setTimeout> | undefined;
  let gaveUp = false;
  let giveUp: (outcome: { ok: false } & StorageRefusal) => void = () => undefined;
  const blocked = new Promise<{ ok: false } & StorageRefusal>((resolve) => {
    giveUp = resolve;
  });

  async function open(): Promise<Outcome<Database, StorageRefusal>> {
    // Firefox has no indexedDB at all where it is switched off.
    if (typeof indexedDB === 'undefined') return { ok: false, ...storageRefusal('not-allowed') };
    try {
      const database = await openDB<HeadroomSchema>(name, migrations.length, {
        upgrade(fresh, oldVersion, _newVersion, transaction) {
          try {
            for (const migration of migrations.slice(oldVersion)) migration.up(unwrap(fresh), unwrap(transaction));
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
        terminated: onTerminated,
      });
      // Nobody waits for it any more; left open it would block the next upgrade.
      if (gaveUp) database.close();
      return ok(database);
    } catch (error) {
      return { ok: false, ...(await whyNotOpened(error, upgradeError)) };
    } finally {
      clearTimeout(timer);
    }
  }

  return Promise.race([open(), blocked]);
}

/** @throws the error itself when it is a mistake of ours. */
async function whyNotOpened(error: unknown, upgradeError: unknown): Promise<StorageRefusal> {
  if (upgradeError !== undefined) return storageRefusal((await isDiskFull()) ? 'disk-full' : 'upgrade-failed');
  // Firefox answers InvalidStateError where it keeps no data; here that is about the window, not a dead connection.
  if (error instanceof Error && error.name === 'InvalidStateError') return storageRefusal('not-allowed');
  const refusal = await storageRefusalOf(error, isDiskFull);
  if (refusal === null) throw error;
  return refusal;
}
