import { ACCOUNT_KEYS, type AccountKey } from '../../../src/domain/accounts/accounts.ts';
import {
  type Month,
  monthBefore,
  monthInWords,
  monthOf,
  monthSchema,
  nextMonth,
} from '../../../src/domain/books/month.ts';
import { balances, inMonth } from '../../../src/domain/books/post/post-months.ts';
import type { Transaction } from '../../../src/domain/books/post/transaction.ts';
import { type Cents, cents, ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { sayTime } from '../../../src/domain/time/say-time.ts';
import { usePageSubject } from '../../../src/ui/page-subject.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBooks } from '../use-books.ts';
import { CloseForm } from './close-form.tsx';
import { ExportPart } from './export-part.tsx';
import { MonthEntries } from './month-entries.tsx';
import { ReopenForm } from './reopen-form.tsx';

/** One month: what stood at its start, what was booked in it, what stands at its end; closing it; and the files out. */
export function MonthPart({ wanted }: { wanted: string }) {
  const { setup } = useWorkspace();
  const { posted, state, today, bookkeeping } = useBooks();
  const read = monthSchema.safeParse(wanted);
  const month: Month = read.success ? read.data : monthOf(today);
  usePageSubject(monthInWords(month));
  const own = inMonth(posted, month);
  const close = state.closes.find((each) => each.month === month);
  const isClosed = posted.closedTo !== null && month <= posted.closedTo;
  const before = balances(posted.transactions.filter(({ date }) => monthOf(date) < month));
  const corrections = own.filter(({ corrects }) => corrects !== undefined).length;
  return (
    <>
      <header class="stack">
        <p class="row small no-print">
          <a href={`#/books/month/${monthBefore(month)}`}>← {monthInWords(monthBefore(month))}</a>
          <a href={`#/books/month/${nextMonth(month)}`}>{monthInWords(nextMonth(month))} →</a>
        </p>
        <h1>
          {monthInWords(month)}
          <span class="print-only">{setup.store.name && `, ${setup.store.name}`}: every entry</span>
        </h1>
        <p>
          {close !== undefined
            ? `Closed by ${close.by}, ${sayTime(close.notedAt, setup.store.zone)}. Its figures are locked. Later changes show as corrections in the open month.`
            : isClosed
              ? `Closed together with ${monthInWords(posted.closedTo ?? month)}. Its figures are locked.`
              : `Open. ${countWords(own.length, 'entry', 'entries')} so far${corrections > 0 ? `, ${countWords(corrections, 'of them a correction of a closed month', 'of them corrections of closed months')}` : ''}.`}
        </p>
      </header>
      <Balances before={before} own={own} names={bookkeeping.accounts} />
      {!isClosed && <CloseForm month={month} />}
      {close !== undefined && month === posted.closedTo && <ReopenForm close={close} />}
      <MonthEntries transactions={own} />
      <ExportPart month={month} />
    </>
  );
}

interface BalancesProps {
  readonly before: ReadonlyMap<AccountKey, Cents>;
  readonly own: readonly Transaction[];
  readonly names: Readonly<Record<AccountKey, string>>;
}

/** Every account that has something in it: before, in, out, after. Credits are below zero. */
function Balances({ before, own, names }: BalancesProps) {
  const rows = ACCOUNT_KEYS.flatMap((key) => {
    const amounts = own.flatMap(({ postings }) =>
      postings.filter(({ account }) => account === key).map((one) => one.cents),
    );
    const start = before.get(key) ?? ZERO;
    const debit = cents(amounts.filter((one) => one > 0).reduce((sum, one) => sum + one, 0));
    const credit = cents(amounts.filter((one) => one < 0).reduce((sum, one) => sum - one, 0));
    return start === 0 && amounts.length === 0
      ? []
      : [{ key, start, debit, credit, end: cents(start + debit - credit) }];
  });
  if (rows.length === 0) return <p class="quiet">Nothing is recorded through the end of this month.</p>;
  const sum = (of: (row: (typeof rows)[number]) => Cents) =>
    money(cents(rows.reduce((total, row) => total + of(row), 0)));
  return (
    <ScrollX label="Accounts">
      <Ledger
        rows={rows}
        rowKey={({ key }) => key}
        columns={[
          { label: 'Account', heads: true, cell: ({ key }) => names[key], total: 'All accounts' },
          {
            label: 'Opening balance',
            number: true,
            cell: ({ start }) => money(start),
            total: sum(({ start }) => start),
          },
          { label: 'Debit', number: true, cell: ({ debit }) => money(debit), total: sum(({ debit }) => debit) },
          { label: 'Credit', number: true, cell: ({ credit }) => money(credit), total: sum(({ credit }) => credit) },
          { label: 'Closing balance', number: true, cell: ({ end }) => money(end), total: sum(({ end }) => end) },
        ]}
      />
    </ScrollX>
  );
}

const money = (amount: Cents) => formatMoney(amount, { cents: 'always' });
