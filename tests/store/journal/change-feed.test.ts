import { beforeEach, expect, onTestFinished, test, vi } from 'vitest';
import { changeFeed } from '../../../src/store/journal/change-feed.ts';
import type { Store } from '../../../src/store/store.ts';
import { bothChanges, EVERYTHING, type StoreChange } from '../../../src/store/write/touched.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';

beforeEach(() => {
  freshBrowser();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
  return () => vi.useRealTimers();
});

async function openTab(seed: number, channel = true): Promise<{ store: Store; seen: StoreChange[] }> {
  const store = await openTestStore({ random: testRandom(seed), channel });
  const seen: StoreChange[] = [];
  store.subscribe((change) => seen.push(change));
  onTestFinished(() => store.close());
  return { store, seen };
}
/** Until messages have come over from other tabs and, by the clock, the feed has gathered and delivered. */
async function settled(): Promise<void> {
  for (let turn = 0; turn < 20; turn++) await new Promise((resolve) => setImmediate(resolve));
  await vi.advanceTimersByTimeAsync(450);
}

test('a change is told here and in the other tab, with the lots it touched', async () => {
  const [here, there] = [await openTab(1), await openTab(2)];
  const { lots } = value(await here.store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  await settled();
  const expected = [{ lots, setup: false, alerts: false }];
  expect(here.seen).toEqual(expected);
  expect(there.seen).toEqual(expected);
});

test('changes in quick succession are told together', async () => {
  const [here, there] = [await openTab(1), await openTab(2)];
  const { lots } = value(await here.store.addLots('typed', [{ facts: {} }, { facts: {} }], { batchSize: 1 }));
  value(await here.store.recordShown(['a']));
  await settled();
  expect(here.seen).toEqual([{ lots, setup: false, alerts: true }]);
  expect(there.seen).toHaveLength(1);
});

test('a large import is told as many lots, not batch by batch', async () => {
  const { store, seen } = await openTab(1);
  const rows = Array.from({ length: 3000 }, () => ({ facts: {} }));
  value(await store.addLots('file', rows, { batchSize: 150 }));
  await settled();
  expect(seen).toEqual([{ lots: 'many', setup: false, alerts: false }]);
});

test('an undo tells which lots it touched; a restore tells that everything did', async () => {
  const { store, seen } = await openTab(1);
  const added = value(await store.addLots('typed', [{ facts: {} }]));
  await settled();
  value(await store.undo(...added.entries));
  await settled();
  expect(at(seen, 1).lots).toEqual(added.lots);
  value(await store.rebuildViews());
  await settled();
  expect(at(seen, 2)).toEqual(EVERYTHING);
});

test('nothing is told of a write that failed, or that wrote nothing', async () => {
  const { store, seen } = await openTab(1);
  await store.addLots('typed', [{ facts: { miles: -1 } }]);
  await store.recordShown([]);
  await settled();
  expect(seen).toEqual([]);
});

test('a listener that stopped, and a store that was closed, hear nothing', async () => {
  const [here, there] = [await openTab(1), await openTab(2)];
  const listener = vi.fn();
  here.store.subscribe(listener)();
  there.store.close();
  value(await here.store.recordShown(['a']));
  await settled();
  expect(listener).not.toHaveBeenCalled();
  expect(there.seen).toEqual([]);
});

test('without a channel between tabs, the journal is looked at, and a change by another is told', async () => {
  const [here, there] = [await openTab(1, false), await openTab(2, false)];
  await vi.advanceTimersByTimeAsync(2000);
  await settled();
  value(await here.store.recordShown(['a']));
  await settled();
  expect(there.seen).toEqual([]);
  for (let look = 0; look < 3; look++) {
    await vi.advanceTimersByTimeAsync(2000);
    await settled();
    expect(there.seen).toEqual([EVERYTHING]);
  }
});

test('a listener that fails does not keep the change from the others', async () => {
  const feed = changeFeed(null);
  const later = vi.fn();
  const reported = vi.fn();
  vi.spyOn(globalThis, 'queueMicrotask').mockImplementation((task) => {
    try {
      task();
    } catch (error) {
      reported(error);
    }
  });
  feed.subscribe(() => {
    throw new Error('made to fail');
  });
  feed.subscribe(later);
  feed.announce(EVERYTHING);
  await settled();
  expect(later).toHaveBeenCalledWith(EVERYTHING);
  expect(reported).toHaveBeenCalledWith(new Error('made to fail'));
});

test('two changes together are what either touched', () => {
  const lots = (many: number) => Array.from({ length: many }, (_, i) => `${i}` as never);
  const a = { lots: lots(2), setup: true, alerts: false };
  expect(bothChanges(a, { lots: lots(3), setup: false, alerts: true })).toEqual({
    lots: lots(3),
    setup: true,
    alerts: true,
  });
  expect(bothChanges(a, { ...a, lots: 'many' }).lots).toBe('many');
  expect(bothChanges(a, { ...a, lots: lots(101) }).lots).toBe('many');
});
