import { beforeEach, expect, test } from 'vitest';
import { STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import { judgeLines } from '../../../src/domain/books/invoice/judge-line.ts';
import { matchInvoice } from '../../../src/domain/books/invoice/match-invoice.ts';
import type { Month } from '../../../src/domain/books/month.ts';
import { balances } from '../../../src/domain/books/post/post-months.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents, LARGEST_CENTS } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { BOOKS } from '../../../src/journal/subject.ts';
import type { Store } from '../../../src/store/store.ts';
import { afterSaleDeadlines } from '../../../src/views/after-sale/after-sale-deadlines.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { postedBooks } from '../../../src/views/books/posted-books.ts';
import { phoenix } from '../../domain/after-sale/sold-lot.ts';
import { DAY, SETUP, wonLot } from '../../options-page/books/both-places.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';

let store: Store;
let bad: LotId;
let good: LotId;
beforeEach(async () => {
  freshBrowser();
  store = await openTestStore();
  bad = await wonLot(store);
  good = await wonLot(store);
});

const bill = (lot: LotId, amount: number) => ({
  subject: BOOKS,
  happening: {
    kind: 'costs-booked' as const,
    date: '2026-11-25' as LocalDate,
    paid: 'owed' as const,
    lines: [{ lot, cost: 'fee' as const, label: 'Buy fee', cents: cents(amount) }],
  },
});

/** A lot of which nothing can be read after its sale, as a mistake of ours would have it. */
const torn = (lot: LotState): LotState => ({
  ...lot,
  get after(): never {
    throw new RangeError('an amount came out as NaN cents');
  },
});

const worked = async (spoil: (lot: LotState) => LotState = (lot) => lot) => {
  const lots = (await store.allLots()).map((lot) => (lot.id === bad ? spoil(lot) : lot));
  const books = await store.books();
  const folders = foldersOf(lots, books, new Map(), SETUP, DAY);
  return { lots, books, folders, posted: postedBooks(folders, books, STARTING_BOOKKEEPING, '2026-10' as Month) };
};

test('a folder that can’t be worked out is named with its reason, and the others stand', async () => {
  value(await store.append([bill(bad, 42_400), bill(good, 42_400)]));
  const { folders, posted } = await worked(torn);
  expect(folders.folders.map(({ lot }) => lot)).toEqual([good]);
  expect(folders.apart.map(({ lot, why }) => [lot.id, why.short])).toEqual([[bad, 'an amount came out as NaN cents']]);
  expect(posted.transactions.map(({ lot }) => lot)).toEqual([good]);
});

test('what a closed month holds of it is not taken back', async () => {
  value(await store.append([bill(bad, 42_400), bill(good, 42_400)]));
  const { posted } = await worked();
  value(
    await store.append([
      {
        subject: BOOKS,
        happening: {
          kind: 'month-closed',
          month: '2026-11' as Month,
          by: 'Bookkeeper',
          transactions: [...posted.transactions],
        },
      },
    ]),
  );
  const whole = await worked();
  const without = await worked(torn);
  expect(without.posted.transactions).toEqual(whole.posted.transactions);
  expect(without.posted.transactions.some(({ corrects }) => corrects !== undefined)).toBe(false);
});

test('the largest amounts that are kept add up, bill upon bill', async () => {
  value(await store.append(Array.from({ length: 30 }, () => bill(bad, LARGEST_CENTS))));
  const { folders, posted } = await worked();
  expect(folders.apart).toEqual([]);
  expect(folders.folders.find(({ lot }) => lot === bad)?.actualCents).toBe(30 * LARGEST_CENTS);
  expect([...balances(posted.transactions).values()].reduce((sum, each) => sum + each, 0)).toBe(0);
});

test('dates after the sale that can’t be worked out are called as that, and those of other lots as ever', async () => {
  const { lots, books } = await worked(torn);
  const called = afterSaleDeadlines(lots, books, SETUP, phoenix('2026-11-25T10:00'));
  const mine = called.filter(({ key }) => key.includes(bad));
  expect(mine).toMatchObject([{ title: 'Dates after the sale, Larkspur', route: `#/life/${bad}` }]);
  expect(mine[0]?.body).toContain('an amount came out as NaN cents');
  const alone = afterSaleDeadlines(
    lots.filter(({ id }) => id === good),
    books,
    SETUP,
    phoenix('2026-11-25T10:00'),
  );
  expect(alone.length).toBeGreaterThan(0);
  expect(called).toEqual(expect.arrayContaining(alone));
});

test('a car of an invoice that can’t be held against the books costs no other its verdict', () => {
  const line = (row: number, lotNumber: string) => ({
    id: `${row}.1`,
    row,
    lotNumber,
    label: 'Buy fee',
    what: 'cost' as const,
    cost: 'fee' as const,
    cents: cents(42_400),
  });
  const folder = (lot: LotId, lotNumber: string) => ({
    lot,
    lotNumber,
    venueId: 'saltgrass',
    expected: [],
    costs: [],
    payments: [],
    owed: cents(0),
  });
  const spoilt = Object.defineProperty(folder(bad, 'L1'), 'costs', {
    get() {
      throw new RangeError('an amount came out as NaN cents');
    },
  });
  const chosen = new Map([
    ['|L1', bad],
    ['|L2', good],
  ]);
  const [one, other] = matchInvoice([line(2, 'L1'), line(3, 'L2')], [spoilt, folder(good, 'L2')], 'saltgrass', chosen);
  expect(one?.lines[0]?.why).toContain('an amount came out as NaN cents');
  expect(other?.lines).toEqual(judgeLines([line(3, 'L2')], folder(good, 'L2')));
});
