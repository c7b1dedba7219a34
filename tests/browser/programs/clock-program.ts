import type { LotId } from '../../../src/domain/lot/lot.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { HOUR } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { openStore } from '../../../src/store/open-store.ts';
import type { Store } from '../../../src/store/store.ts';

/** Lots with closes, and what became of their alerts, without any screen: the tests call this from outside. */
const program = {
  /**
   * Keeps lots as if they had come in an hour ago, closing so many seconds from now.
   * @param leads minutes before the close, instead of those of the rules; null is what an argument left out arrives as
   */
  async add(secondsFromNow: readonly number[], leads: number[] | null): Promise<readonly string[]> {
    return withStore(-HOUR, async (store) => {
      const added = value(
        await store.addLots(
          'typed',
          secondsFromNow.map((seconds, i) => ({
            facts: {
              model: `Hauler ${i}`,
              close: {
                instant: instant(Date.now() + Math.round(seconds * 1000)),
                text: 'as the sale says it',
                zone: zone('America/Boise'),
                how: 'stated-zone',
                doubts: [],
                otherwise: [],
              },
            },
          })),
          // One entry and one write to the disk, however many.
          { batchSize: secondsFromNow.length },
        ),
      );
      if (leads !== null)
        for (const id of added.lots)
          value(
            await store.append([
              { subject: subjectOfLot(id), happening: { kind: 'lot-alerts-changed', leadMinutes: leads } },
            ]),
          );
      return added.lots;
    });
  },

  /** Of these lots, those of which nothing was recorded as said. */
  async unsaid(ids: readonly string[]): Promise<string[]> {
    return withStore(0, async (store) => {
      const said = new Set([...(await store.shownAlerts()).keys()].map((key) => key.split(' ')[0]));
      return ids.filter((id) => !said.has(id));
    });
  },

  /**
   * Leaves a lot as nobody can have meant it: with a retail that an older Headroom would have taken, or (without one) in a
   * row that no Headroom ever wrote.
   */
  async poison(id: string, retail: { low?: number; likely: number; high?: number } | null): Promise<void> {
    if (retail !== null) {
      await withStore(0, async (store) =>
        value(await store.changeLot(id as LotId, { set: { retail: retail as never } })),
      );
      return;
    }
    const lot = await program.lot(id);
    const opening = indexedDB.open('headroom');
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const writing = database.transaction('lots', 'readwrite');
    writing.objectStore('lots').put({ ...lot, facts: { ...lot?.facts, retail: { likely: 'nobody knows' }, year: {} } });
    await new Promise<void>((resolve, reject) => {
      writing.oncomplete = () => resolve();
      writing.onerror = () => reject(writing.error);
    });
    database.close();
  },

  lot: (id: string): Promise<LotState | null> => withStore(0, (store) => store.lot(id as LotId)),

  findings: (): Promise<number> => withStore(0, async (store) => (await store.checkJournal()).findings.length),

  /** No evening lists and reminders, whatever day it is: only the calls of the lots. */
  quiet: (): Promise<boolean> =>
    withStore(0, async (store) => {
      const { alerts } = startingSetup(zone('America/Boise'));
      const plain = { ...alerts, digestAt: null, beforeRushMinutes: null, reactionMinutes: 0 };
      return (await store.saveSetup({ alerts: plain })).ok;
    }),

  /** Holds the database as a tab does that writes and writes; others wait until `release`. */
  hold(): Promise<void> {
    holder = new Worker('/bare-pages/hold.js');
    const worker = holder;
    return new Promise((resolve, reject) => {
      worker.onerror = (event) => reject(new Error(event.message));
      worker.onmessage = ({ data }: MessageEvent<{ readonly failure: string | null }>) =>
        data.failure === null ? resolve() : reject(new Error(data.failure));
    });
  },
  release(): void {
    holder?.terminate();
  },

  /** Closes every notice, as its user does who has read it. */
  async dismissAll(): Promise<void> {
    for (const id of Object.keys(await chrome.notifications.getAll())) await chrome.notifications.clear(id);
  },

  planAgain: (): Promise<unknown> => chrome.runtime.sendMessage({ headroom: 'plan-again', request: {} }),
};

let holder: Worker | undefined;

async function withStore<Value>(clockAhead: number, work: (store: Store) => Promise<Value>): Promise<Value> {
  const store = value(
    await openStore({
      now: () => instant(Date.now() + clockAhead),
      random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
    }),
  );
  try {
    return await work(store);
  } finally {
    store.close();
  }
}

function value<Value>(outcome: { ok: true; value: Value } | { ok: false; reason: string; message: string }): Value {
  if (!outcome.ok) throw new Error(`${outcome.reason}: ${outcome.message}`);
  return outcome.value;
}

declare global {
  interface Window {
    clockProgram: typeof program;
  }
}
window.clockProgram = program;
