import { beforeEach, expect, test } from 'vitest';
import { NEW_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { storeSchema } from '../../../src/domain/setup/store.ts';
import type { Entry } from '../../../src/journal/entry.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import type { Change } from '../../../src/journal/make-entry.ts';
import { nextLotId } from '../../../src/journal/sortable-id.ts';
import { SETUP, subjectOfLot } from '../../../src/journal/subject.ts';
import { verifyChain } from '../../../src/journal/verify-chain.ts';
import type { Store } from '../../../src/store/store.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { failWrite } from '../fault.ts';
import { freshBrowser, openTestStore, testClock, testRandom, value } from '../open-test-store.ts';
import { dump, storedEntries } from '../raw-database.ts';

beforeEach(freshBrowser);

async function typedLot(store: Store, facts = { make: 'Alder', miles: 91_000 }): Promise<LotId> {
  return at(value(await store.addLots('typed', [{ facts }])).lots, 0);
}
const first = (entries: readonly Entry[]): EntryId => at(entries, 0).id;

test('a lot that was typed can be read, changed, dropped, and taken back step by step', async () => {
  const store = await openTestStore();
  const added = value(await store.addLots('typed', [{ facts: { make: 'Alder', miles: 91_000 } }]));
  const id = at(added.lots, 0);
  expect((await store.lot(id))?.facts).toEqual({ make: 'Alder', miles: 91_000 });

  const changed = first(value(await store.changeLot(id, { set: { miles: 92_000 }, clear: ['make'] })));
  expect((await store.lot(id))?.facts).toEqual({ miles: 92_000 });
  value(await store.dropLot(id));
  expect((await store.lot(id))?.dropped).toBe(true);

  const undo = first(value(await store.undo(changed)));
  expect(await store.lot(id)).toMatchObject({ facts: { make: 'Alder', miles: 91_000 }, dropped: true });
  value(await store.undo(undo));
  expect((await store.lot(id))?.facts).toEqual({ miles: 92_000 });

  value(await store.undo(...added.entries));
  expect(await store.lot(id)).toBeNull();
});

test('everything outlives closing and opening again', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  value(await store.saveSetup({ store: storeSchema.parse({ name: 'Cottonwood', zone: 'America/Boise' }) }));
  const { device } = await store.about();
  store.close();
  const again = await openTestStore({ random: testRandom(9) });
  expect((await again.lot(id))?.facts.make).toBe('Alder');
  expect((await again.setup())?.store?.name).toBe('Cottonwood');
  expect((await again.about()).device).toBe(device);
});

test('tabs and background that write at once lose nothing, and the chain stays one', async () => {
  const tabs = await Promise.all([1, 2, 3].map((seed) => openTestStore({ random: testRandom(seed) })));
  await Promise.all(
    Array.from({ length: 60 }, (_, i) => at(tabs, i % 3).addLots('typed', [{ facts: { lotNumber: `${i}` } }])),
  );
  const lots = await at(tabs, 0).allLots();
  expect(new Set(lots.map((lot) => lot.facts.lotNumber)).size).toBe(60);
  const entries = await storedEntries();
  expect(verifyChain(entries)).toEqual([]);
  expect(entries.map((entry) => entry.sequence)).toEqual(Array.from({ length: 60 }, (_, i) => i + 1));
});

test('two tabs that open a new browser at once agree on one device', async () => {
  const [one, two] = await Promise.all([openTestStore(), openTestStore({ random: testRandom(2) })]);
  expect((await one.about()).device).toBe((await two.about()).device);
});

test('two tabs that change the same lot at once both leave their mark', async () => {
  const [one, two] = [await openTestStore(), await openTestStore({ random: testRandom(2) })];
  const id = await typedLot(one);
  await Promise.all([
    one.changeLot(id, { set: { priceNow: cents(900_000) } }),
    two.changeLot(id, { set: { notes: 'called the seller' } }),
  ]);
  expect((await one.lot(id))?.facts).toMatchObject({ priceNow: 900_000, notes: 'called the seller' });
});

test('ids keep their order when the clock goes back a day', async () => {
  const clock = testClock();
  const store = await openTestStore({ now: clock.now });
  const id = await typedLot(store);
  clock.set(Date.UTC(2026, 3, 9));
  value(await store.changeLot(id, { set: { miles: 1 } }));
  value(await store.changeLot(id, { set: { miles: 2 } }));
  expect((await store.lot(id))?.facts.miles).toBe(2);
  const ids = (await storedEntries()).map((entry) => entry.sequence);
  expect(ids).toEqual([1, 2, 3]);
});

test('several changes are written all or none', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const before = await dump();
  const missing = nextLotId(testClock().now(), null, new Uint8Array(8));
  const answer = await store.append([
    { subject: subjectOfLot(id), happening: { kind: 'lot-changed', set: { miles: 5 }, clear: [], evidence: {} } },
    { subject: subjectOfLot(missing), happening: { kind: 'lot-dropped' } },
  ]);
  expect(answer).toMatchObject({ ok: false, reason: 'no-such-lot' });
  expect(await dump()).toEqual(before);
});

test('what its own schema refuses is not written, because no backup with it could be read', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const answer = await store.changeLot(id, { set: { notes: 'x'.repeat(4001) } });
  expect(answer).toMatchObject({ ok: false, reason: 'not-valid', message: expect.stringContaining('set.notes') });
  expect(await store.historyOfLot(id)).toHaveLength(1);
});

test('a happening that does not fit its subject is our mistake, and is thrown', async () => {
  const store = await openTestStore();
  await expect(store.append([{ subject: SETUP, happening: { kind: 'lot-dropped' } }])).rejects.toThrow('about a lot');
  expect(await storedEntries()).toEqual([]);
});

test.each(['entries', 'lots', 'meta'])('a write to %s that throws leaves nothing half written', async (name) => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const before = await dump();
  const struck = failWrite(name, name === 'meta' ? 1 : 2, 'throws');
  const write = store.append([
    { subject: subjectOfLot(id), happening: { kind: 'lot-changed', set: { miles: 5 }, clear: [], evidence: {} } },
    { subject: subjectOfLot(id), happening: { kind: 'lot-dropped' } },
  ]);
  await expect(write).rejects.toThrow('made to fail');
  expect(struck()).toBe(true);
  expect(await dump()).toEqual(before);
});

test('a request that fails is said to the user, leaves nothing half written, and the next write works', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const before = await dump();
  failWrite('lots', 1, 'fails');
  expect(await store.dropLot(id)).toMatchObject({ ok: false, reason: 'database-failed' });
  expect(await dump()).toEqual(before);
  value(await store.dropLot(id));
  expect((await store.lot(id))?.dropped).toBe(true);
});

test('a full disk is said to the user, and leaves nothing half written', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const before = await dump();
  const struck = failWrite('lots', 1, 'disk-full');
  const answer = await store.dropLot(id);
  expect(struck()).toBe(true);
  expect(answer).toMatchObject({ ok: false, reason: 'disk-full', message: expect.stringContaining('Free some space') });
  expect(await dump()).toEqual(before);
});

test('a disk that is full only when everything is to be kept is said all the same', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const before = await dump();
  const struck = failWrite('meta', 1, 'disk-full-at-commit');
  expect(await store.dropLot(id)).toMatchObject({ ok: false, reason: 'disk-full' });
  expect(struck()).toBe(true);
  expect(await dump()).toEqual(before);
});

test('several undos are written from the latest to the earliest, in whatever order they are asked for', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const changes: EntryId[] = [];
  for (const miles of [1, 2, 3]) changes.push(first(value(await store.changeLot(id, { set: { miles } }))));
  const [one, two, three] = changes.map((_, i) => at(changes, i));
  if (one === undefined || two === undefined || three === undefined) throw new Error('three changes were made');
  const undos = value(await store.undo(two, three, one));
  expect(undos.map(({ happening }) => happening)).toEqual(
    [three, two, one].map((entry) => ({ kind: 'undone', entry })),
  );
  expect((await store.lot(id))?.facts.miles).toBe(91_000);
});

test('a journal of more entries than one request asks for is read to its end', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const change = (miles: number): Change => ({
    subject: subjectOfLot(id),
    happening: { kind: 'lot-changed', set: { miles }, clear: [], evidence: {} },
  });
  value(await store.append(Array.from({ length: 450 }, (_, i) => change(i))));
  const { heads } = await store.checkJournal();
  const noted = { heads, keys: [] };
  expect(await store.checkJournal(noted)).toMatchObject({ entries: 451, findings: [], noted: [{ as: 'kept' }] });
  value(await store.rebuildViews());
  expect((await store.lot(id))?.facts.miles).toBe(449);
});

test('alerts that are recorded already make no entry', async () => {
  const store = await openTestStore();
  expect(value(await store.recordShown(['a', 'b', 'a']))).toHaveLength(1);
  expect(value(await store.recordShown(['b', 'a']))).toEqual([]);
  expect(value(await store.recordShown(['b', 'c']))).toMatchObject([{ happening: { keys: ['c'] } }]);
  expect([...(await store.shownAlerts()).keys()]).toEqual(['a', 'b', 'c']);
  expect(value(await store.recordShown([]))).toEqual([]);
});

test('a new setup names its accounts; one that was saved before they had other names keeps its own', async () => {
  const shop = storeSchema.parse({ name: 'Cottonwood', zone: 'America/Boise' });
  const fresh = await openTestStore();
  value(await fresh.saveSetup({ store: shop }));
  expect((await fresh.setup())?.books?.accounts.undone).toBe('Expenses:CanceledSales');
  value(await fresh.saveSetup({ store: { ...shop, name: 'Two' } }));
  expect((await fresh.setup())?.books?.accounts.undone).toBe('Expenses:CanceledSales');

  freshBrowser();
  const older = await openTestStore();
  value(await older.append([{ subject: SETUP, happening: { kind: 'setup-changed', set: { store: shop } } }]));
  value(await older.saveSetup({ store: { ...shop, name: 'Two' } }));
  expect((await older.setup())?.books).toBeUndefined();
});

test('the setup is null until it is saved, and again when all of it was undone', async () => {
  const store = await openTestStore();
  expect(await store.setup()).toBeNull();
  const saved = first(
    value(await store.saveSetup({ store: storeSchema.parse({ name: 'Cottonwood', zone: 'America/Boise' }) })),
  );
  expect(await store.setup()).toEqual({
    store: { name: 'Cottonwood', zone: 'America/Boise' },
    books: NEW_BOOKKEEPING,
  });
  value(await store.undo(saved));
  expect(await store.setup()).toBeNull();
  expect(await store.historyOfSetup()).toMatchObject([{ counts: false }, { counts: true }]);
});

test('undo refuses what is not there and what was undone already, and writes nothing', async () => {
  const store = await openTestStore();
  const id = await typedLot(store);
  const dropped = first(value(await store.dropLot(id)));
  value(await store.undo(dropped));
  const before = await dump();
  expect(await store.undo(dropped)).toMatchObject({ ok: false, reason: 'already-undone' });
  const nowhere = dropped.replace(/^.{4}/, '0000') as EntryId;
  expect(await store.undo(nowhere)).toMatchObject({ ok: false, reason: 'no-such-entry' });
  expect(await dump()).toEqual(before);
});

test('entries say who wrote them; a name can be changed, an empty one is refused', async () => {
  const store = await openTestStore({ author: 'manager' });
  const id = await typedLot(store);
  expect((await storedEntries()).map((entry) => entry.author)).toEqual(['manager']);
  value(await store.setAuthor('  bookkeeper '));
  value(await store.dropLot(id));
  expect((await storedEntries()).map((entry) => entry.author)).toEqual(['manager', 'bookkeeper']);
  expect(await store.setAuthor('  ')).toMatchObject({ ok: false, reason: 'bad-author' });
});

test('nobody has said who writes until it is said once, and then it stays said', async () => {
  const store = await openTestStore();
  await typedLot(store);
  expect(await store.author()).toEqual({ name: 'buyer', given: false });
  expect(await store.setAuthor('')).toMatchObject({ ok: false });
  expect((await store.author()).given).toBe(false);
  value(await store.setAuthor('buyer'));
  store.close();
  const again = await openTestStore();
  expect(await again.author()).toEqual({ name: 'buyer', given: true });
});
