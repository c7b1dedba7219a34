import { DEMO_STORE } from '../store/demo-store.ts';

/** Where the demo begins, from any page of ours. */
export const DEMO_HREF = '?demo#/demo-load';

/** Whether this page shows the demo. It stays so for as long as the page is open, also when it is loaded anew. */
export const isDemo = (): boolean => new URLSearchParams(location.search).has('demo');

/** The name of the database that this page shows; undefined for the dealer's own. */
export const shownStore = (): string | undefined => (isDemo() ? DEMO_STORE : undefined);

/** A key of the browser's small storage, which the demo has for itself too. */
export const storageKey = (key: string): string => (isDemo() ? `${DEMO_STORE}.${key}` : key);

/** Deletes all that the demo stored in this browser. Its own connection must be closed. */
export async function deleteDemo(deleteStore: (name: string) => Promise<void>): Promise<void> {
  for (const storage of [localStorage, sessionStorage]) {
    for (const key of Object.keys(storage)) if (key.startsWith(`${DEMO_STORE}.`)) storage.removeItem(key);
  }
  await deleteStore(DEMO_STORE);
}
