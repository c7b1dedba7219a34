import { beforeEach, expect, test } from 'vitest';
import type { Month } from '../../../src/domain/books/month.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { EMPTY_BOOKS } from '../../../src/folds/fold-books.ts';
import type { BookedHappening } from '../../../src/journal/happenings/books.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import type { Store } from '../../../src/store/store.ts';
import { sayHappening } from '../../../src/views/history/say-happening.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';

beforeEach(freshBrowser);

const day = (text: string) => text as LocalDate;

async function wonLot(store: Store) {
  const lot = at(
    value(await store.addLots('typed', [{ facts: { make: 'Larkspur', transport: cents(50_000) } }])).lots,
    0,
  );
  const result = { result: { ended: 'won' as const, hammerCents: cents(950_000) }, at: instant(1_790_000_000_000) };
  return { lot, entry: at(value(await store.noteResult(lot, result)), 0).id };
}

const bill = (lot: LotId, amount: number): BookedHappening => ({
  kind: 'costs-booked',
  date: day('2026-11-28'),
  paid: 'owed',
  payee: 'Saguaro Sale Yard',
  lines: [{ lot, cost: 'fee', label: 'Buy fee', cents: cents(amount) }],
});

test('what is booked can be read, is taken back by an undo, and comes back by another', async () => {
  const store = await openTestStore();
  expect(await store.books()).toEqual(EMPTY_BOOKS);
  const { lot } = await wonLot(store);
  const booked = at(value(await store.book(bill(lot, 45_000))), 0);
  expect((await store.books()).costs).toMatchObject([
    { lot, cents: 45_000, payee: 'Saguaro Sale Yard', author: 'buyer' },
  ]);
  const undo = at(value(await store.undo(booked.id)), 0);
  expect((await store.books()).costs).toEqual([]);
  value(await store.undo(undo.id));
  expect((await store.books()).costs).toHaveLength(1);
});

test('a lot’s life tells what was booked for it, its own lines only, and what was taken back', async () => {
  const store = await openTestStore();
  const [{ lot }, { lot: other }] = [await wonLot(store), await wonLot(store)];
  const { lines: own, ...rest } = bill(lot, 45_000) as Extract<BookedHappening, { kind: 'costs-booked' }>;
  const lines = [...own, { lot: other, cost: 'other' as const, label: 'Wash', cents: cents(7000) }];
  const booked = at(value(await store.book({ ...rest, lines })), 0);
  value(await store.book(bill(other, 1000)));
  value(await store.undo(booked.id));
  const life = await store.lifeOfLot(lot);
  const told = life.map(({ read, counts }) => [read.as === 'known' && sayHappening(read.entry.happening), counts]);
  expect(told.slice(-2)).toEqual([
    ['Bill recorded from Saguaro Sale Yard: Buy fee $450, not paid yet, Sat Nov 28', false],
    ['Something was undone', true],
  ]);
  expect(life).toHaveLength((await store.historyOfLot(lot)).length + 2);
});

test('a month that two computers closed counts as it was closed first, and an earlier month can’t be closed after it', async () => {
  const store = await openTestStore();
  const close = (month: string, by: string): BookedHappening => ({
    kind: 'month-closed',
    month: month as Month,
    by,
    transactions: [],
  });
  value(await store.book(close('2026-10', 'The bookkeeper')));
  value(await store.book(close('2026-10', 'Somebody else'), close('2026-09', 'Somebody else')));
  expect((await store.books()).closes).toMatchObject([{ month: '2026-10', by: 'The bookkeeper' }]);
});

test('listeners hear of a booking, and the books go out and in with a backup', async () => {
  const store = await openTestStore();
  const heard = new Promise((resolve) => store.subscribe((change) => change.books && resolve(change)));
  const { lot } = await wonLot(store);
  value(await store.book(bill(lot, 45_000)));
  expect(await heard).toMatchObject({ books: true });
  const before = await store.books();
  const file = await store.backup();
  store.close();
  freshBrowser();
  const other = await openTestStore({ random: testRandom(5) });
  value(await other.restore(value(await readBackup(file.blob)), { mode: 'merge' }));
  expect(await other.books()).toEqual(before);
});

test('what was believed at the win is not touched by what was learned after it', async () => {
  const store = await openTestStore();
  const first = startingSetup(zone('America/Boise'));
  value(await store.saveSetup({ costs: { ...first.costs, packCents: cents(30_000) } }));
  const { lot, entry } = await wonLot(store);
  value(await store.saveSetup({ costs: { ...first.costs, packCents: cents(99_000) } }));
  value(await store.changeLot(lot, { set: { transport: cents(88_000), make: 'Merrow' } }));
  // The hammer price is corrected later, which is no new win.
  const corrected = { result: { ended: 'won' as const, hammerCents: cents(960_000) }, at: instant(1_790_000_000_000) };
  const last = at(value(await store.noteResult(lot, corrected)), 0).id;
  expect(last).not.toBe(entry);
  const belief = (await store.beliefs([{ lot, at: last }])).get(lot);
  expect(belief?.facts).toMatchObject({ make: 'Larkspur', transport: 50_000 });
  expect(belief?.setup?.costs?.packCents).toBe(30_000);
});
