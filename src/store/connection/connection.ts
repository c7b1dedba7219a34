import { isDiskFull } from './disk-room.ts';
import { openDatabase } from './open-database.ts';
import { type Database, type ReadTransaction, STORE_NAMES, type WriteTransaction } from './schema.ts';
import { type StorageRefusal, StoreUnavailable, storageRefusal, storageRefusalOf } from './storage-failure.ts';

/** The way to the database: opened at first need, and again after the browser ended it. */
export interface Connection {
  /**
   * Runs `work` in one transaction over all stores, of which nothing else sees a part. Whatever it throws is thrown on.
   * `work` may wait for nothing but the transaction's own requests.
   * @throws StoreUnavailable when the browser does not give us the data.
   */
  read<Value>(work: (tx: ReadTransaction) => Promise<Value>): Promise<Value>;
  /** As `read`; when `work` throws, or the disk is full at the end, all of it is as if it had never been. */
  write<Value>(work: (tx: WriteTransaction) => Promise<Value>): Promise<Value>;
  close(): void;
}

interface Attendants {
  /** Run on every fresh connection before anything else uses it. */
  readonly prepare: (database: Database) => Promise<void>;
  /** Told once, when a newer Headroom in another tab took the database over. */
  readonly onUpdatedElsewhere: (notice: StorageRefusal) => void;
}

export function connect(name: string, { prepare, onUpdatedElsewhere }: Attendants): Connection {
  let current: Promise<Database> | null = null;
  let takenOver = false;

  function database(): Promise<Database> {
    if (takenOver) return Promise.reject(new StoreUnavailable(storageRefusal('updated-elsewhere')));
    current ??= open();
    return current;
  }

  async function open(): Promise<Database> {
    const opened = await openDatabase(name, {
      onTerminated: forget,
      onUpdatedElsewhere() {
        takenOver = true;
        onUpdatedElsewhere(storageRefusal('updated-elsewhere'));
      },
    });
    if (!opened.ok) {
      forget();
      throw new StoreUnavailable(opened);
    }
    try {
      await prepare(opened.value);
    } catch (error) {
      forget();
      opened.value.close();
      throw error;
    }
    return opened.value;
  }

  function forget(): void {
    current = null;
  }

  /** The next use begins with a fresh connection; what is under way on this one still ends. */
  function leave(): void {
    current?.then(
      (db) => db.close(),
      () => 'it never opened',
    );
    forget();
  }

  /** A connection that died unnoticed refuses to begin a transaction; then one more try with a fresh one. */
  async function using<Value>(use: (database: Database) => Promise<Value>): Promise<Value> {
    try {
      return await useAgain(use);
    } catch (error) {
      if (error instanceof StoreUnavailable) throw error;
      const refusal = await storageRefusalOf(error, isDiskFull);
      if (refusal === null) throw error;
      // In Firefox a connection that met a full disk writes nothing any more, not even when there is room again.
      leave();
      throw new StoreUnavailable(refusal, error);
    }
  }

  async function useAgain<Value>(use: (database: Database) => Promise<Value>): Promise<Value> {
    const first = await database();
    try {
      return await use(first);
    } catch (error) {
      if (!(error instanceof NotBegun)) throw error;
      leave();
      return use(await database());
    }
  }

  return {
    read: (work) => using((db) => readIn(db, work)),
    write: (work) => using((db) => writeIn(db, work)),
    close: leave,
  };
}

/** The connection was closed under us, so nothing has happened. */
class NotBegun extends Error {
  override readonly name = 'InvalidStateError';
}

function begin<Tx>(start: () => Tx): Tx {
  try {
    return start();
  } catch (error) {
    if (error instanceof Error && error.name === 'InvalidStateError')
      throw new NotBegun(error.message, { cause: error });
    throw error;
  }
}

export async function readIn<Value>(db: Database, work: (tx: ReadTransaction) => Promise<Value>): Promise<Value> {
  const tx = begin(() => db.transaction(STORE_NAMES));
  const [value] = await Promise.all([work(tx), tx.done]);
  return value;
}

/** Commits what `work` did, or none of it. */
export async function writeIn<Value>(db: Database, work: (tx: WriteTransaction) => Promise<Value>): Promise<Value> {
  const tx = begin(() => db.transaction(STORE_NAMES, 'readwrite', { durability: 'strict' }));
  // Heard here at once, so that a failure during `work` is never an unhandled rejection; told below.
  const ended = tx.done.then(
    () => null,
    (error: unknown) => error,
  );
  let value: Value;
  try {
    value = await work(tx);
    // Everything is asked for, so the browser need not hear from us again before it ends the transaction.
    endNow(() => tx.commit());
  } catch (error) {
    const endedItself = !endNow(() => tx.abort());
    const reason = await ended;
    // What `work` ran into is then only that the transaction is over; why the browser ended it says more.
    throw endedItself && reason !== null ? reason : error;
  }
  const failure = await ended;
  if (failure !== null) throw failure;
  return value;
}

/** False when the transaction was over already. */
function endNow(end: () => void): boolean {
  try {
    end();
    return true;
  } catch {
    // InvalidStateError: the one thing that either can fail by.
    return false;
  }
}
