import { beforeEach, expect, test } from 'vitest';
import { verifyChain } from '../../../src/journal/verify-chain.ts';
import type { LotToAdd } from '../../../src/store/write/add-lots.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { failWrite } from '../fault.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';
import { dump, storedEntries } from '../raw-database.ts';

beforeEach(freshBrowser);

const rows = (count: number): LotToAdd[] => Array.from({ length: count }, (_, i) => ({ facts: { lotNumber: `${i}` } }));

test('an import is written in batches and tells how far it is', async () => {
  const store = await openTestStore();
  const progress: number[] = [];
  const added = value(await store.addLots('file', rows(1001), { onProgress: (n) => progress.push(n) }));
  expect(progress).toEqual([125, 250, 375, 500, 625, 750, 875, 1000, 1001]);
  expect(added.lots).toHaveLength(1001);
  expect(added.entries).toHaveLength(9);
  expect(added.stopped).toBe(false);
  expect((await store.allLots()).map((lot) => lot.id)).toEqual(added.lots);
});

test('rows may come one by one, from something that takes its time', async () => {
  const store = await openTestStore();
  async function* slow() {
    for (const row of rows(7)) {
      await Promise.resolve();
      yield row;
    }
  }
  expect(value(await store.addLots('file', slow(), { batchSize: 3 })).entries).toHaveLength(3);
});

test('no rows make no entry', async () => {
  const store = await openTestStore();
  expect(value(await store.addLots('file', []))).toEqual({ lots: [], entries: [], stopped: false });
  expect(await storedEntries()).toEqual([]);
});

test('evidence and source come along', async () => {
  const store = await openTestStore();
  const evidence = { miles: { from: 'page-text', text: '91k', sure: 'likely' } } as const;
  const { lots } = value(await store.addLots('page', [{ facts: { miles: 91_000 }, evidence }]));
  expect(await store.lot(at(lots, 0))).toMatchObject({ source: 'page', evidence });
});

test('an import that is stopped keeps whole batches, says which, and can be taken back', async () => {
  const store = await openTestStore();
  const before = await store.allLots();
  const stop = new AbortController();
  const added = value(
    await store.addLots('file', rows(1000), { signal: stop.signal, onProgress: (n) => n === 500 && stop.abort() }),
  );
  expect(added).toMatchObject({ stopped: true, lots: { length: 500 }, entries: { length: 4 } });
  expect(await store.allLots()).toHaveLength(500);
  value(await store.undo(...added.entries));
  expect(await store.allLots()).toEqual(before);
});

test('an import that was stopped before its first row writes nothing', async () => {
  const store = await openTestStore();
  const added = value(await store.addLots('file', rows(3), { signal: AbortSignal.abort() }));
  expect(added).toEqual({ lots: [], entries: [], stopped: true });
  expect(await storedEntries()).toEqual([]);
});

test('a stop that comes after the last row was read stops nothing that is written already', async () => {
  const store = await openTestStore();
  const stop = new AbortController();
  const added = value(await store.addLots('file', rows(250), { signal: stop.signal, onProgress: () => stop.abort() }));
  expect(added).toMatchObject({ stopped: false, lots: { length: 250 } });
});

test('a disk that fills up half way keeps the whole batches, and says how many lots they hold', async () => {
  const store = await openTestStore();
  failWrite('lots', 260, 'disk-full');
  const answer = await store.addLots('file', rows(600));
  if (answer.ok) throw new Error('it was not refused');
  expect(answer.reason).toBe('disk-full');
  expect(answer.added).toMatchObject({ lots: { length: 250 }, entries: { length: 2 } });
  expect((await store.allLots()).map((lot) => lot.id)).toEqual(answer.added.lots);
  expect(verifyChain(await storedEntries())).toEqual([]);
  value(await store.undo(...answer.added.entries));
  expect(await store.allLots()).toEqual([]);
});

test('a row that is not valid refuses its batch, and writes nothing of it', async () => {
  const store = await openTestStore();
  const bad = [...rows(3), { facts: { miles: -5 } }];
  const answer = await store.addLots('file', bad, { batchSize: 2 });
  expect(answer).toMatchObject({ ok: false, reason: 'not-valid', added: { lots: { length: 2 } } });
  expect(await store.allLots()).toHaveLength(2);
});

test('others can write between the batches of an import', async () => {
  const importer = await openTestStore();
  const other = await openTestStore({ random: testRandom(2) });
  const order: string[] = [];
  const importing = importer.addLots('file', rows(2000), { onProgress: (n) => order.push(`${n}`) });
  const typing = other.addLots('typed', [{ facts: { make: 'Alder' } }]).then(() => order.push('typed'));
  await Promise.all([importing, typing]);
  expect(order.indexOf('typed')).toBeLessThan(order.indexOf('2000'));
  expect(verifyChain(await storedEntries())).toEqual([]);
});

test('a batch that was made for a place in the chain where another tab has written meanwhile is made anew', async () => {
  const importer = await openTestStore();
  const other = await openTestStore({ random: testRandom(2) });
  const typing: Promise<unknown>[] = [];
  const type = () => typing.push(other.addLots('typed', [{ facts: { make: 'Alder' } }]).then(value));
  const added = value(await importer.addLots('file', rows(100), { batchSize: 10, onProgress: type }));
  await Promise.all(typing);
  expect(typing).toHaveLength(10);
  const stored = await storedEntries();
  const imported = stored.filter(({ id }) => (added.entries as readonly string[]).includes(id));
  expect(imported).toHaveLength(10);
  // Some of what was typed stands between the batches.
  expect(stored.indexOf(at(imported, 9)) - stored.indexOf(at(imported, 0))).toBeGreaterThan(9);
  expect(verifyChain(stored)).toEqual([]);
  const kept = (await importer.allLots()).filter(({ source }) => source === 'file');
  expect(kept.map(({ facts }) => facts.lotNumber)).toEqual(rows(100).map(({ facts }) => facts.lotNumber));
});

test('an import of many batches is taken back, and brought back, in one step each', async () => {
  const store = await openTestStore();
  const added = value(await store.addLots('file', rows(1000)));
  value(await store.changeLot(at(added.lots, 999), { set: { miles: 5 } }));
  const { lots: before } = await dump();
  const undos = value(await store.undo(...added.entries));
  expect(await store.allLots()).toEqual([]);
  value(await store.undo(...undos.map((entry) => entry.id)));
  expect((await dump()).lots).toEqual(before);
});
