import { DEMO_ZONE, demoSetup } from '../../../src/demo/demo-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../../src/journal/sortable-id.ts';
import { openStore } from '../../../src/store/open-store.ts';
import { readFirstRows } from '../../../src/store/views/read-first-rows.ts';
import { wonCars } from './won-cars.ts';

const random = (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes));

/** What the benchmark of the books does in a page of the extension without any screen. */
const program = {
  /** Has the dealer win `count` cars more, after the `from` that are there. */
  async win(from: number, count: number): Promise<void> {
    const now = instant(Date.now());
    const opened = await openStore({ name: 'headroom', now: () => instant(Date.now()), random, channel: false });
    if (!opened.ok) throw new Error(opened.message);
    const store = opened.value;
    if (from === 0) await store.saveSetup(demoSetup(dateIn(DEMO_ZONE, now)));
    let last: ReturnType<typeof nextLotId> | null = null;
    const ids = () => {
      last = nextLotId(now, last, random(ID_RANDOM_BYTES));
      return last;
    };
    for (const changes of wonCars(from, count, now, ids)) {
      const written = await store.append(changes);
      if (!written.ok) throw new Error(written.message);
    }
    store.close();
  },

  /** Whether the background has put the first folders into words. */
  async foldersAreKept(): Promise<boolean> {
    const wish = { what: 'first-folders', now: instant(Date.now()) } as const;
    return (await readFirstRows(chrome.runtime.getManifest().version, wish)).length > 0;
  },
};

declare global {
  interface Window {
    booksProgram: typeof program;
  }
}
window.booksProgram = program;
