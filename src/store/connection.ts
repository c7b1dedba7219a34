import type { Refusal } from '../domain/outcome.ts';
import { openDatabase } from './open-database.ts';
import { type Database, type ReadTransaction, STORE_NAMES, type WriteTransaction } from './schema.ts';
import { asStorageRefusal, StoreUnavailable, storageRefusal } from './storage-failure.ts';

/** The way to the database: opened at first need, and again after the browser ended it. */
export interface Connection {
  /**
   * Runs `work` in one transaction over all stores, of which nothing else sees a part. Whatever it throws is thrown on.
   * `work` may wait for nothing but the transaction's own requests.
   * @throws StoreUnavailable when the browser does not give us the data.
   */
  read<Value>(work: (tx: ReadTransaction) => Promise<Value>): Promise<Value>;
  /** As `read`; when `work` throws, or the disk is full at the end, all of it is as if it had never been. */
  write<Value>(work: (tx: WriteTransaction) => Promise<Value>, durability?: Durability): Promise<Value>;
  close(): void;
}

/** `relaxed` may be lost in a power cut shortly after; it is for all but the last batch of an import. */
export type Durability = 'strict' | 'relaxed';

/** @param onUpdatedElsewhere told once, when a newer Headroom in another tab took the database over. */
export function connect(name: string, onUpdatedElsewhere: (notice: Refusal) => void): Connection {
  let current: Promise<Database> | null = null;
  let finished = false;

  function database(): Promise<Database> {
    if (finished) return Promise.reject(new StoreUnavailable(storageRefusal('updated-elsewhere')));
    current ??= openDatabase(name, {
      onTerminated: forget,
      onUpdatedElsewhere() {
        finished = true;
        onUpdatedElsewhere(storageRefusal('updated-elsewhere'));
      },
    }).then((opened) => {
      if (opened.ok) return opened.value;
      forget();
      throw new StoreUnavailable(opened);
    });
    return current;
  }

  function forget(): void {
    current = null;
  }

  /** A connection that died unnoticed refuses to begin a transaction; then one more try with a fresh one. */
  async function begin<Tx>(start: (database: Database) => Tx): Promise<Tx> {
    try {
      return start(await database());
    } catch (error) {
      if (!(error instanceof Error) || error.name !== 'InvalidStateError') throw error;
      forget();
      return start(await database());
    }
  }

  return {
    async read(work) {
      try {
        const tx = await begin((db) => db.transaction(STORE_NAMES));
        const [value] = await Promise.all([work(tx), tx.done]);
        return value;
      } catch (error) {
        throw asUnavailable(error);
      }
    },
    async write(work, durability = 'strict') {
      try {
        const tx = await begin((db) => db.transaction(STORE_NAMES, 'readwrite', { durability }));
        return await committed(tx, work);
      } catch (error) {
        throw asUnavailable(error);
      }
    },
    close() {
      current?.then(
        (db) => db.close(),
        () => 'it never opened',
      );
      current = null;
    },
  };
}

async function committed<Value>(tx: WriteTransaction, work: (tx: WriteTransaction) => Promise<Value>): Promise<Value> {
  // Heard here at once, so that a failure during `work` is never an unhandled rejection; told below.
  const ended = tx.done.then(
    () => null,
    (error: unknown) => error,
  );
  let value: Value;
  try {
    value = await work(tx);
  } catch (error) {
    try {
      tx.abort();
    } catch {
      // It had already ended, which is what was wanted.
    }
    const reason = await ended;
    // A request that failed for want of space reports it through the transaction.
    throw reason instanceof DOMException && reason.name === 'QuotaExceededError' ? reason : error;
  }
  const failure = await ended;
  if (failure !== null) throw failure;
  return value;
}

function asUnavailable(error: unknown): unknown {
  if (error instanceof StoreUnavailable) return error;
  const refusal = asStorageRefusal(error);
  return refusal === null ? error : new StoreUnavailable(refusal, error);
}
