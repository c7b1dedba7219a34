import { beforeEach, expect, test } from 'vitest';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Certificate } from '../../../src/domain/setup/certificate.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import type { Store } from '../../../src/store/store.ts';
import { afterLotsUnder } from '../../../src/views/after-sale/after-lot.ts';
import { dueBillsOf } from '../../../src/views/books/due-bills.ts';
import { mondayList } from '../../../src/views/books/monday-list.ts';
import { bookedLots } from '../../../src/views/sold/booked-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';

beforeEach(freshBrowser);

const BOISE = zone('America/Boise');
/** Monday, 8 AM in Boise. */
const NOW = instant(Date.parse('2026-11-30T15:00:00Z'));
const HOUR = 3_600_000;

async function addLot(store: Store, make: string, closedHoursAgo: number) {
  const close = {
    ...{ instant: NOW - closedHoursAgo * HOUR, text: '', zone: BOISE, how: 'picked', doubts: [] },
    otherwise: [],
  };
  const facts = lotFactsSchema.parse({ make, lotNumber: '7', close });
  return at(value(await store.addLots('typed', [{ facts }])).lots, 0);
}

async function groupsOf(store: Store, certificates: readonly Certificate[] = []) {
  const [watched, sold, books] = [await store.allLots(), await store.lotsAfterSale(), await store.books()];
  const setup = startingSetup(BOISE);
  const after = sold.map(afterLotsUnder(setup, bookedLots(books, BOISE), NOW));
  const groups = mondayList(
    {
      watched,
      after,
      books,
      bills: dueBillsOf(sold, books, setup, dateIn(BOISE, NOW)).bills,
      zone: BOISE,
      certificates,
    },
    NOW,
  );
  return groups.map(({ lines }) => lines.map(({ what, hash, late }) => ({ what, hash, late })));
}

test('a resale certificate is listed from 30 days before it ends until another one of its state is good for longer', async () => {
  const store = await openTestStore();
  const good = (id: string, state: string, until?: string): Certificate => ({
    ...{ id, state, number: id, venueIds: [] },
    ...(until !== undefined && { until: until as LocalDate }),
  });
  const listed = async (...certificates: Certificate[]) =>
    ((await groupsOf(store, certificates)).at(-1) ?? []).map(({ what, late }) => `${what}${late ? ', late' : ''}`);
  expect(await listed(good('a', 'ID', '2026-12-30'), good('b', 'TX', '2026-12-31'), good('c', 'AZ'))).toEqual([
    'Resale certificate for ID',
  ]);
  expect(await listed(good('a', 'ID', '2026-11-29'))).toEqual(['Resale certificate for ID, late']);
  expect(await listed(good('a', 'ID', '2026-11-29'), good('b', 'ID'))).toEqual([]);
  expect(await listed(good('a', 'ID', '2026-11-29'), good('b', 'ID', '2026-12-05'))).toEqual([
    'Resale certificate for ID',
  ]);
});

const bill = (lot: Awaited<ReturnType<typeof addLot>>, date: string) => ({
  kind: 'costs-booked' as const,
  date: date as LocalDate,
  paid: 'owed' as const,
  payee: 'Saguaro Sale Yard',
  lines: [{ lot, cost: 'fee' as const, label: 'Buy fee', cents: cents(45_000) }],
});

test('an empty store has nothing on its Monday list, and every group says so', async () => {
  expect(await groupsOf(await openTestStore())).toEqual([[], [], [], [], [], [], []]);
});

test('a close without a result, a bill for a car that was not won, a claim due by Sunday and last month are listed', async () => {
  const store = await openTestStore();
  await addLot(store, 'Larkspur', 40);
  await addLot(store, 'Birch', -5);
  const lost = await addLot(store, 'Alder', 50);
  value(await store.noteResult(lost, { result: { ended: 'lost' }, at: NOW }));
  value(await store.book(bill(lost, '2026-11-28')));
  const won = await addLot(store, 'Hawthorn', 60);
  const hammer = cents(900_000);
  value(
    await store.noteResult(won, { result: { ended: 'won', hammerCents: hammer }, at: instant(NOW - 40 * 24 * HOUR) }),
  );
  value(await store.book(bill(won, '2026-09-30')));
  expect(await groupsOf(store)).toEqual([
    [{ what: 'Larkspur, lot 7', hash: '#/results/missing', late: false }],
    [{ what: 'Alder, lot 7', hash: `#/books/${lost}`, late: false }],
    [{ what: 'Saguaro Sale Yard, bill of Sep 30, 2026', hash: '#/books/payables/saguaro%20sale%20yard', late: true }],
    [],
    // September goes with it, and November is not over.
    [{ what: 'October 2026', hash: '#/books/month/2026-10', late: false }],
    [],
    [],
  ]);
});

test('a dispute counts when its answer is due by Sunday or overdue, and not when it is due later', async () => {
  const store = await openTestStore();
  for (const [i, date] of ['2026-12-06T20:00:00Z', '2026-11-29T20:00:00Z', '2026-12-08T20:00:00Z'].entries()) {
    const lot = await addLot(store, `Car ${i}`, 60);
    value(await store.noteResult(lot, { result: { ended: 'won', hammerCents: cents(900_000) }, at: NOW }));
    const opened = {
      ...{ side: 'theirs' as const, reason: 'hidden-defect' as const, words: 'A noise', at: NOW, needs: [] },
      dueAt: instant(Date.parse(date)),
    };
    value(await store.append([{ subject: subjectOfLot(lot), happening: { kind: 'dispute-opened', opened } }]));
  }
  const claims = at(await groupsOf(store), 3);
  expect(claims.map(({ what, late }) => [what, late])).toEqual([
    ['Car 1, lot 7', true],
    ['Car 0, lot 7', false],
  ]);
  expect(claims.every(({ hash }) => hash.startsWith('#/dispute/'))).toBe(true);
});
