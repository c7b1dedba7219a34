import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import type { Refusal } from '../../src/domain/outcome.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { openStore } from '../../src/store/open-store.ts';
import type { Store, StoreOptions } from '../../src/store/store.ts';

const START = Date.UTC(2026, 3, 10, 15);

/** A clock that goes one second a look, and can be set. */
export function testClock(start = START): { now: () => Instant; set(to: number): void } {
  let time = start;
  return {
    now() {
      time += 1000;
      return instant(time);
    },
    set(to) {
      time = to;
    },
  };
}

/** Bytes that differ at every call and are the same in every run with the same seed. */
export function testRandom(seed = 1): (bytes: number) => Uint8Array {
  let state = seed;
  const next = (): number => {
    state = (state * 1103515245 + 12345) % 2 ** 31;
    return state >> 16;
  };
  return (bytes) => Uint8Array.from({ length: bytes }, next);
}

/** An empty machine: databases of earlier tests are gone. */
export function freshBrowser(): void {
  globalThis.indexedDB = new IDBFactory();
  globalThis.IDBKeyRange = IDBKeyRange;
}

/**
 * Deaf to other stores unless asked otherwise: tests of other files run in threads of the same process, and hear each other.
 * @throws when the store cannot be opened.
 */
export async function openTestStore(options: Partial<StoreOptions> = {}): Promise<Store> {
  return value(await openStore({ now: testClock().now, random: testRandom(), channel: false, ...options }));
}

/** The value of an outcome that must be good. */
export function value<Value>(outcome: { ok: true; value: Value } | ({ ok: false } & Refusal)): Value {
  if (!outcome.ok) throw new Error(`refused: ${outcome.reason}: ${outcome.message}`);
  return outcome.value;
}
