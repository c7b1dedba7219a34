import { beforeEach, expect, test } from 'vitest';
import { firstRowsKeeper, seeToFirstRows } from '../../src/background/first-rows-keeper.ts';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../src/journal/sortable-id.ts';
import type { Store } from '../../src/store/store.ts';
import { readFirstRows } from '../../src/store/views/read-first-rows.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../store/open-test-store.ts';

const NOW = instant(Date.parse('2026-11-26T17:00Z'));
const random = testRandom(7);

beforeEach(freshBrowser);

async function demoStore(): Promise<Store> {
  const store = await openTestStore();
  const { setup, lots } = demoScenario(NOW, () => nextLotId(NOW, null, random(ID_RANDOM_BYTES)));
  value(await store.saveSetup(setup));
  value(await store.addLots('typed', lots));
  return store;
}

const kept = async () => (await readFirstRows('1')) as readonly RowWords[];
const closes = (rows: readonly RowWords[]) => rows.map(({ close }) => close?.instant ?? 0);

test('the next lots to close are put into the words of their rows, on the store’s clock', async () => {
  const store = await demoStore();
  await seeToFirstRows(store, '1', NOW);
  const rows = await kept();
  expect(rows.length).toBeGreaterThan(20);
  expect(closes(rows)).toEqual(closes(rows).toSorted((a, b) => a - b));
  expect(Math.min(...closes(rows))).toBeGreaterThan(NOW);
  const clock = new Intl.DateTimeFormat('en-US', {
    timeZone: zone('America/Boise'),
    hour: 'numeric',
    minute: '2-digit',
  });
  for (const { close } of rows) expect(close?.when).toContain(clock.format(close?.instant).replace('\u202f', ' '));
  // The demo has lots that can be bid for, that can't be worked out yet, and whose listing does not fit together.
  expect(new Set(rows.map(({ maxBid }) => maxBid.as))).toContain('figure');
  expect(rows.map(({ todo }) => todo.words)).toEqual(expect.arrayContaining(['No proxy yet', 'check the close']));
});

test('they are left alone while most of them are still to close, and made anew when they are not or something changed', async () => {
  const store = await demoStore();
  await seeToFirstRows(store, '1', NOW);
  const before = await kept();
  await seeToFirstRows(store, '1', instant((closes(before)[0] ?? 0) + 1));
  expect(await kept()).toEqual(before);
  const late = instant((closes(before)[Math.ceil(before.length * 0.6)] ?? 0) + 1);
  await seeToFirstRows(store, '1', late);
  expect((await kept()).length).toBeLessThan(before.length);
  expect(Math.min(...closes(await kept()))).toBeGreaterThan(late);

  value(await store.changeLot(at(await kept(), 0).id, { set: { lotNumber: '7007' } }));
  expect(await kept()).toEqual([]);
  await seeToFirstRows(store, '1', late);
  expect((await kept())[0]?.sub).toContain('lot 7007');
});

test('no rows are kept on a clock that is only the computer’s, nor where nothing is left to close', async () => {
  const store = await openTestStore();
  const { lots } = demoScenario(NOW, () => nextLotId(NOW, null, random(ID_RANDOM_BYTES)));
  value(await store.addLots('typed', lots));
  await seeToFirstRows(store, '1', NOW);
  expect(await kept()).toEqual([]);
  const whole = await demoStore();
  await seeToFirstRows(whole, '1', instant(NOW + 30 * 86_400_000));
  expect(await kept()).toEqual([]);
});

test('however many looks are taken, the rows are seen to once, when it is calm again', async () => {
  const store = await demoStore();
  const timers = new Set<() => void>();
  const closed = new Promise<void>((resolve) => {
    const look = firstRowsKeeper({
      now: () => NOW,
      build: () => '1',
      openStore: async () => ({ ok: true, value: { ...store, close: resolve } }),
      after: (_, then) => {
        timers.add(then);
        return () => timers.delete(then);
      },
    });
    for (let i = 0; i < 3; i++) look();
  });
  expect(timers.size).toBe(1);
  expect(await kept()).toEqual([]);
  for (const then of timers) then();
  await closed;
  expect((await kept()).length).toBeGreaterThan(20);
});
