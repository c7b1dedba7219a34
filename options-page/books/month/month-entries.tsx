import { monthInWords } from '../../../src/domain/books/month.ts';
import type { Posting, Transaction } from '../../../src/domain/books/post/transaction.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { usePrinting } from '../../../src/ui/hooks/use-printing.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBooks } from '../use-books.ts';

/** Every entry of a month, corrections first, each with a way back to its folder. */
export function MonthEntries({ transactions }: { transactions: readonly Transaction[] }) {
  const { bookkeeping } = useBooks();
  const printing = usePrinting();
  if (transactions.length === 0) return null;
  const { accounts } = bookkeeping;
  const named = (postings: readonly Posting[]) => postings.map(({ account }) => accounts[account]).join(', ');
  const sorted = [...transactions].sort((a, b) => Number(b.corrects !== undefined) - Number(a.corrects !== undefined));
  return (
    <details class="stack" open={printing || transactions.length <= 40}>
      <summary>
        <strong>{countWords(transactions.length, 'entry', 'entries')}</strong>
      </summary>
      <ScrollX label="Entries of the month">
        <Ledger
          rows={sorted}
          rowKey={({ key, date }) => `${key}/${date}`}
          columns={[
            { label: 'Date', class: 'day', cell: ({ date }) => dateInWords(date) },
            {
              label: 'Description',
              cell: ({ lot, text, number, corrects }) => (
                <>
                  <a href={`#/books/${lot}`}>{text}</a>
                  {number !== undefined && <span class="quiet small block">no. {number}</span>}
                  {corrects !== undefined && (
                    <span class="small block">
                      <a href={`#/books/month/${corrects}`}>corrects {monthInWords(corrects)}</a>
                    </span>
                  )}
                </>
              ),
            },
            { label: 'Debit', class: 'small', cell: ({ postings }) => named(postings.filter(isDebit)) },
            { label: 'Credit', class: 'small', cell: ({ postings }) => named(postings.filter(isCredit)) },
            {
              label: 'Amount',
              number: true,
              cell: ({ postings }) =>
                postings
                  .filter(isDebit)
                  .map(({ cents }) => formatMoney(cents, { cents: 'always' }))
                  .join(', '),
            },
          ]}
        />
      </ScrollX>
    </details>
  );
}

const isDebit = ({ cents }: Posting): boolean => cents > 0;
const isCredit = ({ cents }: Posting): boolean => cents < 0;
