import { forceCloseDatabase } from 'fake-indexeddb';
import { openDB, unwrap } from 'idb';
import { beforeEach, expect, test, vi } from 'vitest';
import { MIGRATIONS } from '../../../src/store/connection/migrations/list.ts';
import type { Migration } from '../../../src/store/connection/migrations/migration.ts';
import { openDatabase } from '../../../src/store/connection/open-database.ts';
import { StoreUnavailable } from '../../../src/store/connection/storage-failure.ts';
import { openStore } from '../../../src/store/open-store.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testClock, testRandom, value } from '../open-test-store.ts';
import { dump } from '../raw-database.ts';

beforeEach(freshBrowser);

const next = (up: Migration['up'], number = MIGRATIONS.length + 1): Migration => ({ number, name: 'next', up });
const options = { now: testClock().now, random: testRandom() };

async function versionOf(name: string): Promise<number> {
  const database = await openDB(name);
  const { version } = database;
  database.close();
  return version;
}

test('a migration that fails leaves the version and the data as they were', async () => {
  const store = await openTestStore();
  value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  store.close();
  const before = await dump();
  const broken = next((database) => {
    database.createObjectStore('half-way');
    throw new Error('made to fail');
  });
  const opened = await openDatabase('headroom', { migrations: [...MIGRATIONS, broken] });
  expect(opened).toMatchObject({
    ok: false,
    reason: 'upgrade-failed',
    message: expect.stringContaining('unchanged'),
  });
  expect(await versionOf('headroom')).toBe(MIGRATIONS.length);
  expect(await dump()).toEqual(before);
  expect(await (await openTestStore()).allLots()).toHaveLength(1);
});

test('only the migrations that a database has not had are run', async () => {
  (await openTestStore()).close();
  const up = vi.fn();
  const database = value(await openDatabase('headroom', { migrations: [...MIGRATIONS, next(up)] }));
  expect(up).toHaveBeenCalledTimes(1);
  expect(database.version).toBe(MIGRATIONS.length + 1);
  database.close();
});

test('data of a newer version are refused, and not touched', async () => {
  (await openTestStore()).close();
  value(await openDatabase('headroom', { migrations: [...MIGRATIONS, next(() => undefined)] })).close();
  const before = await dump();
  expect(await openStore(options)).toMatchObject({ ok: false, reason: 'newer-data' });
  expect(await dump()).toEqual(before);
});

test('a tab of the older version lets go, is told so once, and writes nothing more', async () => {
  const notice = vi.fn();
  const old = await openTestStore({ onUpdatedElsewhere: notice });
  const opened = value(await openDatabase('headroom', { migrations: [...MIGRATIONS, next(() => undefined)] }));
  expect(notice.mock.calls).toEqual([[{ reason: 'updated-elsewhere', message: expect.stringContaining('Reload') }]]);
  expect(await old.addLots('typed', [{ facts: {} }])).toMatchObject({ ok: false, reason: 'updated-elsewhere' });
  await expect(old.allLots()).rejects.toBeInstanceOf(StoreUnavailable);
  expect(await opened.count('entries')).toBe(0);
  opened.close();
});

test('a connection that does not let go is named, and the wait does not block anyone later', async () => {
  value(await openDatabase('headroom')).close();
  const stubborn = await openDB('headroom');
  const migrations = [...MIGRATIONS, next(() => undefined)];
  expect(await openDatabase('headroom', { migrations, patience: 20 })).toMatchObject({ ok: false, reason: 'blocked' });
  stubborn.close();
  const third = [...migrations, next(() => undefined, MIGRATIONS.length + 2)];
  value(await openDatabase('headroom', { migrations: third, patience: 5000 })).close();
});

test('a wait that ends in time goes on as if nothing had been', async () => {
  value(await openDatabase('headroom')).close();
  const slow = await openDB('headroom');
  const opening = openDatabase('headroom', { migrations: [...MIGRATIONS, next(() => undefined)], patience: 5000 });
  setTimeout(() => slow.close(), 20);
  value(await opening).close();
});

test('a connection that the browser ended is opened again at the next use', async () => {
  const { open } = indexedDB;
  const connections: IDBDatabase[] = [];
  vi.spyOn(indexedDB, 'open').mockImplementation((...args) => {
    const request = open.apply(indexedDB, args);
    request.addEventListener('success', () => connections.push(request.result));
    return request;
  });
  const store = await openTestStore();
  value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  // Its declared parameter is a type of its own for the same object.
  forceCloseDatabase(at(connections, 0) as never);
  expect(await store.allLots()).toHaveLength(1);
  at(connections, 1).close();
  value(await store.addLots('typed', [{ facts: { make: 'Birch' } }]));
  expect(await store.allLots()).toHaveLength(2);
  expect(connections).toHaveLength(3);
});

test('after the user cleared the data under an open page, the page starts afresh', async () => {
  const store = await openTestStore();
  value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  const { device } = await store.about();
  await new Promise<void>((resolve, reject) => {
    const request = indexedDB.deleteDatabase('headroom');
    request.onsuccess = () => resolve();
    request.onerror = () => reject(request.error);
  });
  expect(await store.allLots()).toEqual([]);
  value(await store.addLots('typed', [{ facts: { make: 'Birch' } }]));
  expect((await store.about()).device).not.toBe(device);
});

test.each([
  ['InvalidStateError', 'not-allowed', 'private window'],
  ['SecurityError', 'not-allowed', 'private window'],
  ['QuotaExceededError', 'disk-full', 'Free some space'],
  ['UnknownError', 'database-failed', 'restart the browser'],
])('when opening answers %s, the user is told %s', async (name, reason, words) => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('made to fail', name);
  });
  expect(await openStore(options)).toMatchObject({ ok: false, reason, message: expect.stringContaining(words) });
});

test.each([
  ['says so in words', 'IO error: 000003.log: FILE_ERROR_NO_SPACE (WritableFileAppend)', 300_000_000],
  ['has no room left', 'Internal error opening backing store for indexedDB.open.', 0],
])('where the disk %s, the user is told so, and not to restart the browser', async (_, message, left) => {
  vi.stubGlobal('navigator', { storage: { estimate: async () => ({ usage: 200_000, quota: 200_000 + left }) } });
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException(message, 'UnknownError');
  });
  const refused = await openStore(options);
  vi.unstubAllGlobals();
  expect(refused).toMatchObject({ ok: false, reason: 'disk-full', message: expect.stringContaining('disk is full') });
  expect(refused).not.toMatchObject({ message: expect.stringContaining('restart') });
});

test('a mistake of ours in opening is thrown, not explained away', async () => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new TypeError('made to fail');
  });
  await expect(openStore(options)).rejects.toThrow('made to fail');
});

test('views of another fold version are made again at opening', async () => {
  const store = await openTestStore();
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  store.close();
  const database = await openDB('headroom');
  await database.clear('lots');
  await database.put('meta', { foldVersion: 0, unknown: 0, unreadable: 0 }, 'views');
  database.close();
  expect((await (await openTestStore()).lot(at(lots, 0)))?.facts.make).toBe('Alder');
});

test('unwrap gives migrations the browser’s own objects', async () => {
  let seen: unknown;
  const spying = next((database) => {
    seen = database;
  });
  const database = value(await openDatabase('headroom', { migrations: [...MIGRATIONS, spying] }));
  expect(seen).toBe(unwrap(database));
  database.close();
});
