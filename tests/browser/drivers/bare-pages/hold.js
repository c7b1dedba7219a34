// A worker that holds the database as a tab does that writes and writes, but sleeps between its requests, which only a worker
// can: one that asked without a pause would take a processor for itself. Whoever ends the worker lets go of the database.
// Pages of an extension can't make shared memory to sleep on by its own name, but get it from WebAssembly.
const bed = new Int32Array(new WebAssembly.Memory({ initial: 1, maximum: 1, shared: true }).buffer);
const PAUSE_MS = 100;

const opening = indexedDB.open('headroom');
opening.onerror = () => postMessage({ failure: String(opening.error) });
opening.onsuccess = () => {
  const names = [...opening.result.objectStoreNames];
  const store = opening.result.transaction(names, 'readwrite').objectStore('meta');
  let holds = false;
  const again = () => {
    if (holds) Atomics.wait(bed, 0, 0, PAUSE_MS);
    else postMessage({ failure: null });
    holds = true;
    store.get('head').onsuccess = again;
  };
  store.get('head').onsuccess = again;
};
