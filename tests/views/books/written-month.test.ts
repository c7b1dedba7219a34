import { expect, test } from 'vitest';
import { type AccountKey, STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import { lastDayOf, type Month, monthOf } from '../../../src/domain/books/month.ts';
import { accrualMonths } from '../../../src/domain/books/post/accrual.ts';
import { balances, type ClosedMonth, inMonth, toClose } from '../../../src/domain/books/post/post-months.ts';
import type { Transaction } from '../../../src/domain/books/post/transaction.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { EMPTY_BOOKS } from '../../../src/folds/fold-books.ts';
import { closingOpen } from '../../../src/views/books/closing-open.ts';
import { postedBooks } from '../../../src/views/books/posted-books.ts';
import { amountOf, foldersOn, WRITTEN, WRITTEN_NAMES } from './month-of-wins.ts';

const month = (text: string) => text as Month;
const DECEMBER = month('2026-12');
const JANUARY = month('2027-01');

const at = (name: Month, closes: readonly ClosedMonth[]) =>
  postedBooks(
    { folders: foldersOn(lastDayOf(name)), apart: [] },
    { closes: [...noted(closes)] },
    STARTING_BOOKKEEPING,
    name,
  );
const noted = (closes: readonly ClosedMonth[]) => closes as Parameters<typeof postedBooks>[1]['closes'];
const december: ClosedMonth = { month: DECEMBER, transactions: toClose(at(DECEMBER, []), DECEMBER) };
const january = at(JANUARY, [december]);

/** As the writer calls them. The opening balance of the bank is no part of these books. */
const ACCOUNTS: Readonly<Record<string, AccountKey>> = {
  'Assets:Bank': 'bank',
  'Assets:Inventory:Vehicles': 'inventory',
  'Liabilities:Payable:Vehicles': 'payable',
  'Liabilities:Accrued:Vehicles': 'accrued',
  'Liabilities:FloorPlan': 'floor',
  'Income:Sales:Retail': 'retail',
  'Income:Sales:Wholesale': 'wholesale',
  'Expenses:CostOfSales': 'costOfSales',
  'Expenses:Interest:FloorPlan': 'interest',
  'Expenses:CanceledSales': 'undone',
};
const OPENING = { 'Assets:Bank': 90_000_000 };

const through = (name: Month): readonly Transaction[] =>
  january.transactions.filter(({ date }) => monthOf(date) <= name);

function sums(name: Month, account: AccountKey, nameOf: (one: Transaction) => string) {
  const found = new Map<string, number>();
  for (const one of through(name))
    for (const posting of one.postings)
      if (posting.account === account) found.set(nameOf(one), (found.get(nameOf(one)) ?? 0) + posting.cents);
  return Object.fromEntries([...found].filter(([, sum]) => sum !== 0));
}
const written = (list: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(list).map(([name, amount]) => [name, amountOf(amount) as number]));

test.each(WRITTEN.expected)(
  'at the end of $month every account, car and vendor stands as the accountant has it',
  (expected) => {
    const name = month(expected.month);
    const stand = balances(through(name));
    for (const [account, amount] of Object.entries(expected.balances)) {
      const key = ACCOUNTS[account];
      if (key === undefined) continue;
      const opening = account === 'Assets:Bank' ? OPENING['Assets:Bank'] : 0;
      expect((stand.get(key) ?? 0) + opening, account).toBe(amountOf(amount));
    }
    const ofLot = ({ lot }: Transaction) => WRITTEN_NAMES.get(lot) ?? '';
    const venueOf = ({ lot }: Transaction) => WRITTEN.lots.find(({ id }) => id === WRITTEN_NAMES.get(lot))?.venue ?? '';
    expect(sums(name, 'inventory', ofLot)).toEqual(written(expected.inventoryByLot));
    expect(sums(name, 'accrued', ofLot)).toEqual(written(expected.accruedByLot));
    expect(sums(name, 'floor', ofLot)).toEqual(written(expected.floorByLot));
    expect(sums(name, 'payable', (one) => one.payee ?? venueOf(one))).toEqual(written(expected.payableByVendor));
  },
);

test.each(WRITTEN.expected)(
  'before $month is closed, what is missing from it is named',
  ({ month: name, closingMustName }) => {
    const folders = foldersOn(lastDayOf(month(name)));
    const accruals = accrualMonths(name === DECEMBER ? [] : [december], month(name));
    const setup = startingSetup(zone('America/Boise'));
    const groups = closingOpen(
      { folders, lots: [], setup, accruals, now: instant(0), bank: EMPTY_BOOKS.bank },
      month(name),
    );
    const named = (title: string) =>
      (groups.find((group) => group.title.startsWith(title))?.lines ?? [])
        // A fee that a venue keeps of a canceled sale has no paper of its own there.
        .filter(({ key }) => !key.endsWith('/kept'))
        .map(({ what }) => what.replace(/^.*(?:Lot|no\.) /, ''));
    expect(named('Won, and not billed').sort()).toEqual(closingMustName.wonWithoutABill);
    expect(named('Canceled').sort()).toEqual(closingMustName.refundStillToCome);
    expect(named('Bills not paid').sort()).toEqual(closingMustName.billsUnpaid);
  },
);

test('December, once closed, is not changed by what January brings', () => {
  expect(inMonth(january, DECEMBER)).toEqual(december.transactions);
  expect(january.transactions.some(({ corrects }) => corrects !== undefined)).toBe(false);
});
