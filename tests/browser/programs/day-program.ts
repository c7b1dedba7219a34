import { cents } from '../../../src/domain/money/cents.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { openStore } from '../../../src/store/open-store.ts';
import type { Store } from '../../../src/store/store.ts';
import type { DayLot } from '../days/day-lot.ts';

/** Fills a store with the lots of a counted day, and lets time pass over them: the tests call this from outside. */
const program = {
  /** Keeps the setup and the lots, each as long ago as it says. Gives the lots' ids in their order. */
  async fill(setup: Setup, lots: readonly DayLot[]): Promise<readonly string[]> {
    const start = Date.now();
    const at = (minutesAgo: number) => instant(start - minutesAgo * MINUTE);
    let clock = at(Math.max(...lots.map(({ addedMinutesAgo }) => addedMinutesAgo)));
    return withStore(
      () => clock,
      async (store) => {
        value(await store.saveSetup(setup));
        const { lots: ids } = value(await store.addLots('typed', lots));
        const later = lots
          .flatMap(({ then = [] }, i) => then.map((what) => ({ id: ids[i], ...what })))
          .sort((one, other) => other.minutesAgo - one.minutesAgo);
        for (const { id, minutesAgo, proxy, set } of later) {
          if (id === undefined) throw new Error('a lot was not kept');
          clock = at(minutesAgo);
          if (proxy !== undefined)
            value(await store.noteBid(id, { action: 'proxy-placed', cents: cents(proxy * 100), at: clock }));
          if (set !== undefined) value(await store.changeLot(id, { set }));
        }
        return ids;
      },
    );
  },

  /** Removes every lot from the list, so that another day can begin. */
  async clear(): Promise<void> {
    await withStore(now, async (store) => {
      const all = (await store.allLots()).filter(({ dropped }) => !dropped);
      value(
        await store.append(all.map(({ id }) => ({ subject: subjectOfLot(id), happening: { kind: 'lot-dropped' } }))),
      );
    });
  },

  /** Reads a price on the page of a lot, as the background does that nobody watches. */
  async seePrice(number: string, price: number): Promise<void> {
    await withStore(now, async (store) => {
      const lot = await lotOf(store, number);
      const evidence = { priceNow: { from: 'page-text', text: `$${price}`, sure: 'certain' } } as const;
      value(await store.changeLot(lot.id, { set: { priceNow: cents(price * 100) }, evidence }));
    });
  },

  /** Lets an hour or so pass: every close comes that much nearer. */
  async pass(minutes: number): Promise<void> {
    await withStore(now, async (store) => {
      const open = (await store.allLots()).filter(({ dropped, facts }) => !dropped && facts.close !== undefined);
      const changes = open.flatMap(({ id, facts: { close } }) => {
        if (close === undefined) return [];
        const sooner = { ...close, instant: instant(close.instant - minutes * MINUTE) };
        const happening: Happening = { kind: 'lot-changed', set: { close: sooner }, clear: [], evidence: {} };
        return [{ subject: subjectOfLot(id), happening }];
      });
      value(await store.append(changes));
    });
  },

  /** What is kept of a lot: its proxy, how it ended, and who wrote the last entry about it. */
  async kept(number: string): Promise<{ proxy: number | null; ended: string; author: string; entries: number }> {
    return withStore(now, async (store) => {
      const { id, facts, sale } = await lotOf(store, number);
      const history = (await store.historyOfLot(id)).filter(({ counts }) => counts);
      const read = history.at(-1)?.read;
      return {
        proxy: facts.proxy === undefined ? null : facts.proxy / 100,
        ended: JSON.stringify(sale?.result?.result ?? null),
        author: read === undefined || read.as === 'unreadable' ? '' : read.raw.author,
        entries: history.length,
      };
    });
  },

  /** The numbers of the lots that have a proxy of exactly this kind: placed within the last minutes. */
  async placedSince(minutes: number): Promise<readonly string[]> {
    return withStore(now, async (store) => {
      const since = Date.now() - minutes * MINUTE;
      return (await store.allLots())
        .filter(({ dropped, sale }) => !dropped && sale?.bids.some(({ at }) => at >= since))
        .map(({ facts }) => facts.lotNumber ?? '')
        .sort();
    });
  },
};

const now = (): Instant => instant(Date.now());

async function lotOf(store: Store, number: string) {
  const lot = (await store.allLots()).find(({ dropped, facts }) => !dropped && facts.lotNumber === number);
  if (lot === undefined) throw new Error(`no lot ${number}`);
  return lot;
}

async function withStore<Value>(clock: () => Instant, work: (store: Store) => Promise<Value>): Promise<Value> {
  const store = value(
    await openStore({ now: clock, random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)) }),
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
    dayProgram: typeof program;
  }
}
window.dayProgram = program;
