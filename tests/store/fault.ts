import { IDBObjectStore } from 'fake-indexeddb';
import { onTestFinished } from 'vitest';

/**
 * How the browser lets a write down:
 * - `throws`: the call itself throws, as for a value that cannot be stored;
 * - `fails`: the request comes back with an error, and the transaction ends;
 * - `disk-full`: the transaction ends with that as its error;
 * - `disk-full-at-commit`: the same, once every request of it has succeeded.
 */
type Fault = 'throws' | 'fails' | 'disk-full' | 'disk-full-at-commit';

/** fake-indexeddb has no full disk; `_abort` is how it ends a transaction with an error of its own. */
function strike(store: IDBObjectStore, fault: Fault): void {
  if (fault === 'throws') throw new TypeError('made to fail');
  if (fault === 'fails') store.transaction.abort();
  else (store.transaction as IDBTransaction & { _abort(name: string): void })._abort('QuotaExceededError');
}

/**
 * Lets the nth write to a store go wrong, counted from now, once, until the test is over. Returns how to ask whether it
 * came to that.
 */
export function failWrite(storeName: string, nth: number, fault: Fault): () => boolean {
  const { put, add } = IDBObjectStore.prototype;
  let writes = 0;
  const struck = (): boolean => writes >= nth;
  const wrap = (original: typeof put): typeof put =>
    function (this: IDBObjectStore, value, key) {
      if (this.name !== storeName) return original.call(this, value, key);
      writes += 1;
      if (writes === nth && fault === 'throws') strike(this, fault);
      const request = original.call(this, value, key);
      if (writes === nth && fault === 'disk-full-at-commit')
        request.addEventListener('success', () => queueMicrotask(() => strike(this, fault)));
      else if (writes === nth) strike(this, fault);
      return request;
    };
  IDBObjectStore.prototype.put = wrap(put);
  IDBObjectStore.prototype.add = wrap(add);
  onTestFinished(() => {
    Object.assign(IDBObjectStore.prototype, { put, add });
  });
  return struck;
}
