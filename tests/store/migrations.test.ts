import { readdirSync } from 'node:fs';
import { openDB } from 'idb';
import { beforeEach, expect, test } from 'vitest';
import { MIGRATIONS } from '../../src/store/connection/migrations/list.ts';
import { openDatabase } from '../../src/store/connection/open-database.ts';
import { STORE_NAMES } from '../../src/store/connection/schema.ts';
import { freshBrowser, value } from './open-test-store.ts';

beforeEach(freshBrowser);

test('migrations are numbered from 1 without a gap, and each stands in a file of its number and name', () => {
  expect(MIGRATIONS.map(({ number }) => number)).toEqual(MIGRATIONS.map((_, i) => i + 1));
  const files = readdirSync(new URL('../../src/store/connection/migrations', import.meta.url)).filter((name) =>
    /^\d/.test(name),
  );
  expect(files.sort()).toEqual(MIGRATIONS.map(({ number, name }) => `${`${number}`.padStart(4, '0')}-${name}.ts`));
});

test('there is a stored database of every version', () => {
  const files = readdirSync(new URL('../fixtures/databases', import.meta.url));
  expect(files.sort()).toEqual(MIGRATIONS.map(({ number }) => `v${number}.json`).sort());
});

test('no store or index that was removed comes back under its name', async () => {
  const seen = new Set<string>();
  let before = new Set<string>();
  for (const { number } of MIGRATIONS) {
    value(await openDatabase('headroom', { migrations: MIGRATIONS.slice(0, number) })).close();
    const now = await names();
    for (const name of now) if (!before.has(name)) expect(seen.has(name), `${name} in ${number}`).toBe(false);
    for (const name of now) seen.add(name);
    before = now;
  }
});

/** Of every store, and of every index with its store before it. */
async function names(): Promise<Set<string>> {
  const database = await openDB('headroom');
  const all = new Set<string>();
  for (const store of database.objectStoreNames) {
    all.add(store);
    for (const index of database.transaction(store).store.indexNames) all.add(`${store}/${index}`);
  }
  database.close();
  return all;
}

test('after the last migration, the stores are those that the schema names', async () => {
  value(await openDatabase('headroom')).close();
  const database = await openDB('headroom');
  expect([...database.objectStoreNames].sort()).toEqual([...STORE_NAMES].sort());
  database.close();
});
