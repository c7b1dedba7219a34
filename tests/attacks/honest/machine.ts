import { createHash } from 'node:crypto';
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { openStore } from '../../../src/store/open-store.ts';
import type { Store } from '../../../src/store/store.ts';

/** One clock for all, on a Thursday morning in store time; each computer may be wrong by its own minutes. */
export class Clock {
  time: number;
  constructor(start: number) {
    this.time = start;
  }
  later(minutes: number): void {
    this.time += minutes * 60_000;
  }
  at(minutes: number): Instant {
    return instant(this.time + minutes * 60_000);
  }
  /** A look takes a second. */
  seenFrom(wrongByMinutes: number): () => Instant {
    return () => {
      this.time += 1000;
      return instant(this.time + wrongByMinutes * 60_000);
    };
  }
}

/** Bytes that are the same in every run, and look like chance. */
export function seededBytes(seed: string): (bytes: number) => Uint8Array {
  let drawn = 0;
  return (wanted) => {
    const out = new Uint8Array(wanted);
    for (let at = 0; at < wanted; at += 32) {
      const block = createHash('sha256').update(`${seed} ${drawn++}`).digest();
      out.set(block.subarray(0, Math.min(32, wanted - at)), at);
    }
    return out;
  };
}

/** Databases of an earlier story are gone. */
export function freshMachine(): void {
  globalThis.indexedDB = new IDBFactory();
  globalThis.IDBKeyRange = IDBKeyRange;
}

export async function computer(clock: Clock, who: string, wrongByMinutes = 0, seed = who): Promise<Store> {
  return value(
    await openStore({
      now: clock.seenFrom(wrongByMinutes),
      random: seededBytes(seed),
      author: who,
      name: who,
      channel: false,
      room: async () => null,
    }),
  );
}

/** What the one has goes to the other, by a backup. */
export async function carry(from: Store, to: Store): Promise<void> {
  const { blob } = await from.backup();
  value(await to.restore(value(await readBackup(blob)), { mode: 'merge' }));
}

export function value<Value>(
  outcome: { ok: true; value: Value } | { ok: false; reason: string; message: string },
): Value {
  if (!outcome.ok) throw new Error(`refused: ${outcome.reason}: ${outcome.message}`);
  return outcome.value;
}

/** The only one of a list; a list of another length is a mistake of the story. */
export function only<Item>(list: readonly Item[]): Item {
  const [item] = list;
  if (item === undefined || list.length !== 1) throw new Error(`one was expected, and there are ${list.length}`);
  return item;
}

/** A signature by the key of a computer over something else than a head, in hexadecimal. */
export async function signedElsewhere(database: string): Promise<string> {
  const db = await openDB(database);
  const pair: CryptoKeyPair = await db.get('meta', 'signing-key');
  db.close();
  const bytes = new TextEncoder().encode('Headroom invitation of nobody');
  return Buffer.from(await crypto.subtle.sign('Ed25519', pair.privateKey, bytes)).toString('hex');
}
