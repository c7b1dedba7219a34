import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import { storeSchema } from '../../../src/domain/setup/store.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Store } from '../../../src/store/store.ts';
import type { NextLots } from '../../../src/store/views/first-rows.ts';
import { readFirstRows } from '../../../src/store/views/read-first-rows.ts';
import type { LotToAdd } from '../../../src/store/write/add-lots.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';
import { stepsFor, takeStep, threeStores } from '../store-acts.ts';

beforeEach(freshBrowser);

const EVER = instant(0);
const closing = (hour: number): LotToAdd => {
  const at = instant(Date.UTC(2026, 10, 28, hour));
  const close = { instant: at, text: '', zone: zone('America/Boise'), how: 'picked' } as const;
  return { facts: { vin: '5ZXA9NB95LC347889', close: { ...close, doubts: [], otherwise: [] } } };
};

/** Keeps, as the rows in words, all that they would be made from. */
const keep = (store: Store, build = '1', meanwhile: () => Promise<unknown> = async () => undefined) =>
  store.keepFirstRows({
    build,
    from: EVER,
    limit: 3,
    inWords: async (next) => {
      await meanwhile();
      return [next];
    },
  });

const lotsIn = (rows: readonly unknown[]) => (rows as readonly NextLots[]).map(({ lots }) => lots.map(({ id }) => id));

test('the next lots to close are kept in words, for the build that made them, and outlive everything but a change', async () => {
  const store = await openTestStore();
  expect(await readFirstRows('1')).toEqual([]);
  const { lots } = value(await store.addLots('typed', [18, 16, 17, 15].map(closing)));
  expect(await keep(store)).toBe(true);
  const soonest = [at(lots, 3), at(lots, 1), at(lots, 2)];
  expect(lotsIn(await readFirstRows('1'))).toEqual([soonest]);
  expect(await readFirstRows('2')).toEqual([]);

  value(await store.recordShown(['digest/2026-11-28']));
  value(await store.setAuthor('Marlo'));
  store.close();
  const again = await openTestStore({ random: testRandom(2) });
  expect(lotsIn(await readFirstRows('1'))).toEqual([soonest]);

  value(await again.dropLot(at(lots, 3)));
  expect(await readFirstRows('1')).toEqual([]);
});

test('what the words of a row rest on elsewhere, the setup and the car’s other lots, counts as well', async () => {
  const store = await openTestStore();
  const { lots } = value(await store.addLots('typed', [15, 16, 17, 18].map(closing)));
  const changes = [
    () => store.changeLot(at(lots, 3), { set: { miles: 91_000 } }),
    () => store.saveSetup({ store: storeSchema.parse({ name: 'Cottonwood', zone: 'America/Boise' }) }),
    () => store.rebuildViews(),
  ];
  for (const change of changes) {
    expect(await keep(store)).toBe(true);
    value<unknown>(await change());
    expect(await readFirstRows('1')).toEqual([]);
  }
});

test('rows that were overtaken while they were put into words are not kept', async () => {
  const store = await openTestStore();
  const { lots } = value(await store.addLots('typed', [15, 16].map(closing)));
  expect(await keep(store, '1', () => store.changeLot(at(lots, 1), { set: { miles: 91_000 } }))).toBe(false);
  expect(await readFirstRows('1')).toEqual([]);
});

test('where there is no database none is left behind, and rows that nobody wants are not kept', async () => {
  expect(await readFirstRows('1', { name: 'nowhere' })).toEqual([]);
  expect((await indexedDB.databases()).map(({ name }) => name)).not.toContain('nowhere');
  const store = await openTestStore();
  expect(await store.keepFirstRows({ build: '1', from: EVER, limit: 3, inWords: async () => null })).toBe(false);
  expect(await readFirstRows('1')).toEqual([]);
});

test('whatever is done, rows that are found are those that would be made now', async () => {
  let found = 0;
  await fc.assert(
    fc.asyncProperty(stepsFor(20), async (steps) => {
      const stores = await threeStores();
      for (const step of steps) {
        await takeStep(stores, step);
        const kept = await readFirstRows('1', { name: 'here' });
        await keep(at(stores, 0));
        const made = await readFirstRows('1', { name: 'here' });
        if (kept.length > 0) expect(kept).toEqual(made);
        if (kept.length > 0 && lotsIn(kept)[0]?.length !== 0) found += 1;
      }
      for (const store of stores) store.close();
    }),
    { numRuns: 20 },
  );
  // Otherwise nothing was held against anything.
  expect(found).toBeGreaterThan(10);
});
