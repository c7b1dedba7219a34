import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { FOLD_VERSION } from '../../src/folds/fold-version.ts';
import { verifyChain } from '../../src/journal/verify-chain.ts';
import { MIGRATIONS } from '../../src/store/connection/migrations/list.ts';
import { viewsSchema } from '../../src/store/connection/schema.ts';
import { writeScenario } from './database-scenario.ts';
import { freshBrowser, openTestStore, testRandom, value } from './open-test-store.ts';
import { dump, storedEntries } from './raw-database.ts';
import { putUp, type StoredDatabase, takeDown } from './stored-database.ts';

const FOLDER = new URL('../fixtures/databases/', import.meta.url);

// A stored database is made when its version ships, and is then left alone: it stands for what is on users' disks.
if (process.env.UPDATE_FIXTURES === '1') {
  freshBrowser();
  await writeScenario('headroom');
  const stored = await takeDown('headroom');
  writeFileSync(new URL(`v${MIGRATIONS.length}.json`, FOLDER), `${JSON.stringify(stored, null, 1)}\n`);
}

const versions = readdirSync(FOLDER)
  .map((file) => [file, load(file)] as const)
  .sort(([, a], [, b]) => a.version - b.version);

function load(file: string): StoredDatabase {
  return JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8'));
}

beforeEach(freshBrowser);

test.each(versions)('the database of %s opens, with every entry as it was, and can be used', async (_, stored) => {
  await putUp('headroom', stored);
  const store = await openTestStore({ random: testRandom(5) });
  const entries = await storedEntries();
  expect(entries).toEqual(stored.stores.entries?.rows.map(([, entry]) => entry));
  expect(verifyChain(entries)).toEqual([]);
  const { findings, unreadable } = await store.checkJournal();
  expect({ findings, unreadable }).toEqual({ findings: [], unreadable: [] });

  value(await store.addLots('typed', [{ facts: { make: 'Dogwood' } }]));
  expect((await store.allLots()).map((lot) => lot.facts.make)).toEqual(
    expect.arrayContaining(['Alder', 'Birch', 'Cedar', 'Dogwood']),
  );
  expect((await store.setup())?.store?.name).toBe('Cottonwood Truck & Van');
  expect([...(await store.shownAlerts()).keys()]).toContain('digest/2026-04-10');
  const about = await store.about();
  expect(about).toMatchObject({ author: 'buyer', unknown: 1, unreadable: 0 });
  expect(about.lastBackup).not.toBeNull();
  expect(verifyChain(await storedEntries())).toEqual([]);
});

test.each(versions)(
  'the entries of %s fold to what they folded to, or FOLD_VERSION was raised',
  async (file, stored) => {
    const madeWith = viewsSchema.parse(new Map(stored.stores.meta?.rows).get('views')).foldVersion;
    // For a later fold, its views stand in a file beside: the database itself is never edited.
    const views = madeWith === FOLD_VERSION ? stored.stores : load(`../folds/${FOLD_VERSION}-of-${file}`).stores;
    await putUp('headroom', stored);
    const store = await openTestStore();
    value(await store.rebuildViews());
    const now = await dump();
    for (const view of ['lots', 'setup', 'alerts'])
      expect(now[view], 'the fold changed: raise FOLD_VERSION, or stored views will stay as they are').toEqual(
        views[view]?.rows,
      );
  },
);

test('the database of the newest version has the structure that the migrations make today', async () => {
  value(await (await openTestStore()).addLots('typed', [{ facts: {} }]));
  const today = await takeDown('headroom');
  const [, newest] = versions.at(-1) ?? [];
  const structure = ({ stores }: StoredDatabase): object =>
    Object.entries(stores).map(([name, { keyPath, indexes }]) => [name, keyPath, indexes]);
  expect(newest && structure(newest)).toEqual(structure(today));
});
