import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTerms } from '../../../../src/domain/accounts/terms.ts';
import { type Payables, payables, type Settling } from '../../../../src/domain/books/payables/payables.ts';
import { FEDERAL_CALENDAR } from '../../../../src/domain/deadline/business-calendar.ts';
import { type Cents, cents } from '../../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../../src/domain/time/local-date.ts';
import { value } from '../../../store/open-test-store.ts';

interface WrittenMoney {
  readonly id: string;
  readonly vendor: string;
  readonly date: LocalDate;
  readonly amount: string;
  readonly to: readonly { readonly bill: string; readonly amount: string }[];
  readonly returnedOn?: LocalDate;
}
/** A situation that a bookkeeper wrote who had not read the code. Amounts are dollars as text. */
interface Written {
  readonly title: string;
  readonly asOf: LocalDate;
  readonly vendors: Readonly<Record<string, string | null>>;
  readonly bills: readonly {
    readonly id: string;
    readonly vendor: string;
    readonly number: string;
    readonly date: LocalDate;
    readonly amount: string;
    readonly due?: LocalDate;
    readonly disputed?: boolean;
  }[];
  readonly payments: readonly WrittenMoney[];
  readonly credits: readonly WrittenMoney[];
  readonly expected: {
    readonly bills: readonly {
      readonly bill: string;
      readonly due: string;
      readonly open: string;
      readonly daysPastDue?: number;
      readonly bucket?: string;
    }[];
    readonly vendors: readonly {
      readonly vendor: string;
      readonly owed: string;
      readonly unapplied: string;
      readonly net: string;
      readonly ageing: Readonly<Record<string, string>>;
    }[];
    readonly ageing: Readonly<Record<string, string>>;
    readonly owed: string;
    readonly unapplied: string;
    readonly net: string;
    readonly payInThisOrder: readonly string[];
  };
}

const WRITTEN: readonly Written[] = JSON.parse(readFileSync('tests/fixtures/payables.json', 'utf8'));
const amountOf = (text: string): Cents => cents(Math.round(Number(text) * 100));
const dollars = (amount: number): string => (amount / 100).toFixed(2);

function worked({ asOf, vendors, bills, payments, credits }: Written): Payables {
  const settling = (what: Settling['what'], { id, vendor, date, amount, to }: WrittenMoney, sign = 1): Settling => ({
    id,
    vendor,
    date,
    what,
    cents: cents(sign * amountOf(amount)),
    to: to.map((one) => ({ bill: one.bill, cents: cents(sign * amountOf(one.amount)) })),
  });
  return payables({
    bills: bills.map(({ amount, ...bill }) => ({ ...bill, cents: amountOf(amount) })),
    settlings: [
      ...payments.map((one) => settling('payment', one)),
      ...payments.flatMap((one) =>
        one.returnedOn === undefined ? [] : settling('payment', { ...one, date: one.returnedOn }, -1),
      ),
      ...credits.map((one) => settling('credit', one)),
    ],
    terms: new Map(
      Object.entries(vendors).flatMap(([vendor, terms]) => (terms === null ? [] : [[vendor, value(readTerms(terms))]])),
    ),
    // Its writer lists the holidays of the winter; of October he names none.
    calendar: { ...FEDERAL_CALENDAR, worked: ['columbus'] },
    asOf,
  });
}

test.each(WRITTEN)('$title', (written) => {
  const { expected } = written;
  const found = worked(written);
  const ageing = (of: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(of).map(([bucket, open]) => [bucket, dollars(open)]));
  const bills = found.vendors.flatMap((vendor) => vendor.bills);
  for (const { bill, due, open, daysPastDue, bucket } of expected.bills) {
    const own = bills.find(({ id }) => id === bill);
    expect([own?.dueOn, dollars(own?.open ?? -1)], `bill ${bill}`).toEqual([due, open]);
    if (daysPastDue !== undefined)
      expect([own?.daysPastDue, own?.bucket], `bill ${bill}`).toEqual([daysPastDue, bucket]);
  }
  expect(bills).toHaveLength(expected.bills.length);
  expect(
    found.vendors.map(({ vendor, owed, unapplied, net, ageing: own }) => ({
      vendor,
      owed: dollars(owed),
      unapplied: dollars(unapplied),
      net: dollars(net),
      ageing: ageing(own),
    })),
  ).toEqual([...expected.vendors].sort((a, b) => (a.vendor < b.vendor ? -1 : 1)));
  expect(ageing(found.ageing)).toEqual(expected.ageing);
  expect([found.owed, found.unapplied, found.net].map(dollars)).toEqual([
    expected.owed,
    expected.unapplied,
    expected.net,
  ]);
  expect(found.inOrder.map(({ id }) => id)).toEqual(expected.payInThisOrder);
});

test.each([
  ["A vendor without terms is due on the bill's day, and is pointed at", 'No terms yet'],
  ['Paid too much: what is over stays with the vendor', '$40 paid too much'],
  ['A payment set against no bill', '$300 not set against a bill'],
  ['A returned check opens the bill again with its old due date', 'was returned'],
  ['Cash discount taken too late is still owed', '$20 short: the discount ended on Sun Dec 20'],
  ['A bill in dispute is owed until it is settled, and is marked', 'In dispute'],
  [
    'A sale undone: bill, credit, kept fee, refund due to us',
    '$14,460 paid too much, a refund is due, or its bill is not recorded yet',
  ],
  ['The same number and sum twice from one vendor is pointed at', 'Bill number G-77 is recorded 2 times'],
])('of “%s” it is said: %s', (title, words) => {
  const written = WRITTEN.find((one) => one.title === title);
  if (written === undefined) throw new Error(`nobody wrote “${title}”`);
  const { vendors } = worked(written);
  const said = vendors.flatMap(({ remarks, bills }) => [...remarks, ...bills.flatMap((bill) => bill.remarks)]);
  expect(said.join(' ')).toContain(words);
});
