import { beforeAll, expect, test } from 'vitest';
import { loadDemoBooks } from '../../options-page/demo-load/demo-books-load.ts';
import { loadDemo } from '../../options-page/demo-load/load-demo.ts';
import { loadDemoAftermath } from '../../options-page/demo-load/load-demo-aftermath.ts';
import { seeToFirstFolders } from '../../src/background/first-folders-keeper.ts';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../src/journal/sortable-id.ts';
import type { Store } from '../../src/store/store.ts';
import { readFirstRows } from '../../src/store/views/read-first-rows.ts';
import { type FolderWords, folderWords } from '../../src/views/books/folder-words.ts';
import { expectedAt, foldersOf } from '../../src/views/books/folders-of.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testClock, testRandom, value } from '../store/open-test-store.ts';

const NOW = instant(Date.parse('2026-11-25T18:00Z'));

let store: Store;
let setup: Setup;

beforeAll(async () => {
  freshBrowser();
  store = await openTestStore({ now: testClock(NOW).now, channel: false });
  const random = testRandom(3);
  let last: ReturnType<typeof nextLotId> | null = null;
  const scenario = demoScenario(NOW, () => {
    last = nextLotId(NOW, last, random(ID_RANDOM_BYTES));
    return last;
  });
  expect(await loadDemo(store, scenario)).toBeNull();
  expect(await loadDemoAftermath(store, scenario.aftermath)).toBeNull();
  expect(await loadDemoBooks(store, scenario.setup, NOW)).toBeNull();
  setup = scenario.setup;
});

const kept = async (now = NOW) => (await readFirstRows('1', { what: 'first-folders', now })) as readonly FolderWords[];

/** What the whole of the books says of every car that was won. */
async function wholeBooks(): Promise<Map<string, FolderWords>> {
  const lots = await store.allLots();
  const wins = lots.flatMap((lot) => (lot.sale?.result === undefined ? [] : [{ lot, at: lot.sale.result.entry }]));
  const beliefs = await store.beliefs(wins.map(({ lot, at }) => ({ lot: lot.id, at })));
  const believed = wins.flatMap(({ lot }) => {
    const belief = beliefs.get(lot.id);
    return belief === undefined ? [] : [{ lot, belief }];
  });
  const expected = expectedAt(believed, setup.store.zone);
  const { folders } = foldersOf(lots, await store.books(), expected, setup, dateIn(setup.store.zone, NOW));
  return new Map(folders.filter(({ won }) => won !== null).map((folder) => [folder.lot, folderWords(folder)]));
}

test('the latest folders are kept in the words that all of the books would say of them, until the store’s day is over', async () => {
  await seeToFirstFolders(store, '1', NOW);
  const rows = await kept();
  const whole = await wholeBooks();
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) expect(row).toEqual(whole.get(row.lot));
  // Bills, a sale, a canceled purchase and a corrected line are among them.
  expect(new Set(rows.map(({ stage }) => stage))).toEqual(new Set(['in-stock', 'sold', 'undone']));
  const midnight = instant(Date.parse('2026-11-26T07:00Z'));
  expect((await kept(instant(midnight - 1))).length).toBe(rows.length);
  expect(await kept(midnight)).toEqual([]);
});

test('they are forgotten with what is booked and with what is noted of a lot that was won, and with nothing else', async () => {
  const won = at(await store.lotsAfterSale(), 0);
  const watched = at(
    (await store.allLots()).filter(({ sale }) => sale?.result === undefined),
    0,
  );
  const forgets = async (change: () => Promise<unknown>) => {
    await seeToFirstFolders(store, '1', NOW);
    expect((await kept()).length).toBeGreaterThan(5);
    await change();
    const forgotten = (await kept()).length === 0;
    await seeToFirstFolders(store, '1', NOW);
    const whole = await wholeBooks();
    for (const row of await kept()) expect(row).toEqual(whole.get(row.lot));
    return forgotten;
  };
  const paper = { kind: 'paper-noted', lot: won.id, paper: 'title', date: dateIn(setup.store.zone, NOW) } as const;
  let noted = value(await store.book(paper));
  expect(await forgets(async () => value(await store.changeLot(watched.id, { set: { lotNumber: '7' } })))).toBe(false);
  expect(await forgets(async () => value(await store.changeLot(won.id, { set: { lotNumber: '8' } })))).toBe(true);
  expect(
    await forgets(async () => {
      noted = value(await store.book(paper));
    }),
  ).toBe(true);
  expect(await forgets(async () => value(await store.undo(at(noted, 0).id)))).toBe(true);
  expect(await forgets(async () => value(await store.saveSetup({ titles: setup.titles.slice(0, 3) })))).toBe(true);
  const result = { result: { ended: 'won', hammerCents: 900_000 as never }, at: NOW, by: 'proxy' } as const;
  expect(await forgets(async () => value(await store.noteResult(watched.id, result)))).toBe(true);
});

test('what was overtaken while it was put into words is not kept', async () => {
  const keeping = store.keepFirstFolders({
    build: '1',
    limit: 3,
    inWords: ({ lots }) => {
      void store.book({
        kind: 'paper-noted',
        lot: at(lots, 0).id,
        paper: 'title',
        date: dateIn('America/Boise' as never, NOW),
      });
      return { rows: lots, until: instant(NOW + 1) };
    },
  });
  expect(await keeping).toBe(false);
  expect(await kept()).toEqual([]);
});
