import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { OpenBill } from '../../../src/domain/books/payables/payables.ts';
import { type Cents, sumCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { billPayment } from '../../../src/views/books/bill-payment.ts';
import type { BillShare } from '../../../src/views/books/payables-of.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

interface PayFormProps {
  readonly name: string;
  readonly bills: readonly OpenBill[];
  readonly sharesOf: (bill: string) => readonly BillShare[];
  /** Stands above the bills. */
  readonly children?: ComponentChildren;
}

/** The open bills of one vendor, and one payment for those that are chosen, each in full or in part. */
export function PayForm({ name, bills, sharesOf, children }: PayFormProps) {
  const { today } = useBooks();
  const book = useBook();
  const [paying, setPaying] = useState<ReadonlyMap<string, Cents>>(new Map());
  const [date, setDate] = useState<LocalDate>();
  const [number, setNumber] = useState<string>();
  const open = bills
    .filter((bill) => bill.open > 0)
    .toSorted((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : 0));
  const chosen = open.flatMap((bill) => {
    const of = paying.get(bill.id);
    return of === undefined || of === 0 ? [] : [{ bill, cents: of }];
  });
  const set = (bill: OpenBill, of: Cents | undefined) =>
    setPaying((before) => {
      const next = new Map(before);
      if (of === undefined) next.delete(bill.id);
      else next.set(bill.id, of);
      return next;
    });
  const whole = sumCents(chosen.map(({ cents }) => cents));
  const over = chosen.find(({ bill, cents }) => cents > bill.open);
  const pay = async () => {
    const kept = await book(
      {
        kind: 'payment-booked',
        date: date ?? today,
        payee: name,
        ...(number && { document: { number } }),
        lines: chosen.flatMap(({ bill, cents }) => billPayment(bill.id, cents, sharesOf(bill.id))),
      },
      `${formatMoney(whole)} paid to ${name} for ${countWords(chosen.length, 'bill', 'bills')}.`,
    );
    if (!kept) return;
    setPaying(new Map());
    setNumber(undefined);
  };
  return (
    <section class="stack" aria-labelledby="vendor-bills">
      <h2 id="vendor-bills">Open bills of {name}</h2>
      {children}
      {open.length === 0 && <p>No bill of {name} is open.</p>}
      {open.length > 0 && (
        <ScrollX label={`Open bills of ${name}`}>
          <Ledger
            class="fits-narrow"
            rows={open}
            rowKey={({ id }) => id}
            columns={[
              {
                label: 'Pay',
                quietHead: true,
                class: 'no-print',
                cell: (bill) => (
                  <input
                    type="checkbox"
                    aria-label={`Pay bill ${bill.number ?? dateInWords(bill.date)}, ${formatMoney(bill.open)}`}
                    checked={paying.has(bill.id)}
                    onChange={(event) => set(bill, event.currentTarget.checked ? bill.open : undefined)}
                  />
                ),
              },
              {
                label: 'Bill no.',
                heads: true,
                cell: ({ number: no, remarks }) => (
                  <>
                    {no ?? 'none'}
                    {remarks.map((remark) => (
                      <span key={remark} class="small quiet block">
                        {remark}
                      </span>
                    ))}
                  </>
                ),
              },
              { label: 'Date', class: 'day wide-only', cell: (bill) => dateInWords(bill.date) },
              {
                label: 'Due',
                class: 'day',
                cell: ({ dueOn, daysPastDue }) => (
                  <>
                    {dateInWords(dueOn)}
                    {daysPastDue > 0 && (
                      <span class="tag act block">{countWords(daysPastDue, 'day', 'days')} past due</span>
                    )}
                  </>
                ),
              },
              { label: 'Bill', number: true, class: 'wide-only', cell: (bill) => formatMoney(bill.cents) },
              { label: 'Still owed', number: true, cell: (bill) => formatMoney(bill.open) },
              ...(paying.size === 0
                ? []
                : [
                    {
                      label: 'Paying',
                      class: 'no-print',
                      cell: (bill: OpenBill) =>
                        paying.has(bill.id) && (
                          <MoneyInput
                            label={`Paying on bill ${bill.number ?? dateInWords(bill.date)}`}
                            value={paying.get(bill.id)}
                            onCommit={(of) => set(bill, of)}
                          />
                        ),
                    },
                  ]),
            ]}
          />
        </ScrollX>
      )}
      {open.length > 0 && (
        <div class="panel stack no-print">
          <div class="fields">
            <DateInput label="Payment date" value={date ?? today} onCommit={setDate} />
            <TextInput label="Check or transfer no." value={number} longest={120} onCommit={setNumber} />
          </div>
          {over !== undefined && (
            <p class="note warning">
              {formatMoney(over.bill.open)} is owed on bill {over.bill.number ?? dateInWords(over.bill.date)}. Pay that
              or less; what is over can be recorded in the folder.
            </p>
          )}
          <div class="row">
            <button type="button" class="main" disabled={chosen.length === 0 || over !== undefined} onClick={pay}>
              {chosen.length === 0
                ? 'Choose the bills to pay'
                : `Record ${formatMoney(whole)} for ${countWords(chosen.length, 'bill', 'bills')}`}
            </button>
          </div>
        </div>
      )}
    </section>
  );
}
